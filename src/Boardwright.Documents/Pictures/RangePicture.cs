using Boardwright.Documents.Charts;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Traction;

namespace Boardwright.Documents.Pictures;

/// <summary>How far a charge carries at each steady speed, with the range that is wanted and the pace at which it is reached.</summary>
public static class RangePicture
{
    const double Slowest = 8 / 3.6;
    const int Steps = 72;

    /// <summary>Of a board on the level.</summary>
    public static Answer<Chart> Draw(Examination examination) => Answer<Chart>.Ask("", needs =>
    {
        var run = needs.Read(examination.Running);
        var cruise = needs.Read(examination.Cruise);
        var speeds = needs.Read(examination.Speeds);
        var asks = examination.RangePace.IsKnown ? needs.Read(examination.RangePace) : null;
        var reserve = needs.Read(examination.Board.Brief.Reserve);
        var wish = needs.Read(examination.Board.Brief.CruiseSpeed);
        if (needs.Unmet)
            return null;
        // A hair below the top speed, where rounding would decide whether the limits still hold.
        var fastest = Math.Max(speeds.Half * (1 - 1e-6), wish.MetresPerSecond);
        var steps = Enumerable.Range(0, Steps + 1).Select(i => Slowest + (fastest - Slowest) * i / Steps)
            .Select(speed => (Speed: speed, Cruise: run.Cruising(speed, reserve.Value)!))
            .TakeWhile(s => s.Cruise is { } held && run.Allows(held.AtHalf, 0.5)).ToList();
        if (steps.Count < 2)
            return null;
        double[] x = [.. steps.Select(s => s.Speed)], y = [.. steps.Select(s => s.Cruise.Metres)];
        var stretches = StretchesOf(x, [.. steps.Select(s => s.Cruise.EndsAtTaper)]);
        var (guides, levels, marks) = (new List<Guide>(), new List<Guide>(), new List<ChartMark>());
        guides.Add(new(wish.MetresPerSecond, new($"cruise speed {wish:0.# km/h}")));
        if (cruise.Steady is { } asked)
            marks.Add(new(wish.MetresPerSecond, asked.Metres, new($"{Length.FromMetres(asked.Metres):0.0 km}")));
        if (asks?.Wanted is { } wanted)
            levels.Add(new(wanted, new($"{Length.FromMetres(wanted):0.# km} wanted")));
        // A pace beyond what the drive holds is no pace to ride at.
        var fits = asks?.Fastest is { } found && found <= x[^1] ? found : (double?)null;
        if (fits is { } pace && asks?.Wanted is { } metres)
        {
            guides.Add(new(pace, new($"pace {Speed.FromMetresPerSecond(pace):0.0 km/h}")));
            marks.Add(new(pace, metres, default));
        }

        return new Chart
        {
            Name = "range",
            Title = BoardPictures.Title(examination, "range over cruise speed"),
            Says = Phrase.Join(
                new($"Steady speed on the level from a full charge down to {reserve} of it, or to where the taper cuts."),
                asks switch
                {
                    null => default,
                    { Fastest: null } => new Phrase($"The range that is wanted is not reached at any pace."),
                    _ when fits is { } reached => new($"The range that is wanted is reached up to {Speed.FromMetresPerSecond(reached):0.0 km/h}."),
                    _ => new($"The range that is wanted is reached at every speed that the board holds."),
                }),
            Across = Axis.For<Speed>("steady speed", "km/h"),
            Guides = guides,
            Panels =
            [
                new LinePanel(Axis.For<Length>("range", "km") with { From = 0 })
                {
                    Series = [new Line("range", x, y) { LabelAt = x[x.Length / 6], Stretches = stretches }],
                    Levels = levels,
                    Marks = marks,
                },
            ],
        };
    });

    // Where the ride ends in one way up to some speed, and in another beyond it.
    static List<AxisRange> StretchesOf(double[] speeds, bool[] endsAtTaper)
    {
        var (stretches, since) = (new List<AxisRange>(), 0);
        for (var i = 1; i <= speeds.Length; i++)
        {
            if (i < speeds.Length && endsAtTaper[i] == endsAtTaper[since])
                continue;
            var end = endsAtTaper[since] ? "cut by the taper" : "down to the reserve";
            stretches.Add(new(speeds[since], speeds[Math.Min(i, speeds.Length - 1)], end));
            since = i;
        }

        return stretches.Count > 1 ? stretches : [];
    }
}
