using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;

namespace Boardwright.Spreads;

/// <summary>How well each figure is known: the inputs' spreads, independent and normal, carried through the whole examination.</summary>
/// <remarks>
/// Quasi-Monte-Carlo on a scrambled Sobol sequence; 5 % and 95 % quantiles of each figure, and the inputs whose ranks go
/// most closely with the figure's. The same board, number of points and seed give the same answer.
/// </remarks>
/// <validity>Independent inputs. A value is kept within its entry's bounds.</validity>
/// <error>The quantiles of a smooth figure are good to about a tenth of its spread with 256 points.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
public static class Spread
{
    /// <summary>Default number of points.</summary>
    public const int DefaultPoints = 256;

    /// <summary>Intervals of all figures that are known.</summary>
    /// <param name="examination">The board as it stands.</param>
    /// <param name="points">Number of points; a power of two spreads them best.</param>
    /// <param name="seed">Seed of the scrambling.</param>
    /// <param name="cancellation">Stops the work between two points.</param>
    public static IReadOnlyDictionary<string, Interval> Of(Examination examination, int points = DefaultPoints, ulong seed = 1, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 8);
        examination = WithDragArea(examination);
        var figures = examination.Figures.Where(f => f.Value is not null).ToArray();
        var used = figures.SelectMany(f => f.From).ToHashSet(StringComparer.Ordinal);
        var inputs = new List<string>();
        Collect(examination.Board, used, inputs);
        if (inputs.Count > Sobol.MostDimensions)
            inputs.RemoveRange(Sobol.MostDimensions, inputs.Count - Sobol.MostDimensions);
        if (inputs.Count == 0)
            return figures.ToDictionary(f => f.Kind.Id, f => new Interval(f.Value!.Value, f.Value.Value, []), StringComparer.Ordinal);

        var deviations = new double[inputs.Count][];
        for (var i = 0; i < inputs.Count; i++)
            deviations[i] = new double[points];
        var sobol = new Sobol(inputs.Count, seed);
        var point = new double[inputs.Count];
        for (var n = 0; n < points; n++)
        {
            sobol.Point((uint)n, point);
            for (var i = 0; i < inputs.Count; i++)
                deviations[i][n] = Normal.Quantile(point[i]);
        }

        var place = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < inputs.Count; i++)
            place[inputs[i]] = i;
        var plan = Plan.Of(examination.Board, place)!;
        var samples = new double?[figures.Length][];
        for (var f = 0; f < figures.Length; f++)
            samples[f] = new double?[points];
        var order = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var f = 0; f < figures.Length; f++)
            order[figures[f].Kind.Id] = f;
        Parallel.For(0, points, new ParallelOptions { CancellationToken = cancellation }, n =>
        {
            var moved = (Board)plan.Moved(examination.Board, deviations, n);
            foreach (var figure in Examination.FiguresOf(moved))
            {
                if (order.TryGetValue(figure.Kind.Id, out var f))
                    samples[f][n] = figure.Value;
            }
        });

        var ranks = Array.ConvertAll(deviations, d => Ranks.Of(d));
        return figures.Select((f, i) => (f.Kind.Id, Interval: IntervalOf(f.Value!.Value, samples[i], inputs, ranks)))
            .ToDictionary(p => p.Id, p => p.Interval, StringComparer.Ordinal);
    }

    /// <summary>A drag area that only follows from the stance is a guess and as uncertain as one.</summary>
    static Examination WithDragArea(Examination examination)
    {
        var brief = examination.Board.Brief;
        if (brief.DragArea.IsKnown || !brief.Stance.IsKnown)
            return examination;
        var guess = new Known<Area>(Traction.RunningAnalysis.DragAreaOf(brief.Stance.Value), from: Origin.Guess, key: brief.DragArea.Key);
        return Examination.Of(examination.Board with { Brief = brief with { DragArea = guess } });
    }

    static Interval IntervalOf(double value, double?[] sample, List<string> inputs, double[][] ranks)
    {
        var known = sample.Where(s => s is not null).Select(s => s!.Value).ToArray();
        if (known.Length < sample.Length / 2)
            return new Interval(value, value, []);
        var sorted = known.Order().ToArray();
        var (low, high) = (Quantile.OfSorted(sorted, 0.05), Quantile.OfSorted(sorted, 0.95));
        if (high - low <= 1e-12 * Math.Abs(value) || known.Length < sample.Length)
            return new Interval(low, high, []);
        var own = Ranks.Of(known);
        var matters = inputs
            .Select((key, i) => (Key: key, Strength: Math.Abs(Correlation(own, ranks[i]))))
            .OrderByDescending(p => p.Strength).ThenBy(p => p.Key, StringComparer.Ordinal)
            .TakeWhile(p => p.Strength > 0.2).Take(2).Select(p => p.Key).ToArray();
        return new Interval(low, high, matters);
    }

    /// <summary>Pearson's correlation of two lists of ranks, which is Spearman's of the values.</summary>
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

    static void Collect(Sheet sheet, HashSet<string> used, List<string> inputs)
    {
        foreach (var entry in Entry.Of(sheet.GetType()))
        {
            switch (entry.Read(sheet))
            {
                case Sheet inner:
                    Collect(inner, used, inputs);
                    break;
                case IEnumerable<Sheet> list:
                    foreach (var item in list)
                        Collect(item, used, inputs);
                    break;
                case IKnown { IsKnown: true } known when entry.SpreadOf(known) > 0 && used.Contains(known.Key):
                    inputs.Add(known.Key);
                    break;
            }
        }
    }

    /// <summary>What is to be moved on a sheet and on the sheets inside it, so that a sample touches nothing else.</summary>
    sealed record Plan(IReadOnlyList<(Entry Entry, int Input)> Values, IReadOnlyList<(Entry Entry, Plan Inner)> Sheets, IReadOnlyList<(Entry Entry, IReadOnlyList<Plan?> Items)> Lists)
    {
        public static Plan? Of(Sheet sheet, Dictionary<string, int> place)
        {
            List<(Entry, int)> values = [];
            List<(Entry, Plan)> sheets = [];
            List<(Entry, IReadOnlyList<Plan?>)> lists = [];
            foreach (var entry in Entry.Of(sheet.GetType()))
            {
                switch (entry.Read(sheet))
                {
                    case Sheet inner when Of(inner, place) is { } plan:
                        sheets.Add((entry, plan));
                        break;
                    case IEnumerable<Sheet> list when list.Select(item => Of(item, place)).ToArray() is var plans && plans.Any(p => p is not null):
                        lists.Add((entry, plans));
                        break;
                    case IKnown known when place.TryGetValue(known.Key, out var input):
                        values.Add((entry, input));
                        break;
                }
            }

            return values.Count + sheets.Count + lists.Count > 0 ? new Plan(values, sheets, lists) : null;
        }

        public Sheet Moved(Sheet sheet, double[][] deviations, int n) => sheet.With(
        [
            .. Values.Select(v => (v.Entry, v.Entry.Moved(v.Entry.Read(sheet), deviations[v.Input][n]))),
            .. Sheets.Select(s => (s.Entry, (object)s.Inner.Moved((Sheet)s.Entry.Read(sheet), deviations, n))),
            .. Lists.Select(l => (l.Entry, l.Entry.Known(((IEnumerable<Sheet>)l.Entry.Read(sheet)).Select((item, i) => l.Items[i]?.Moved(item, deviations, n) ?? item)))),
        ]);
    }
}
