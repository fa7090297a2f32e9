using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;
using Boardwright.UsualValues;

namespace Boardwright.Files.Results;

/// <summary>The result document: everything an examination gave, as JSON for other programs. Always in metric units, and the same bytes for
/// the same board.</summary>
public static class ResultDocument
{
    // Signs such as ° and · stay readable; the document is never put into a page as it is.
    static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes an examination.</summary>
    public static string Write(Examination examination, Spread? spread = null) => Write(CheckOutcome.Create(examination, spread));

    /// <summary>Writes what an examination gave.</summary>
    public static string Write(CheckOutcome outcome) => Document(json =>
    {
        json.WriteString("board", outcome.Name);
        json.WriteStartArray("results");
        foreach (var figure in outcome.Figures)
            Result(json, figure, outcome);
        json.WriteEndArray();
        json.WriteStartArray("findings");
        foreach (var finding in outcome.Findings)
            One(json, finding, outcome.SourceOf(finding));
        json.WriteEndArray();
        MeasureNext(json, outcome.MeasureNext);
        Usual(json, outcome.Usual);
    });

    /// <summary>Writes what is wrong in the files, in place of the results that could not be had.</summary>
    public static string WriteErrors(IReadOnlyList<Complaint> complaints) => Document(json =>
    {
        json.WriteStartArray("errors");
        foreach (var complaint in complaints)
        {
            json.WriteStartObject();
            json.WriteString("file", complaint.File);
            json.WriteNumber("line", complaint.Line);
            json.WriteNumber("column", complaint.Column);
            json.WriteString("key", complaint.Key);
            json.WriteString("says", complaint.Says);
            json.WriteString("remedy", complaint.Remedy);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    internal static string Document(Action<Utf8JsonWriter> content)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteNumber("boardwright", Board.Version);
            content(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length) + "\n";
    }

    static void Result(Utf8JsonWriter json, Figure figure, CheckOutcome outcome)
    {
        var interval = outcome.Spread.GetValueOrDefault(figure.Kind.Id);
        json.WriteStartObject();
        json.WriteString("id", figure.Kind.Id);
        Number(json, "value", figure.Value);
        json.WriteString("unit", figure.Unit);
        Number(json, "low", figure.Value is null ? null : interval?.Low);
        Number(json, "high", figure.Value is null ? null : interval?.High);
        Texts(json, "from", figure.From);
        if (outcome.UsualOfFigures.TryGetValue(figure.Kind.Id, out var usual))
            Texts(json, "usual", usual);
        if (figure.Value is null)
            Texts(json, "missing", figure.Missing);
        if (figure.Caution is { } caution)
            json.WriteString("caution", caution);
        json.WriteEndObject();
    }

    static void Usual(Utf8JsonWriter json, IReadOnlyList<TakenValue> taken)
    {
        json.WriteStartArray("usual_values");
        foreach (var value in taken)
        {
            json.WriteStartObject();
            json.WriteString("key", value.Key);
            json.WriteString("value", value.Value);
            json.WriteNumber("factor", Math.Round(value.Factor, 3));
            json.WriteString("says", value.Row.Equation);
            json.WriteString("source", value.Row.Source.Text);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    static void One(Utf8JsonWriter json, Finding finding, string source)
    {
        json.WriteStartObject();
        json.WriteString("id", finding.Rule);
        json.WriteString("level", finding.Level.Word);
        json.WriteString("where", finding.Where);
        json.WriteString("says", finding.Says.In(UnitSystem.Metric));
        Number(json, "value", finding.Value?.Value);
        Number(json, "limit", finding.Limit?.Value);
        json.WriteString("unit", finding.Value?.Unit ?? finding.Limit?.Unit);
        json.WriteString("remedy", finding.Remedy.IsEmpty ? null : finding.Remedy.In(UnitSystem.Metric));
        json.WriteString("source", source);
        if (finding.Mend is { } mend)
        {
            json.WriteStartObject("change");
            json.WriteString("key", mend.Key);
            json.WriteString("value", mend.Text);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    internal static void MeasureNext(Utf8JsonWriter json, IReadOnlyList<Measurement> measurements)
    {
        json.WriteStartArray("measure_next");
        foreach (var measurement in measurements)
        {
            json.WriteStartObject();
            json.WriteString("key", measurement.Key);
            json.WriteString("how", measurement.How);
            json.WriteStartObject("narrows_%");
            foreach (var narrowing in measurement.Narrows)
                json.WriteNumber(narrowing.Figure, 100 * narrowing.Part);
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // JSON has no way to write a number that is not finite.
    internal static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(name, number);
        else
            json.WriteNull(name);
    }

    internal static void Texts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }
}
