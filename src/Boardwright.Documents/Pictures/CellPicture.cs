using Boardwright.Documents.Charts;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Documents.Pictures;

/// <summary>Rest voltage and resistance of the cell over its charge, with the points they were given by.</summary>
static class CellPicture
{
    const int Steps = 100;
    const int MostTemperatures = 4;

    /// <summary>Of a board's cell.</summary>
    public static Answer<Chart> Draw(Examination examination) => Answer<Chart>.Ask("", needs =>
    {
        var (cell, brief) = (examination.Board.Parts.Cell, examination.Board.Brief);
        var rest = needs.Read(cell.RestVoltage);
        var table = needs.Read(cell.Resistance);
        var temperature = needs.Read(brief.Temperature);
        if (needs.Unmet)
            return null;
        var charges = Enumerable.Range(0, Steps + 1).Select(i => (double)i / Steps).ToArray();
        Line ResistanceAt(Temperature at, string name, bool isThin) =>
            new(name, charges, charges.Select(c => table.At(c, at.Kelvins)).ToArray()) { IsThin = isThin };
        var lines = new List<ChartSeries> { ResistanceAt(temperature, FormatTemperature(temperature), isThin: false) };
        // The coldest, the warmest and what lies evenly between, so that a long table does not fill the panel.
        var given = table.Temperatures.Where(t => Math.Abs(t.Kelvins - temperature.Kelvins) > 0.5).ToList();
        var every = Math.Max(1, (given.Count + MostTemperatures - 2) / (MostTemperatures - 1));
        lines.AddRange(given.Where((_, i) => i % every == 0 || i == given.Count - 1)
            .Select(t => ResistanceAt(t, FormatTemperature(t), isThin: true)));
        return new Chart
        {
            Name = "cell",
            Title = BoardPictures.Title(examination, "rest voltage and resistance of one cell"),
            Says = Phrase.Join(
                new($"Dots are the points that were given; resistance over about a second, thick at the brief's {temperature}."),
                table.Temperatures.Count > 1 || table.Charges.Count > 1 ? default : new($"One resistance was given for every state.")),
            Across = Axis.For<Fraction>("state of charge", "%") with { From = 0, To = 1 },
            Guides = brief.Reserve.IsKnown ? [new Guide(brief.Reserve.Value.Value, new($"reserve"))] : [],
            Panels =
            [
                new LinePanel(Axis.For<Voltage>("rest voltage", "V"))
                {
                    Series = [new Line("rest voltage", charges, charges.Select(rest.At).ToArray()) { Pen = 0, LabelAt = 0.6 }],
                    Marks = [.. rest.Points.Select(p => new ChartMark(p.X.Value, p.Y.Volts, default))],
                },
                new LinePanel(Axis.For<Resistance>("resistance", "mohm") with { From = 0 }) { Series = lines },
            ],
        };
    });

    // With the word, as a temperature alone would not say what it is the temperature of; written in both systems alike.
    static string FormatTemperature(Temperature temperature) => FormattableString.Invariant($"at {temperature.Celsius:0.#} °C");
}
