using System.Globalization;
using Boardwright.Files;
using Boardwright.Files.Yaml;

namespace Boardwright.Shops;

/// <summary>Finds the parts in a shelf file, for searching. It takes what it can read: a file with a mistake is kept and searched all the
/// same.</summary>
static class ShelfIndex
{
    /// <summary>The parts of a shelf file.</summary>
    public static IReadOnlyList<PartRow> Create(Guid item, KeptFile file)
    {
        if (NodeReader.Read(file.Text.TrimStart('\uFEFF'), file.Path, "", new Complaints()) is not SequenceNode list)
            return [];
        var parts = list.Items.OfType<MapNode>().ToList();
        return [.. parts.Select((part, at) => Row(item, at + 1, part, parts))];
    }

    static PartRow Row(Guid item, int order, MapNode part, List<MapNode> parts)
    {
        string Word(string key) => Value(part, key, parts, parts.Count);
        var (id, kind, name, supplier) = (Word("id"), Word("kind"), Word("name"), Word("supplier"));
        return new()
        {
            ItemId = item,
            Order = order,
            PartId = id,
            Kind = kind,
            Name = name,
            Supplier = supplier,
            Price = Word("price"),
            Stock = int.TryParse(Word("stock"), NumberStyles.None, CultureInfo.InvariantCulture, out var stock) ? stock : null,
            Words = Shop.Fold($"{id}\n{kind}\n{name}\n{supplier}"),
        };
    }

    /// <summary>A value of a part, or of the part in the same file that it is made from.</summary>
    static string Value(MapNode part, string key, List<MapNode> parts, int left) => part.Find(key) switch
    {
        ScalarNode scalar => scalar.Text,
        MapNode given when given.Find("value") is ScalarNode inner => inner.Text,
        null when key != "id" && key != "stock" && left > 0 && part.Find("use") is ScalarNode { IsEmpty: false } use
            && parts.Find(other => other.Find("id") is ScalarNode id && id.Text == use.Text) is { } origin =>
            Value(origin, key, parts, left - 1),
        _ => "",
    };
}
