using Boardwright.Files.Yaml;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>Several entries that data sheets print as one, such as <c>63 x 74 mm</c> for a can; each can be written by itself too, and then
/// goes before.</summary>
/// <param name="Sheet">The sheet that has the entries.</param>
/// <param name="Key">The key in the file.</param>
/// <param name="Parts">Keys of the entries, in the order in which they are printed.</param>
/// <param name="Example">A right value.</param>
sealed record JoinedEntry(Type Sheet, string Key, IReadOnlyList<string> Parts, string Example)
{
    static readonly string[] Box = ["length", "width", "height"];
    static readonly char[] Times = ['x', 'X', '×', '*'];

    /// <summary>Every one of them.</summary>
    public static IReadOnlyList<JoinedEntry> All { get; } =
    [
        new(typeof(Motor), "can", ["can_diameter", "can_length"], "63 x 74 mm"),
        new(typeof(Wheel), "size", ["diameter", "width"], "107 x 65 mm"),
        new(typeof(Controller), "size", Box, "110 x 74 x 26 mm"),
        new(typeof(Protection), "size", Box, "90 x 60 x 8 mm"),
        new(typeof(Fuse), "size", Box, "45 x 18 x 14 mm"),
        new(typeof(Pack), "size", Box, "330 x 150 x 42 mm"),
        new(typeof(Box), "inner", ["inner_length", "inner_width", "inner_depth"], "590 x 152 x 52 mm"),
        new(typeof(Remote), "receiver", ["receiver_length", "receiver_width", "receiver_height"], "40 x 22 x 9 mm"),
        new(typeof(Pack), "cells", ["series", "parallel"], "12S4P"),
    ];

    /// <summary>Whether it counts cells.</summary>
    public bool IsCells => Key == "cells";

    /// <summary>What it says, for schemas and complaints.</summary>
    public string Says => $"{Words(" x ")}, as data sheets print them.";

    /// <summary>Those of a type of sheet.</summary>
    public static IEnumerable<JoinedEntry> Within(Type sheet) => All.Where(joined => joined.Sheet == sheet);
    /// <summary>The one of a type of sheet under a key.</summary>
    public static JoinedEntry? Find(Type sheet, string key) => All.FirstOrDefault(joined => joined.Sheet == sheet && joined.Key == key);

    /// <summary>The pieces of a text, as each entry by itself would be written; where only the last has a unit it is that of all, and
    /// millimetres where none has.</summary>
    /// <returns>The pieces; <c>null</c> where there are too few or too many.</returns>
    public IReadOnlyList<string>? Split(string text)
    {
        if (IsCells)
            return CellCount.Read(text) is { } count ? [FormattableString.Invariant($"{count.Series}"), FormattableString.Invariant($"{count.Parallel}")] : null;
        var pieces = text.Split(Times, StringSplitOptions.TrimEntries);
        if (pieces.Length != Parts.Count || pieces.Any(static piece => piece.Length == 0))
            return null;
        var unit = pieces[^1].TrimStart('0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', ',').Trim();
        return [.. pieces.Select(piece => char.IsAsciiDigit(piece[^1]) ? $"{piece} {(unit.Length > 0 ? unit : "mm")}" : piece)];
    }

    /// <summary>The piece of a written value that stands for an entry.</summary>
    public string? PieceOf(string text, string key) =>
        Split(text) is { } pieces ? Parts.Zip(pieces).FirstOrDefault(pair => pair.First == key).Second : null;

    /// <summary>A written value with another piece for one of its entries.</summary>
    /// <returns>The new value; <c>null</c> where the old one is not in order or the new one would not be.</returns>
    public string? WithPiece(string text, string key, string piece)
    {
        if (Split(text) is not { } pieces)
            return null;
        var changed = Parts.Zip(pieces).Select(pair => pair.First == key ? piece : pair.Second).ToList();
        var joined = IsCells ? $"{changed[0]}S{changed[1]}P" : string.Join(" x ", changed);
        return Split(joined) is null ? null : joined;
    }

    /// <summary>Reads its value into a draft.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="node">The value.</param>
    /// <param name="key">Dotted key.</param>
    /// <param name="values">Reads each piece.</param>
    /// <param name="complaints">Takes what is wrong.</param>
    public void Fill(SheetDraft draft, Node node, string key, ValueReader values, Complaints complaints)
    {
        var frame = node as MapNode;
        if (node is SpoiledNode)
            return;
        if ((frame?.Find("value") ?? node) is not ScalarNode { IsEmpty: false } written)
        {
            complaints.Add(node.At, key, $"{ValueReader.Shown(node)} stands where {key} wants {Words(" x ")}.", $"Write a value such as {Example}.");
            return;
        }

        var bare = ValueReader.Unmarked(written) ?? written;
        if (Split(bare.Text) is not { } pieces)
        {
            complaints.Add(written.At, key, $"{QuantityText.Quote(bare.Text)} is not {Words(" x ")}, which {key} wants.", $"Write {(IsCells ? "series and parallel" : "all of them with an x between")}, such as {Example}.");
            return;
        }

        var mark = bare == written ? "" : ValueReader.GuessMark;
        foreach (var (part, piece) in Parts.Zip(pieces))
        {
            var entry = Entry.ListEntries(Sheet).Single(candidate => candidate.Key == part);
            Node one = written with { Text = piece + mark };
            if (frame is not null)
                one = frame with { Pairs = [.. frame.Pairs.Select(pair => pair.Key.Text == "value" ? (pair.Key, one) : pair)] };
            if (values.Read(entry, one, key) is { } known)
                draft.Set(entry, known, written.At);
        }
    }

    string Words(string between) => IsCells ? "cells in series and parallel" : string.Join(between, Parts.Select(static part => part.Split('_')[^1]));
}
