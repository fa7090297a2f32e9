using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright;

/// <summary>Every analysis of a board, once, in order: the figures, and what the rules find.</summary>
public sealed record Examination
{
    Examination(Board board, IReadOnlyList<Figure> figures, IReadOnlyList<Finding> findings) =>
        (Board, Figures, Findings) = (board, figures, findings);

    /// <summary>The board.</summary>
    public Board Board { get; }

    /// <summary>Every figure that applies to the board, known or not, in the order of the catalogue.</summary>
    public IReadOnlyList<Figure> Figures { get; }

    /// <summary>Every finding, worst first.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Examines a board.</summary>
    public static Examination Of(Board board) => new(board, [], []);
}
