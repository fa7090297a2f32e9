namespace Boardwright.Files.Yaml;

/// <summary>A piece of a YAML file, with its place.</summary>
/// <param name="At">Where it begins.</param>
abstract record Node(SourceLocation At);

/// <summary>A word, a number or a quoted text.</summary>
/// <param name="At">Where it begins.</param>
/// <param name="Text">The text, without quotation marks.</param>
/// <param name="IsPlain">Whether it stands without quotation marks.</param>
/// <param name="Start">Where it begins, in characters from the start of the text.</param>
/// <param name="End">Where it ends.</param>
sealed record ScalarNode(SourceLocation At, string Text, bool IsPlain, int Start, int End) : Node(At)
{
    /// <summary>Whether there is nothing at all.</summary>
    public bool IsEmpty => IsPlain && Text.Length == 0;
}

/// <summary>A map from keys to nodes, in the order of the file; no key appears twice.</summary>
/// <param name="At">Where it begins.</param>
/// <param name="Pairs">Its pairs.</param>
/// <param name="IsFlow">Whether it is written with braces.</param>
/// <param name="Start">Where it begins, in characters from the start of the text.</param>
/// <param name="End">Where its closing brace ends; without braces, where the next thing begins.</param>
sealed record MapNode(SourceLocation At, IReadOnlyList<(ScalarNode Key, Node Value)> Pairs, bool IsFlow, int Start, int End) : Node(At)
{
    /// <summary>The node under a key.</summary>
    public Node? Find(string key) => Pairs.FirstOrDefault(pair => string.Equals(pair.Key.Text, key, StringComparison.Ordinal)).Value;
}

/// <summary>A list of nodes.</summary>
/// <param name="At">Where it begins.</param>
/// <param name="Items">Its items.</param>
/// <param name="IsFlow">Whether it is written with brackets.</param>
/// <param name="Start">Where it begins, in characters from the start of the text.</param>
/// <param name="End">Where its closing bracket ends; without brackets, where the next thing begins.</param>
sealed record SequenceNode(SourceLocation At, IReadOnlyList<Node> Items, bool IsFlow, int Start, int End) : Node(At);

/// <summary>A piece that was complained about already and says nothing.</summary>
/// <param name="At">Where it begins.</param>
sealed record SpoiledNode(SourceLocation At) : Node(At);
