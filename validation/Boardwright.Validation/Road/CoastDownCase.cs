using Boardwright.Findings;
using Boardwright.Road;
using Boardwright.Units;

namespace Boardwright.Validation.Road;

/// <summary>Coasting down, and what is found from it.</summary>
public sealed class CoastDownCase : Case
{
    static readonly RoadLoad Rider = new(Mass.FromKilograms(90), Number.FromValue(0.015), Area.FromSquareMetres(0.55), 1.2);
    static readonly Mass Effective = Mass.FromKilograms(91.5);
    static readonly Coasting Level = Rider.Coasting(Effective);
    const string Board = "90 kg, 91.5 kg effective, Crr 0.015, CdA 0.55 m², 1.2 kg/m³";

    /// <inheritdoc/>
    public override string Room => "Road";

    /// <inheritdoc/>
    public override string Topic => "Coast-down";

    /// <inheritdoc/>
    public override string About =>
        "The closed forms of a board that rolls free, and rolling and drag found from two stop-watch times. All by hand from the closed form, part of it confirmed by small steps; no measured coast-down of a board is open to anyone.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        foreach (var (from, to, seconds, metres) in new[]
        {
            (30, 0, "40.3127", "139.2835"), (30, 20, "8.79271", "60.1772"), (20, 10, "13.42740", "54.7185"), (10, 0, "18.09258", "24.3878"),
        })
        {
            var given = $"{Board}, {from} to {to} km/h";
            yield return Computed("Time", given, seconds, "s", Level.TimeBetween(Kmh(from), Kmh(to))?.Seconds ?? double.NaN);
            yield return Computed("Way", given, metres, "m", Level.DistanceBetween(Kmh(from), Kmh(to))?.Metres ?? double.NaN);
        }

        yield return Computed("Speed after 10 s", $"{Board}, from 30 km/h", "5.253711", "m/s", Level.SpeedAfter(Kmh(30), Duration.FromSeconds(10)).MetresPerSecond);
        yield return Computed("Time with three terms", "13 N, 0.4 N s/m, 0.33 kg/m, 91.5 kg, 8 to 2 m/s", "24.30854", "s",
            new Coasting(Effective, Force.FromNewtons(13), 0.33, 0.4)
            .TimeBetween(Speed.FromMetresPerSecond(8), Speed.FromMetresPerSecond(2))?.Seconds ?? double.NaN);

        foreach (var (factor, crr, area) in new[] { (1.0, "0.015000", "0.55000"), (1.01, "0.015178", "0.53414") })
        {
            var found = Coasting.FromTwoTimes(
                Effective, Kmh(30), Kmh(20), Kmh(10), Duration.FromSeconds(8.79271 * factor), Duration.FromSeconds(13.42740));
            var given = $"{Board}, 8.79271 s times {factor} from 30 to 20 km/h, 13.42740 s to 10 km/h";
            var allowed = Allowance.Part(1e-4, "the times have six digits");
            yield return Computed("Rolling from two times", given, crr, "",
                (found?.Constant.Newtons ?? double.NaN) / Rider.Weight.Newtons) with
            { Allowed = allowed };
            yield return Computed("Drag area from two times", given, area, "m²", 2 * (found?.DragKilogramsPerMetre ?? double.NaN) / 1.2) with { Allowed = allowed };
        }

        var (f0, f2) = Interval();
        const string interval = Board + ", 5 km/h steps from 30 km/h, force over the square of the mean speed";
        yield return Computed("Rolling force by the interval method", interval, "13.26852", "N", f0);
        yield return Computed("Drag by the interval method", interval, "0.328108", "kg/m", f2);
        yield return Computed("Rolling force left by a wind of 2 m/s, two ways", Board, "1.3200", "N", Rider.Drag(default, Speed.FromMetresPerSecond(2)).Newtons);

        var down = Rider.Coasting(Effective, Fraction.FromPercent(-3));
        var half = Duration.FromSeconds(30);
        yield return Computed("Terminal speed", Board + ", down 3 %", "6.33246", "m/s", down.TerminalSpeed?.MetresPerSecond ?? double.NaN);
        yield return Computed("Speed after 30 s", Board + ", down 3 %, from rest", "3.76692", "m/s", down.SpeedAfter(default, half).MetresPerSecond);
        yield return Computed("Way after 30 s", Board + ", down 3 %, from rest", "60.5471", "m", down.DistanceAfter(default, half).Metres);
    }

    // The classical way, to show its bias: m dv/dt over each step against the square of the step's middle speed, by least squares.
    static (double Constant, double Square) Interval()
    {
        var points = Enumerable.Range(0, 5).Select(static i =>
        {
            var (from, to) = (Kmh(30 - 5 * i), Kmh(25 - 5 * i));
            var middle = (from.MetresPerSecond + to.MetresPerSecond) / 2;
            var seconds = Level.TimeBetween(from, to)?.Seconds ?? double.NaN;
            return (X: middle * middle, Y: Effective.Kilograms * (from - to).MetresPerSecond / seconds);
        }).ToList();
        var (x, y) = (points.Average(static p => p.X), points.Average(static p => p.Y));
        var slope = points.Sum(p => (p.X - x) * (p.Y - y)) / points.Sum(p => (p.X - x) * (p.X - x));
        return (y - slope * x, slope);
    }

    static Speed Kmh(double value) => Speed.FromKilometresPerHour(value);

    static Check Computed(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.Thompson, "closed form", EvidenceLevel.ComputedFromPublished);
}
