using Boardwright.Documents.Charts;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Packs;

namespace Boardwright.Documents.Pictures;

/// <summary>Current, voltage and charge while a pack is charged from empty.</summary>
static class ChargePicture
{
    const double LongInHours = 3 * 3600;

    /// <summary>Of a board with its charger.</summary>
    public static Answer<Chart> Draw(Examination examination) => Answer<Chart>.Ask("", needs =>
    {
        var time = needs.Read(examination.Charge);
        var curve = needs.Read(ChargeCurve.Compute(examination.Board, examination.Pack, examination.Charge));
        if (needs.Unmet)
            return null;
        double[] Of(Func<ChargeMoment, double> value) => [.. curve.Moments.Select(value)];
        var seconds = Of(m => m.Seconds);
        var (turn, last) = (curve.TurnOver, curve.Moments[^1]);
        var marks = last.Charge > 0.8 ? new[] { new ChartMark(time.ToFourFifths.Seconds, 0.8, new($"80 % after {time.ToFourFifths:0.0 h}")) } : [];
        return new Chart
        {
            Name = "charge",
            Title = BoardPictures.Title(examination, "charge from empty"),
            Says = Phrase.Join(
                new($"The charger stops after {time.Full:0.0 h}."),
                turn.Seconds < last.Seconds ? new($"The current falls once the loaded pack has its full voltage, at {Fraction.FromValue(turn.Charge):0 %} of the charge.") : default,
                new($"Capacity over current, {time.LowerBound:0.0 h}, is a lower bound.")),
            Across = Axis.For<Duration>("time", last.Seconds > LongInHours ? "h" : "min") with { From = 0 },
            Guides = turn.Seconds < last.Seconds ? [new Guide(turn.Seconds, new($"current begins to fall"))] : [],
            Panels =
            [
                new LinePanel(Axis.For<Current>("current", "A") with { From = 0 }) { Series = [new Line("current", seconds, Of(m => m.Amperes))] },
                new LinePanel(Axis.For<Voltage>("voltage of the pack", "V")) { Series = [new Line("voltage", seconds, Of(m => m.Volts))] },
                new LinePanel(Axis.For<Fraction>("charge", "%") with { From = 0, To = 1 }) { Series = [new Line("charge", seconds, Of(m => m.Charge))],
                    Marks = marks },
            ],
        };
    });
}
