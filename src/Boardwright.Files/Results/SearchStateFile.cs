using System.Globalization;
using System.Numerics;
using System.Text.Json;
using Boardwright.Searches;

namespace Boardwright.Files.Results;

/// <summary>Where a search stands, as a file.</summary>
public static class SearchStateFile
{
    /// <summary>Writes it.</summary>
    public static string Write(SearchState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return ResultDocument.Document(json =>
        {
            json.WriteString("search_of", state.Fingerprint.ToString("x16", CultureInfo.InvariantCulture));
            json.WriteNumber("next", state.NextBlock);
            json.WriteNumber("screened", state.Screened);
            json.WriteStartArray("missed");
            foreach (var missed in state.Missed)
                json.WriteNumberValue(missed);
            json.WriteEndArray();
            json.WriteStartObject("apart");
            foreach (var apart in state.Apart)
                json.WriteString(apart.Reason, apart.Boards.ToString(CultureInfo.InvariantCulture));
            json.WriteEndObject();
            json.WriteStartArray("kept");
            foreach (var kept in state.Kept)
                json.WriteStringValue(string.Create(CultureInfo.InvariantCulture, $"{kept.Field} {kept.Rolling} {kept.Feeding}"));
            json.WriteEndArray();
        });
    }

    /// <summary>Reads it.</summary>
    /// <returns>The state, or <c>null</c> when the text is none.</returns>
    public static SearchState? Read(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            var root = document.RootElement;
            return new SearchState(
                ulong.Parse(root.GetProperty("search_of").GetString()!, NumberStyles.HexNumber, CultureInfo.InvariantCulture),
                root.GetProperty("next").GetInt32(),
                [.. root.GetProperty("kept").EnumerateArray().Select(k => k.GetString()!.Split(' '))
                .Select(k => new SavedBoard(Whole(k[0]), Whole(k[1]), Whole(k[2])))],
                root.GetProperty("screened").GetInt64(),
                [.. root.GetProperty("missed").EnumerateArray().Select(m => m.GetInt64())],
                [.. root.GetProperty("apart").EnumerateObject()
                .Select(a => new SavedCount(a.Name, BigInteger.Parse(a.Value.GetString()!, CultureInfo.InvariantCulture)))]);
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or FormatException or InvalidOperationException
            or IndexOutOfRangeException or OverflowException or ArgumentNullException)
        {
            return null;
        }
    }

    static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
