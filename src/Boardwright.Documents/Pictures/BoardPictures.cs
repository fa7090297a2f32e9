using Boardwright.Documents.Charts;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Documents.Pictures;

/// <summary>A picture of a board.</summary>
/// <param name="Id">The word by which it is asked for.</param>
/// <param name="Shows">What it shows, in a few words.</param>
/// <param name="Of">Draws it from an examination; names the entries that are missing where it cannot.</param>
public sealed record BoardPicture(string Id, string Shows, Func<Examination, Answer<Chart>> Of);

/// <summary>Every picture that an examination can be shown in.</summary>
public static class BoardPictures
{
    /// <summary>The pictures, in the order in which they are best looked at.</summary>
    public static IReadOnlyList<BoardPicture> All { get; } =
    [
        new("traction", "largest force and road force over speed", TractionPicture.Draw),
        new("energy", "where the energy of the cruise goes", EnergyPicture.Draw),
        new("range", "range over cruise speed", RangePicture.Draw),
        new("charge", "current, voltage and charge while charging", ChargePicture.Draw),
        new("cell", "rest voltage and resistance of the cell", CellPicture.Draw),
    ];

    /// <summary>The title of a board's picture.</summary>
    internal static string Title(Examination examination, string says) => Title(examination.Board, says);

    /// <inheritdoc cref="Title(Examination, string)"/>
    internal static string Title(Board board, string says) =>
        board.Name.Or("") is { Length: > 0 } name ? $"{name}: {says}" : char.ToUpperInvariant(says[0]) + says[1..];
}
