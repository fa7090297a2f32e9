using System.Globalization;
using Boardwright.Boxes;

namespace Boardwright.Tests.Boxes;

/// <summary>The search against boxes with invented contents, and against a general constraint solver on the same boxes.</summary>
/// <remarks>The solver's answers, given up to 60 s for each box, are kept in <c>oracle.txt</c>; BOARDWRIGHT_ORACLE=1 asks it anew for all
/// of them, which takes half an hour, and has the search do all of the fuller ones.</remarks>
public sealed class FloorSearchTests
{
    const double Seconds = 60;

    const int Rounds = 2000;

    static readonly bool IsAskedAnew = Environment.GetEnvironmentVariable("BOARDWRIGHT_ORACLE") is "1";

    // Read, or asked, once for all tests.
    static readonly Lazy<Dictionary<int, Verdict>> Answers = new(Ask);

    static readonly int[] Seeds = [.. Enumerable.Range(0, RandomBoxes.Count)];

    static readonly int[] FullerSeeds = [.. Enumerable.Range(RandomBoxes.Fuller, RandomBoxes.FullerCount)];

    static string File { get; } = Repository.At("tests", "Boardwright.Tests", "Boxes", "oracle.txt");

    [Fact]
    public void Random_boxes_are_as_full_as_they_are_said_to_be()
    {
        Assert.All(Seeds, seed => Assert.InRange(RandomBoxes.Fill(RandomBoxes.Of(seed)), 0.69, 0.8501));
        Assert.All(FullerSeeds.Where(RandomBoxes.IsCut), seed => Assert.InRange(RandomBoxes.Fill(RandomBoxes.Of(seed)), 0.84, 0.9501));
    }

    [Fact]
    public void Nothing_ever_overlaps_and_what_the_solver_fits_is_fitted()
    {
        var oracle = Answers.Value;
        var (fitted, both) = (Seeds.Where(seed => oracle[seed] == Verdict.Fits).ToList(), 0);
        foreach (var seed in Seeds)
        {
            var isFound = Search(seed);
            Assert.False(isFound && oracle[seed] == Verdict.DoesNotFit, $"Box {seed} is said to be fitted both ways.");
            both += isFound && oracle[seed] == Verdict.Fits ? 1 : 0;
        }

        Assert.True(fitted.Count > 150, $"The solver fits only {fitted.Count} boxes.");
        Assert.True(both >= 0.95 * fitted.Count, $"{both} of {fitted.Count} boxes are fitted.");
    }

    [Fact]
    public void Boxes_fuller_than_they_should_be_overlap_no_more_than_others()
    {
        // A few of them and a short search in every run; all of them and the usual one together with the solver.
        var (seeds, rounds) = IsAskedAnew ? (FullerSeeds, Rounds) : (FullerSeeds[..16], 40);
        var oracle = Answers.Value;
        var found = seeds.Where(seed => Search(seed, rounds)).ToList();

        Assert.DoesNotContain(found, seed => oracle[seed] == Verdict.DoesNotFit);
        Assert.True(rounds < Rounds || FullerSeeds.All(seed => oracle[seed] != Verdict.Fits || found.Contains(seed)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(20)]
    public void The_solver_and_the_search_agree_on_a_box_that_is_asked_anew(int seed)
    {
        var plan = RandomBoxes.Of(seed);
        var (verdict, places) = FloorOracle.Ask(plan, Seconds);

        Assert.Equal(Verdict.Fits, verdict);
        // The solver's own answer keeps the rules as the plan has them: both were given the same task.
        Assert.True(plan.IsSolvedBy(places));
        Assert.True(FloorSearch.Fit(plan).IsComplete);
    }

    [Fact]
    public void The_same_box_is_laid_out_the_same_way_twice() =>
        Assert.Equal(FloorSearch.Fit(RandomBoxes.Of(7)).Places, FloorSearch.Fit(RandomBoxes.Of(7)).Places);

    [Fact]
    public void What_is_certainly_too_small_is_never_fitted()
    {
        var proved = 0;
        foreach (var seed in Seeds.Where(seed => seed % 5 == 0))
        {
            // The same contents in a floor that is made smaller step by step.
            for (var less = 10; less <= 40; less += 15)
            {
                var plan = Smaller(RandomBoxes.Of(seed), less);
                if (!plan.IsCertainlyTooSmall)
                    continue;
                proved++;
                Assert.False(FloorSearch.Fit(plan, 20).IsComplete, $"Box {seed}, {less} mm narrower");
            }
        }

        Assert.True(proved > 20, $"Only {proved} were proved.");
    }

    static FloorPlan Smaller(FloorPlan plan, int less)
    {
        var across = plan.Across - less;
        return new(plan.Along, across,
            [.. plan.Pieces.Select(p =>
            p with { Forms = [.. p.Forms.Select(f => FloorForm.Anywhere(f.Turn, f.Along, f.Across, f.Rooms, plan.Along, across))] })]);
    }

    /// <summary>Searches, and looks at the answer with plain rectangles of its own.</summary>
    static bool Search(int seed, int rounds = Rounds)
    {
        var plan = RandomBoxes.Of(seed);
        var found = FloorSearch.Fit(plan, rounds);
        var lying = new List<(FloorRectangle Outline, FloorRectangle[] Rooms)>();
        foreach (var (piece, place) in plan.Pieces.Zip(found.Places))
        {
            if (place is not { } at)
                continue;
            var form = piece.Forms[at.Form];
            lying.Add((new(at.X, at.Y, form.Along, form.Across),
                [.. form.Rooms.Select(r => new FloorRectangle(r.X + at.X, r.Y + at.Y, r.Along, r.Across))]));
        }

        foreach (var (i, (outline, rooms)) in lying.Index())
        {
            Assert.All(rooms.Append(outline),
                r => Assert.True(r.X >= 0 && r.Y >= 0 && r.X + r.Along <= plan.Along && r.Y + r.Across <= plan.Across, $"Box {seed}: something sticks out."));
            foreach (var (j, (other, _)) in lying.Index().Where(pair => pair.Index != i))
            {
                Assert.True(Shared(outline, other) == 0, $"Box {seed}: {i} and {j} overlap.");
                Assert.True(rooms.All(room => Shared(room, other) == 0), $"Box {seed}: {j} lies where the leads of {i} bend.");
            }
        }

        Assert.Equal(found.IsComplete, plan.IsSolvedBy(found.Places));
        return found.IsComplete;
    }

    static int Shared(FloorRectangle a, FloorRectangle b) =>
        Math.Max(0, Math.Min(a.X + a.Along, b.X + b.Along) - Math.Max(a.X, b.X))
        * Math.Max(0, Math.Min(a.Y + a.Across, b.Y + b.Across) - Math.Max(a.Y, b.Y));

    static Dictionary<int, Verdict> Ask()
    {
        if (IsAskedAnew)
            System.IO.File.WriteAllLines(File, [.. Seeds.Concat(FullerSeeds).Select(seed => $"{seed.ToString(CultureInfo.InvariantCulture)} {FloorOracle.Ask(RandomBoxes.Of(seed), Seconds).Verdict}")]);
        return System.IO.File.ReadAllLines(File).Select(line => line.Split(' '))
            .ToDictionary(words => int.Parse(words[0], CultureInfo.InvariantCulture), words => Enum.Parse<Verdict>(words[1]));
    }
}
