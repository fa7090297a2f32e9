using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;

namespace Boardwright.Spreads;

/// <summary>Many boards like one, each uncertain entry moved by its own spread, and what some values become on each of them.</summary>
/// <remarks>
/// Quasi-Monte-Carlo on a scrambled Sobol sequence through the inverse of the normal distribution. The same board, number
/// of points and seed give the same samples, however many threads work on them.
/// </remarks>
/// <validity>Independent inputs. A value is kept within its entry's bounds.</validity>
/// <error>The quantiles of a smooth value are good to about a tenth of its spread with 256 points.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
sealed class Sampling
{
    // What differs by less than this part only differs by the arithmetic's own error, such as the charge left at the reserve, and has no
    // causes to look for.
    const double Telling = 1e-6;

    readonly List<Input> inputs;
    readonly double?[][] samples;
    readonly double[][] ranks;

    /// <summary>Moves a board and asks for its values, over and over.</summary>
    /// <param name="board">The board as it stands, its entries named.</param>
    /// <param name="used">Keys of the entries that the values rest on; others are left alone.</param>
    /// <param name="count">Number of values.</param>
    /// <param name="values">The values of a board, in a fixed order; asked from several threads at once.</param>
    /// <param name="points">Number of points, 8 or more; a power of two spreads them best.</param>
    /// <param name="seed">Seed of the scrambling.</param>
    /// <param name="progress">Told how many boards are done, now and then.</param>
    /// <param name="cancellation">Stops the work between two boards.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than 8 points.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public Sampling(
        Board board, IEnumerable<string> used, int count, Func<Board, IReadOnlyList<double?>> values,
        int points, ulong seed, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 8);
        inputs = InputsOf(board, used);
        if (inputs.Count > Sobol.MostDimensions)
            inputs.RemoveRange(Sobol.MostDimensions, inputs.Count - Sobol.MostDimensions);
        var deviations = Deviations(inputs.Count, points, seed);
        var place = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < inputs.Count; i++)
            place[inputs[i].Key] = i;
        samples = new double?[count][];
        for (var f = 0; f < count; f++)
            samples[f] = new double?[points];
        // Without anything uncertain all boards would be the same one.
        if (inputs.Count > 0)
        {
            var plan = SamplingPlan.Create(board, place)!;
            var (done, often) = (0, Math.Max(1, points / 100));
            Parallel.For(0, points, new ParallelOptions { CancellationToken = cancellation }, n =>
            {
                var row = values((Board)plan.Moved(board, deviations, n));
                for (var f = 0; f < count; f++)
                    samples[f][n] = row[f];
                var now = Interlocked.Increment(ref done);
                if (now % often == 0 || now == points)
                    progress?.Report(now);
            });
        }

        ranks = Array.ConvertAll(deviations, d => Ranks.Compute(d));
    }

    /// <summary>Keys of the uncertain entries.</summary>
    public IReadOnlyList<string> Inputs => [.. inputs.Select(i => i.Key)];

    /// <summary>How well a value is known.</summary>
    /// <param name="index">Which value.</param>
    /// <param name="value">The value of the board as it stands.</param>
    public Interval IntervalOf(int index, double value)
    {
        var sample = samples[index];
        var known = sample.Where(s => s is not null).Select(s => s!.Value).ToArray();
        if (known.Length == 0 || known.Length < sample.Length / 2)
            return new Interval(value, value, []);
        var sorted = known.Order().ToArray();
        var (low, high) = (Quantile.OfSorted(sorted, 0.05), Quantile.OfSorted(sorted, 0.95));
        if (high - low <= Telling * Math.Abs(value) || known.Length < sample.Length)
            return new Interval(low, high, []);
        var matters = Correlations(index)
            .Select((c, i) => (inputs[i].Key, Strength: Math.Abs(c)))
            .OrderByDescending(p => p.Strength).ThenBy(p => p.Key, StringComparer.Ordinal)
            .TakeWhile(p => p.Strength > Math.Max(0.2, Chance)).Take(2).Select(p => p.Key).ToArray();
        return new Interval(low, high, matters);
    }

    /// <summary>What to measure next: the entries whose measurement would narrow some values most.</summary>
    /// <remarks>
    /// An entry has the share ρ² in the variance of a value, ρ the rank correlation; measured, its own variance falls by
    /// r², r the measured spread over today's; correlations below three in the root of the number of points are chance. The interval then
    /// narrows to √(1 − ρ² (1 − r²)) of its width.
    /// </remarks>
    /// <param name="cared">Which values, with the ids they go by; each counts alike.</param>
    /// <returns>The entries, the most telling first; those that would narrow nothing by a hundredth are left out.</returns>
    public IReadOnlyList<Measurement> MeasureNext(IReadOnlyList<(int Index, string Id)> cared)
    {
        var varying = cared.Where(c => IsWhole(c.Index)).Select(c => (c.Id, Shares: Array.ConvertAll(Correlations(c.Index), Share)))
            .ToList();
        return
        [
            .. inputs.Select((input, i) => new Measurement(
                    input.Key, input.About, [.. varying.Select(
                    v => new Narrowing(v.Id, 1 - Math.Sqrt(Math.Max(0, 1 - v.Shares[i] * (1 - input.Gain * input.Gain)))))]))
                .Where(m => m.Narrows.Any(n => n.Part >= 0.01))
                .OrderByDescending(m => m.Narrows.Sum(n => n.Part)).ThenBy(m => m.Key, StringComparer.Ordinal),
        ];
    }

    // Three standard deviations of the correlation of ranks that have nothing to do with one another.
    double Chance => 3 / Math.Sqrt(ranks[0].Length);

    bool IsWhole(int index) =>
        samples[index].All(s => s is not null)
        && samples[index].Max() - samples[index].Min() > Telling * Math.Abs(samples[index].Max()!.Value);

    /// <summary>Share of an input in the variance of a value; none where the correlation is no more than chance gives with so many
    /// points.</summary>
    double Share(double correlation) => Math.Abs(correlation) > Chance ? correlation * correlation : 0;

    /// <summary>Pearson's correlation of ranks with each input, which is Spearman's of the values.</summary>
    double[] Correlations(int index)
    {
        var own = Ranks.Compute([.. samples[index].Select(s => s!.Value)]);
        return Array.ConvertAll(ranks, r => Correlation(own, r));
    }

    static double Correlation(double[] a, double[] b)
    {
        var mean = (a.Length + 1) / 2.0;
        double ab = 0, aa = 0, bb = 0;
        for (var i = 0; i < a.Length; i++)
        {
            var (x, y) = (a[i] - mean, b[i] - mean);
            ab += x * y;
            aa += x * x;
            bb += y * y;
        }

        return aa == 0 || bb == 0 ? 0 : ab / Math.Sqrt(aa * bb);
    }

    /// <summary>Standard normal deviations for a number of inputs at each point.</summary>
    internal static double[][] Deviations(int count, int points, ulong seed)
    {
        var deviations = new double[count][];
        for (var i = 0; i < count; i++)
            deviations[i] = new double[points];
        if (count == 0)
            return deviations;
        var sobol = new Sobol(count, seed);
        var point = new double[count];
        for (var n = 0; n < points; n++)
        {
            sobol.Point((uint)n, point);
            for (var i = 0; i < count; i++)
                deviations[i][n] = Normal.Quantile(point[i]);
        }

        return deviations;
    }

    /// <summary>The uncertain entries of a board among those that its values rest on.</summary>
    internal static List<Input> InputsOf(Board board, IEnumerable<string> used)
    {
        var found = new List<Input>();
        Collect(board, used.ToHashSet(StringComparer.Ordinal), found);
        return found;
    }

    static void Collect(Sheet sheet, HashSet<string> used, List<Input> found)
    {
        foreach (var entry in Entry.ListEntries(sheet.GetType()))
        {
            switch (entry.Read(sheet))
            {
                case Sheet inner:
                    Collect(inner, used, found);
                    break;
                case IEnumerable<Sheet> list:
                    foreach (var item in list)
                        Collect(item, used, found);
                    break;
                case IKnown { IsKnown: true } known when entry.SpreadOf(known) is var spread && spread > 0 && used.Contains(known.Key):
                    found.Add(new(known.Key, entry.About.Measure ?? entry.About.Says,
                        entry.MeasuredSpreadOf(known) / spread)
                    { Content = known.Content!, Spread = spread });
                    break;
            }
        }
    }

    /// <summary>What is to be moved on a sheet and on the sheets inside it, so that a sample touches nothing else.</summary>
    internal sealed record SamplingPlan(
        IReadOnlyList<(Entry Entry, int Input)> Values, IReadOnlyList<(Entry Entry, SamplingPlan Inner)> Sheets,
        IReadOnlyList<(Entry Entry, IReadOnlyList<SamplingPlan?> Items)> Lists)
    {
        public static SamplingPlan? Create(Sheet sheet, Dictionary<string, int> place)
        {
            List<(Entry, int)> values = [];
            List<(Entry, SamplingPlan)> sheets = [];
            List<(Entry, IReadOnlyList<SamplingPlan?>)> lists = [];
            foreach (var entry in Entry.ListEntries(sheet.GetType()))
            {
                switch (entry.Read(sheet))
                {
                    case Sheet inner when Create(inner, place) is { } plan:
                        sheets.Add((entry, plan));
                        break;
                    case IEnumerable<Sheet> list when list.Select(item => Create(item, place)).ToArray() is var plans
                        && Array.Exists(plans, p => p is not null):
                        lists.Add((entry, plans));
                        break;
                    case IKnown known when place.TryGetValue(known.Key, out var input):
                        values.Add((entry, input));
                        break;
                }
            }

            return values.Count + sheets.Count + lists.Count > 0 ? new SamplingPlan(values, sheets, lists) : null;
        }

        public Sheet Moved(Sheet sheet, double[][] deviations, int n) => sheet.With(
        [
            .. Values.Select(v => (v.Entry, v.Entry.Moved(v.Entry.Read(sheet), deviations[v.Input][n]))),
            .. Sheets.Select(s => (s.Entry, (object)s.Inner.Moved((Sheet)s.Entry.Read(sheet), deviations, n))),
            .. Lists.Select(l => (l.Entry,
                l.Entry.Known(((IEnumerable<Sheet>)l.Entry.Read(sheet))
                .Select((item, i) => l.Items[i]?.Moved(item, deviations, n) ?? item)))),
        ]);
    }

    /// <summary>An uncertain entry.</summary>
    /// <param name="Key">Its key.</param>
    /// <param name="About">How to measure it.</param>
    /// <param name="Gain">Its spread once measured, as a part of today's.</param>
    internal sealed record Input(string Key, string About, double Gain)
    {
        /// <summary>Its value.</summary>
        public required object Content { get; init; }
        /// <summary>One standard deviation of it.</summary>
        public required double Spread { get; init; }
    }
}

/// <summary>An entry worth measuring.</summary>
/// <param name="Key">Its key.</param>
/// <param name="How">How to measure it, or what it is where that is plain.</param>
/// <param name="Narrows">By how much each figure's interval would narrow.</param>
public sealed record Measurement(string Key, string How, IReadOnlyList<Narrowing> Narrows);

/// <summary>How much narrower a figure's interval becomes.</summary>
/// <param name="Figure">Id of the figure.</param>
/// <param name="Part">Part of its width that goes, 0 to 1.</param>
public readonly record struct Narrowing(string Figure, double Part);
