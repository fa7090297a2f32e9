using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>What came of reading a board file and its shelf.</summary>
/// <param name="Board">The board with every entry named, or <c>null</c> when there is any complaint: nothing is half loaded.</param>
/// <param name="Shelf">The shelf; empty when there is any complaint.</param>
/// <param name="Complaints">Everything that is wrong in the board file and in every shelf file.</param>
/// <param name="Places">Where each given value is written, by its dotted key.</param>
public sealed record LoadedBoard(
    Board? Board, Shelf Shelf, IReadOnlyList<Complaint> Complaints, IReadOnlyDictionary<string, SourceLocation> Places);
