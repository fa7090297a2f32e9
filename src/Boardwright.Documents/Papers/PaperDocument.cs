using Boardwright.Builds;
using Boardwright.Documents.Drawings;

namespace Boardwright.Documents.Papers;

/// <summary>A paper as what it says, for any medium.</summary>
/// <param name="Title">What paper it is.</param>
/// <param name="Board">Name of the board.</param>
/// <param name="Revision">State of the board; empty where there is none.</param>
/// <param name="Blocks">What it says, in order.</param>
sealed record PaperDocument(string Title, string Board, string Revision, IReadOnlyList<Block> Blocks);

/// <summary>One thing that a paper says.</summary>
abstract record Block;

/// <summary>A heading; it stays with what follows.</summary>
/// <param name="Text">The heading.</param>
sealed record HeadingBlock(string Text) : Block;

/// <summary>A paragraph.</summary>
/// <param name="Text">The text.</param>
/// <param name="IsQuiet">Whether it steps back, as a note.</param>
sealed record ParagraphBlock(string Text, bool IsQuiet = false) : Block;

/// <summary>A caution in a frame.</summary>
/// <param name="Text">The text.</param>
sealed record CautionBlock(string Text) : Block;

/// <summary>A list of points.</summary>
/// <param name="Items">The points.</param>
sealed record PointsBlock(IReadOnlyList<string> Items) : Block;

/// <summary>A table; its head is repeated on every page that it reaches.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows; a cell that is <c>null</c> is a line to write on.</param>
sealed record TableBlock(IReadOnlyList<TableColumn> Columns, IReadOnlyList<IReadOnlyList<string?>> Rows) : Block
{
    /// <summary>Whether the last row sums the others up.</summary>
    public bool HasTotal { get; init; }
    /// <summary>Whether any column has a title; without one the first cell of a row names it.</summary>
    public bool HasHead => Columns.Any(c => c.Title.Length > 0);
}

/// <summary>A column of a table.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Share">Its part of the width, against the other columns'.</param>
/// <param name="IsNumber">Whether its cells end at its right edge.</param>
sealed record TableColumn(string Title, double Share, bool IsNumber = false);

/// <summary>Things to do or to check, each with a box to tick.</summary>
/// <param name="Items">What to tick.</param>
sealed record ChecksBlock(IReadOnlyList<CheckLine> Items) : Block;

/// <summary>A thing to do or to check.</summary>
/// <param name="Text">What.</param>
/// <param name="Pass">What it has to come to; empty where there is nothing to measure.</param>
/// <param name="Write">Unit or word beside a line to write a measurement on; <c>null</c> where there is nothing to write down.</param>
sealed record CheckLine(string Text, string Pass = "", string? Write = null)
{
    /// <summary>Id that stays the same for every board, for steps that a built board keeps count of; empty for others.</summary>
    public string Id { get; init; } = "";
    /// <summary>What <see cref="Pass"/> says in numbers; <c>null</c> where only a person can tell.</summary>
    public PassRange? Range { get; init; }
}

/// <summary>A picture, as wide as the page at most.</summary>
/// <param name="Drawing">The drawing.</param>
sealed record PictureBlock(Drawing Drawing) : Block;

/// <summary>A code that a telephone reads, with the address in words beside it.</summary>
/// <param name="Address">The address.</param>
/// <param name="Says">What it opens.</param>
sealed record CodeBlock(Uri Address, string Says) : Block;

/// <summary>Lines to sign on.</summary>
/// <param name="Titles">What each is for.</param>
sealed record SignaturesBlock(IReadOnlyList<string> Titles) : Block;
