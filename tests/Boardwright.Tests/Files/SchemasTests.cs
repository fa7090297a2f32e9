using System.Text.Json;
using System.Text.RegularExpressions;
using Boardwright.Builds;
using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

public sealed class SchemasTests
{
    [Theory]
    [InlineData("board")]
    [InlineData("shelf")]
    [InlineData("built")]
    public void The_written_schema_is_current(string name)
    {
        var file = Path.Combine(Repository.Root, $"docs/schema/{name}.schema.json");
        var schema = name switch { "board" => Schemas.Board(), "shelf" => Schemas.Shelf(), _ => Schemas.Built() };
        if (Environment.GetEnvironmentVariable("BOARDWRIGHT_BLESS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, schema);
        }

        Assert.True(File.ReadAllText(file) == schema, $"docs/schema/{name}.schema.json is out of date: run boardwright schema.");
    }

    [Fact]
    public void Every_entry_of_every_sheet_is_in_the_schema_of_its_file()
    {
        var board = JsonDocument.Parse(Schemas.Board()).RootElement;
        Holds(board, typeof(Board), board);
        var built = JsonDocument.Parse(Schemas.Built()).RootElement;
        Holds(built, typeof(BuiltBoard), built);
        var shelf = JsonDocument.Parse(Schemas.Shelf()).RootElement;
        foreach (var type in typeof(Part).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Part)) && type != typeof(Pack)))
            Holds(shelf.GetProperty("$defs").GetProperty("shelf_" + Entry.Snake(type.Name)), type, shelf, "count");

        static void Holds(JsonElement schema, Type type, JsonElement document, string? but = null)
        {
            Assert.False(schema.GetProperty("additionalProperties").GetBoolean());
            foreach (var entry in Entry.ListEntries(type).Where(entry => entry.Key != but))
            {
                Assert.True(schema.GetProperty("properties").TryGetProperty(entry.Key, out var property), $"{type.Name}.{entry.Key}");
                Assert.StartsWith(entry.About.Says, property.GetProperty("description").GetString(), StringComparison.Ordinal);
                if (entry.Form is not (EntryForm.Sheet or EntryForm.Sheets or EntryForm.NamedSheets))
                    continue;
                var part = entry.ValueType.IsSubclassOf(typeof(Part));
                Holds(document.GetProperty("$defs").GetProperty((part ? "part_" : "sheet_") + Entry.Snake(entry.ValueType.Name)), entry.ValueType,
                    document);
            }
        }
    }

    [Fact]
    public void Every_reference_has_its_definition()
    {
        foreach (var schema in new[] { Schemas.Board(), Schemas.Shelf(), Schemas.Built() })
        {
            var definitions = JsonDocument.Parse(schema).RootElement.GetProperty("$defs");
            foreach (Match reference in Regex.Matches(schema, "\"#/\\$defs/(?<name>[a-z_0-9]+)\"", RegexOptions.ExplicitCapture, TimeSpan.FromMinutes(1)))
                Assert.True(definitions.TryGetProperty(reference.Groups["name"].Value, out _), reference.Value);
        }
    }

    [Fact]
    public void The_pattern_of_a_dimension_takes_every_spelling_and_its_examples()
    {
        foreach (var dimension in QuantityText.AllDimensions)
        {
            var pattern = new Regex(Schemas.Pattern(dimension), RegexOptions.None, TimeSpan.FromMinutes(1));
            foreach (var unit in dimension.Units.SelectMany(unit => unit.Spellings.Prepend(unit.Symbol)).Where(unit => unit.Length > 0))
            {
                foreach (var number in new[] { "1", "-1.5", ".5", "1e-3", "1 1/4", "5/16" })
                    Assert.Matches(pattern, $"{number} {unit}");
                Assert.DoesNotMatch(pattern, $"1,5 {unit}");
                Assert.DoesNotMatch(pattern, $"1 {unit}x");
            }

            if (dimension.Find("") is null)
                Assert.Matches(pattern, dimension.Example);
            Assert.Matches(pattern, QuantityText.Write((dimension.Least + dimension.Greatest) / 3, dimension) is var written
                && dimension.Find("") is null ? written : "1 %");
        }

        var gauge = new Regex(Schemas.Pattern(Area.Dimension), RegexOptions.None, TimeSpan.FromMinutes(1));
        foreach (var text in new[] { "AWG 12", "12 AWG", "AWG 4/0", "AWG 0", "AWG 000" })
            Assert.Matches(gauge, text);
    }
}
