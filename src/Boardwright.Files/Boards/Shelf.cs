using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>A part on the shelf.</summary>
/// <param name="Id">Its id, unique on the shelf.</param>
/// <param name="Kind">Its kind as the file writes it, such as <c>motor</c>.</param>
/// <param name="Part">The part.</param>
/// <param name="At">Where it is written.</param>
public sealed record ShelfPart(string Id, string Kind, Part Part, SourceLocation At);

/// <summary>Every part of every shelf file that a board names.</summary>
/// <param name="Parts">The parts, in the order of the files.</param>
public sealed record Shelf(IReadOnlyList<ShelfPart> Parts)
{
    /// <summary>A shelf with nothing on it.</summary>
    public static Shelf Empty { get; } = new([]);

    /// <summary>The parts of one type.</summary>
    public IEnumerable<T> PartsOfType<T>()
        where T : Part =>
        Parts.Select(part => part.Part).OfType<T>();

    /// <summary>A part by its id.</summary>
    /// <returns>The part, or <c>null</c> when the shelf has none of that id.</returns>
    public ShelfPart? Find(string id) => Parts.FirstOrDefault(part => string.Equals(part.Id, id, StringComparison.Ordinal));
}
