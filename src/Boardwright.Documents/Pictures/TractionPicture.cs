using Boardwright.Documents.Charts;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Traction;

namespace Boardwright.Documents.Pictures;

/// <summary>The largest force over speed with what limits it, and what the road asks on several grades.</summary>
public static class TractionPicture
{
    const int RoadSteps = 48;
    static readonly double[] Grades = [0, 0.05, 0.10];

    /// <summary>Of a board.</summary>
    public static Answer<Chart> Draw(Examination examination) => Answer<Chart>.Ask("", needs =>
    {
        var run = needs.Read(examination.Moving);
        var envelope = needs.Read(Envelope.Compute(examination.Board, examination.Moving));
        var climb = examination.Board.Brief.ClimbWanted;
        var wanted = climb.IsKnown ? needs.Read(climb).Value : (double?)null;
        if (needs.Unmet || envelope.Full.Speeds.Count == 0)
            return null;
        var top = envelope.Full.Speeds[^1] * 1.03;
        var lines = new List<(string Name, string Begins, ForceLine Line, double LabelPart)>
        {
            ("full charge", "At full charge", envelope.Full, 0.42),
            ("half charge", "At half charge", envelope.Half, 0.28),
            (FormattableString.Invariant($"reserve, {100 * envelope.Reserve.Charge:0.#} %"), "At the reserve", envelope.Reserve, 0.16),
        };
        var most = envelope.Full.Forces.Max();
        var (series, named) = (new List<ChartSeries>(), new HashSet<ForceLimit>());
        foreach (var (name, _, line, part) in lines.Where(l => l.Line.Speeds.Count > 0))
        {
            series.Add(new Line(name, line.Speeds.ToArray(), line.Forces.ToArray())
            {
                LabelAt = SpeedOfForce(line, part * most),
                Stretches = [.. line.Stretches.Select(s => new AxisRange(s.From, s.To, named.Add(s.Limit) ? WordsFor(s.Limit) : ""))],
            });
        }

        foreach (var grade in Grades.Concat(wanted is { } w && Grades.All(g => Math.Abs(g - w) > 0.002) ? [w] : Array.Empty<double>())
            .Order())
        {
            var isWanted = wanted is { } asked && Math.Abs(asked - grade) <= 0.002;
            var speeds = Enumerable.Range(0, RoadSteps + 1).Select(i => top * i / RoadSteps).ToArray();
            series.Add(new Line(RoadName(grade, isWanted), speeds, speeds.Select(v => run.RoadForce(v, grade)).ToArray())
            {
                IsThin = true,
                Pen = isWanted ? 4 : 3
            });
        }

        return new Chart
        {
            Name = "traction",
            Title = BoardPictures.Title(examination, "largest force and road force over speed"),
            Says = Phrase.Join([.. lines.Select(l => Sentence(l.Begins, l.Line)), new($"The tyres would take {Force.FromNewtons(run.GripForce(0, 0))} from rest.")]),
            Across = Axis.For<Speed>("speed", "km/h") with { From = 0 },
            Panels = [new LinePanel(Axis.For<Force>("force at the wheels", "N") with { From = 0 }) { Series = series }],
        };
    });

    static string RoadName(double grade, bool isWanted) =>
        grade == 0 ? "level road" : FormattableString.Invariant($"{100 * grade:0.#} % {(isWanted ? "wanted" : "uphill")}");

    /// <summary>The highest speed at which a line still has a force.</summary>
    static double SpeedOfForce(ForceLine line, double force)
    {
        for (var i = line.Speeds.Count - 1; i > 0; i--)
        {
            if (line.Forces[i - 1] >= force)
                return line.Speeds[i];
        }

        return line.Speeds[0];
    }

    static Phrase Sentence(string begins, ForceLine line) => line.Speeds.Count == 0
        ? new($"{begins} the board has no force at all.")
        : Phrase.Join(new($"{begins} {Force.FromNewtons(line.Forces[0])} from rest;"), Limits(line));

    static Phrase Limits(ForceLine line) => Phrase.Join([.. line.Stretches.Where(s => s.To > s.From).Select((s, i) => new Phrase(
        $"{WordsFor(s.Limit)}{(i == 0 ? " limits" : "")} up to {Speed.FromMetresPerSecond(s.To):0.0 km/h}{End(line, s)}"))]);

    static string End(ForceLine line, LimitedStretch stretch) => stretch == line.Stretches.Last(s => s.To > s.From) ? "." : ",";

    static string WordsFor(ForceLimit limit) => limit switch
    {
        ForceLimit.PhaseCurrent => "phase current",
        ForceLimit.PackCurrent => "pack current",
        ForceLimit.Taper => "fading pack current",
        ForceLimit.PackPower => "pack resistance",
        ForceLimit.Voltage => "voltage",
        ForceLimit.ElectricalSpeed => "electrical speed",
        _ => "grip",
    };
}
