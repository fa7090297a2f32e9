using System.Globalization;
using System.Text;
using System.Text.Json;
using Boardwright.Searches;

namespace Boardwright.Files.Results;

/// <summary>What a search found, for other programs: a JSON document, or a table of comma-separated values. Always in metric units, and the
/// same bytes for the same search.</summary>
public static class SearchDocument
{
    static readonly (string Name, Func<FoundBoard, double?> Of)[] Figures =
    [
        ("price", static b => b.Price is { } price ? (double)price.Amount : null),
        ("range_km", static b => b.Range / 1000),
        ("climb_%", static b => 100 * b.Climb),
        ("top_speed_km_h", static b => 3.6 * b.TopSpeed),
        ("mass_kg", static b => b.Mass),
        ("spare_%", static b => 100 * b.Spare),
    ];

    /// <summary>Writes everything that was found.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="misses">Where there is nothing, the boards that come nearest.</param>
    public static string Write(SearchResult result, IReadOnlyList<NearMiss>? misses = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        return ResultDocument.Document(json =>
        {
            json.WriteString("search", result.Request.Board.Name.Or(""));
            json.WriteBoolean("complete", result.IsComplete);
            json.WriteStartObject("taken_for_granted");
            foreach (var assumption in result.Assumptions)
                json.WriteString(assumption.Key, assumption.Text);
            json.WriteEndObject();
            ResultDocument.Texts(json, "missing", result.Missing);
            ResultDocument.Texts(json, "nothing_on_the_shelf_for", [.. result.Empty.Select(SlotKeys.KeyOf)]);
            Counts(json, result.Counts);
            json.WriteStartArray("boards");
            foreach (var (at, board) in result.Boards.Index())
                One(json, at + 1, board);
            json.WriteEndArray();
            if (misses is { Count: > 0 })
                Misses(json, misses);
        });
    }

    /// <summary>Writes the boards: a line of names, then a line for each.</summary>
    public static string WriteTable(SearchResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var text = new StringBuilder("number,").Append(string.Join(',', Figures.Select(f => f.Name))).Append(",fix,")
            .Append(string.Join(',', Enum.GetValues<Slot>().Select(SlotKeys.KeyOf))).Append('\n');
        foreach (var (at, board) in result.Boards.Index())
        {
            text.Append(at + 1);
            foreach (var (_, of) in Figures)
                text.Append(',').Append(of(board)?.ToString("R", CultureInfo.InvariantCulture));
            text.Append(',').Append(string.Join(' ', board.Fixes.Distinct(StringComparer.Ordinal)));
            foreach (var slot in Enum.GetValues<Slot>())
                text.Append(',').Append(board.Parts.FirstOrDefault(p => p.Slot == slot).Name);
            text.Append('\n');
        }

        return text.ToString();
    }

    static void Counts(Utf8JsonWriter json, SearchCounts counts)
    {
        json.WriteStartObject("combinations");
        json.WritePropertyName("all");
        json.WriteRawValue(counts.Raw.ToString(CultureInfo.InvariantCulture));
        json.WriteStartArray("do_not_go_together");
        foreach (var left in counts.LeftOut)
        {
            json.WriteStartObject();
            json.WriteString("rule", left.Reason);
            json.WritePropertyName("boards");
            json.WriteRawValue(left.Boards.ToString(CultureInfo.InvariantCulture));
            json.WriteString("claim", left.Says);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteNumber("screened", counts.Screened);
        json.WriteStartArray("miss_the_brief");
        foreach (var missed in counts.Missed)
        {
            json.WriteStartObject();
            json.WriteString("rule", missed.Rule);
            json.WriteNumber("boards", missed.Boards);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteNumber("meet_the_brief", counts.Met);
        json.WriteEndObject();
    }

    static void Misses(Utf8JsonWriter json, IReadOnlyList<NearMiss> misses)
    {
        json.WriteStartArray("near_misses");
        foreach (var (at, miss) in misses.Index())
        {
            json.WriteStartObject();
            json.WriteNumber("shortfall", miss.Shortfall);
            ResultDocument.Texts(json, "against", [.. miss.Against.Select(f => f.Says.In(UnitSystem.Metric))]);
            ResultDocument.Texts(json, "would_meet_it_with", [.. miss.Purchases.Select(p => p.Says)]);
            json.WritePropertyName("board");
            One(json, at + 1, miss.Board);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    static void One(Utf8JsonWriter json, int number, FoundBoard board)
    {
        json.WriteStartObject();
        json.WriteNumber("number", number);
        foreach (var (name, of) in Figures)
            ResultDocument.Number(json, name, of(board));
        json.WriteString("currency", board.Price?.Currency);
        json.WriteBoolean("every_part_priced", board.IsPriced);
        ResultDocument.Texts(json, "fix", [.. board.Fixes.Distinct(StringComparer.Ordinal)]);
        json.WriteNumber("measure", board.Measures);
        json.WriteStartObject("parts");
        foreach (var (slot, name) in board.Parts)
            json.WriteString(SlotKeys.KeyOf(slot), name);
        json.WriteEndObject();
        json.WriteEndObject();
    }
}
