using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>The kinds of part, by the word that files use for them.</summary>
static class PartKinds
{
    /// <summary>Every kind of part that can lie on a shelf. A pack is made for one board and is written there.</summary>
    public static IReadOnlyDictionary<string, Type> OnShelf { get; } = typeof(Part).Assembly.GetTypes()
        .Where(static type => type.IsSubclassOf(typeof(Part)) && !type.IsAbstract && type != typeof(Pack))
        .OrderBy(static type => type.MetadataToken)
        .ToDictionary(WordOf, StringComparer.Ordinal);

    /// <summary>The word for a kind.</summary>
    public static string WordOf(Type part) => Entry.Snake(part.Name);
}
