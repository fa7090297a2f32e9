using System.Globalization;
using System.Text.Json;
using Boardwright.Examinations;
using Boardwright.Files.Results;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;

namespace Boardwright.Tests;

/// <summary>Boards that nobody would build: entries missing at random, and values at the very ends of what a file may hold.</summary>
public sealed class AnyBoardTests
{
    static readonly Board[] Starts = [Boards.Tern, Boards.Read("puffin"), Boards.Curlew];


    [Fact]
    public void Any_board_is_examined_and_every_finding_can_be_said_in_both_units() =>
        Parallel.For(
            0,
            HowMany,
            seed =>
            {
                var exam = Examination.Examine(Strange(seed));
                var told = exam.Findings.Sum(f => f.Says.In(UnitSystem.Metric).Length + f.Remedy.In(UnitSystem.Imperial).Length);
                Assert.True(told > 0);
                foreach (var figure in exam.Figures)
                    Assert.True(figure.Value is not { } value || double.IsFinite(value), $"{figure.Kind.Id} is {figure.Value}");
                foreach (var finding in exam.Findings)
                {
                    Assert.False(finding.Remedy.IsEmpty && finding.Level is (Level.Stop or Level.Fix), finding.Rule);
                    Assert.DoesNotContain("NaN", $"{finding.Says} {finding.Remedy}", StringComparison.Ordinal);
                }
            });

    [Fact]
    public void The_result_of_any_board_is_valid_JSON() =>
        Parallel.For(
            0,
            HowMany / 4,
            seed =>
            {
                var exam = Examination.Examine(Strange(seed));
                var spread = Spread.Sample(exam, 8);
                using var document = JsonDocument.Parse(ResultDocument.Write(CheckOutcome.Create(exam, spread)));
                Assert.Equal(exam.Findings.Count, document.RootElement.GetProperty("findings").GetArrayLength());
                foreach (var interval in spread.Intervals.Values)
                    Assert.True(interval.Low <= interval.High);
            });

    // The same boards in every run; more of them on demand.
    internal static int HowMany =>
        int.TryParse(Environment.GetEnvironmentVariable("BOARDWRIGHT_STRANGE_BOARDS"), CultureInfo.InvariantCulture, out var many) ? many : Thorough.Cases(400);

    internal static Board Strange(int seed)
    {
        var random = new Random(seed);
        return (Board)Strange(Starts[seed % Starts.Length], 0.01 + 0.6 * random.NextDouble(), random);
    }

    static Sheet Strange(Sheet sheet, double part, Random random)
    {
        var changes = new List<(Entry, object)>();
        foreach (var entry in Entry.ListEntries(sheet.GetType()))
        {
            switch (entry.Read(sheet))
            {
                case Sheet inner:
                    changes.Add((entry, Strange(inner, part, random)));
                    break;
                case IReadOnlyList<Sheet> list:
                    changes.Add((entry, entry.Known(
                        list.Where(_ => random.NextDouble() > part / 3).Select(s => Strange(s, part, random)).ToArray())));
                    break;
                case IReadOnlyDictionary<string, BoxPosition> spots:
                    changes.Add((entry, entry.Known(spots.Select(p => KeyValuePair.Create(p.Key, Strange(p.Value, part, random))))));
                    break;
                case IKnown known when random.NextDouble() < part:
                    changes.Add((entry, entry.WithName(Other(entry, random), known.Key)));
                    break;
            }
        }

        return sheet.With(changes);
    }

    static object Other(Entry entry, Random random)
    {
        if (random.NextDouble() < 0.3)
            return Nothing(entry);
        double Si() => Extreme(entry, random);
        return entry.Form switch
        {
            EntryForm.Quantity => entry.Known(Si()),
            EntryForm.Quantities => entry.Known(Enumerable.Range(0, random.Next(1, 4)).Select(_ => Si()).ToArray()),
            EntryForm.Count => entry.Known((int)Math.Round(Si())),
            EntryForm.Choice => entry.Known(entry.Choices[random.Next(entry.Choices.Count)]),
            EntryForm.YesNo => entry.Known(random.Next(2) == 0),
            EntryForm.ResistanceTable => entry.Known(new ResistanceTable(Resistance.FromOhms(Si()))),
            EntryForm.RollingTable => entry.Known(new RollingTable(Number.FromValue(Si()), new Dictionary<Surface, Number>())),
            EntryForm.Curve => entry.Known(new[] { (0.0, Si()), (0.5, Si()), (1.0, Si()) }),
            EntryForm.Text => entry.Known(random.Next(2) == 0 ? "another" : "M4"),
            _ => Nothing(entry),
        };
    }

    static object Nothing(Entry entry) => Activator.CreateInstance(typeof(Known<>).MakeGenericType(Held(entry)))!;

    static Type Held(Entry entry) => entry.Form switch
    {
        EntryForm.Quantities => typeof(Quantities<>).MakeGenericType(entry.ValueType),
        _ => entry.ValueType,
    };

    /// <summary>The least, the greatest, or a value anywhere between by order of magnitude.</summary>
    static double Extreme(Entry entry, Random random)
    {
        var (least, greatest) = (entry.Least, entry.Greatest);
        var smallest = entry.About.Positive && least <= 0 ? 1e-9 * greatest : least;
        return random.Next(4) switch
        {
            0 => smallest,
            1 => greatest,
            _ when smallest > 0 || least == 0 =>
                Math.Max(smallest, 1e-9 * greatest) * Math.Pow(greatest / Math.Max(smallest, 1e-9 * greatest), random.NextDouble()),
            _ => smallest + random.NextDouble() * (greatest - smallest),
        };
    }
}
