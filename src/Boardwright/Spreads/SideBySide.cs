using System.Runtime.InteropServices;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.UsualValues;

namespace Boardwright.Spreads;

/// <summary>A figure of one board less that of another.</summary>
/// <param name="Value">The difference of the boards as they stand, in the figure's unit.</param>
/// <param name="Low">Its 5 % quantile.</param>
/// <param name="High">Its 95 % quantile.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct FigureDifference(double Value, double Low, double High)
{
    /// <summary>Whether the difference exceeds the spread: its interval leaves out zero.</summary>
    public bool IsClear => Low > 0 || High < 0;
}

/// <summary>Boards beside one another: how well each figure is known, and which differences from the first board are more than what is not
/// known.</summary>
/// <remarks>
/// All boards are moved together. An entry with the same value and spread on two boards is taken for the same thing and moved
/// alike on both, so that what is not known about the rider or the road does not blur what another pulley changes; entries that
/// differ are independent.
/// </remarks>
/// <param name="Intervals">For each board the intervals of its figures, by id.</param>
/// <param name="Differences">For each board the differences of its figures from those of the first, by id; where either board has no value
/// in half of the samples there is none.</param>
/// <validity>As <see cref="Sampling"/>. Two parts of one kind are taken for equally off; where each piece differs on its own, the
/// difference is wider.</validity>
/// <error>As <see cref="Sampling"/>.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
public sealed record SideBySide(
    IReadOnlyList<IReadOnlyDictionary<string, Interval>> Intervals,
    IReadOnlyList<IReadOnlyDictionary<string, FigureDifference>> Differences)
{
    // What differs by less than this part differs by rounding only.
    const double Telling = 1e-9;

    /// <summary>Default number of points.</summary>
    public const int DefaultPoints = 128;

    /// <summary>Samples boards together.</summary>
    /// <param name="boards">The boards as they stand, at least one.</param>
    /// <param name="points">Number of points, 8 or more; a power of two spreads them best.</param>
    /// <param name="seed">Seed of the scrambling.</param>
    /// <param name="cancellation">Stops the work between two points.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than 8 points, or no boards.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SideBySide Compare(
        IReadOnlyList<Examination> boards, int points = DefaultPoints, ulong seed = 1, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfZero(boards.Count, nameof(boards));
        ArgumentOutOfRangeException.ThrowIfLessThan(points, 8);
        var inputs = boards.Select(e => Sampling.InputsOf(e.Board, e.Figures.SelectMany(f => f.From))).ToArray();
        var (places, count) = PlacesOf(inputs);
        var deviations = Sampling.Deviations(Math.Min(count, Sobol.MostDimensions), points, seed);
        var samples = boards.Select((e, i) => SamplesOf(e, places[i], deviations, points, cancellation)).ToArray();
        return new(
            [.. boards.Select((e, i) => IntervalsOf(e, samples[i]))],
            [.. boards.Select((e, i) => DifferencesOf(boards[0], samples[0], e, samples[i]))]);
    }

    // Each thing that is not known has a coordinate of its own; those beyond the last coordinate are left alone.
    static (Dictionary<string, int>[] Places, int Count) PlacesOf(IReadOnlyList<Sampling.Input>[] inputs)
    {
        var known = new Dictionary<string, List<(Sampling.Input Input, int Place)>>(StringComparer.Ordinal);
        var count = 0;
        var places = new Dictionary<string, int>[inputs.Length];
        for (var b = 0; b < inputs.Length; b++)
        {
            places[b] = new(StringComparer.Ordinal);
            foreach (var input in inputs[b])
            {
                if (!known.TryGetValue(input.Key, out var alike))
                    known[input.Key] = alike = [];
                var same = alike.FindIndex(a => a.Input.Spread == input.Spread && AreSame(a.Input.Content, input.Content));
                if (same < 0)
                {
                    alike.Add((input, count++));
                    same = alike.Count - 1;
                }

                if (alike[same].Place < Sobol.MostDimensions)
                    places[b][input.Key] = alike[same].Place;
            }
        }

        return (places, count);
    }

    static bool AreSame(object a, object b) =>
        Equals(a, b) || (a is ITable one && b is ITable other && a.GetType() == b.GetType() && one.Numbers.SequenceEqual(other.Numbers));

    static Dictionary<string, double?[]> SamplesOf(
        Examination examination, Dictionary<string, int> places, double[][] deviations, int points, CancellationToken cancellation)
    {
        var samples = examination.Figures.Where(f => f.Value is not null)
            .ToDictionary(f => f.Kind.Id, _ => new double?[points], StringComparer.Ordinal);
        var plan = Sampling.SamplingPlan.Create(examination.Board, places);
        Parallel.For(0, points, new ParallelOptions { CancellationToken = cancellation }, n =>
        {
            var figures = plan is null ? examination.Figures : Examination.FiguresOf((Board)plan.Moved(examination.Board, deviations, n));
            foreach (var figure in figures)
            {
                if (samples.TryGetValue(figure.Kind.Id, out var row))
                    row[n] = figure.Value;
            }
        });
        return samples;
    }

    static Dictionary<string, Interval> IntervalsOf(Examination examination, Dictionary<string, double?[]> samples)
    {
        var intervals = new Dictionary<string, Interval>(StringComparer.Ordinal);
        foreach (var figure in examination.Figures)
        {
            if (figure.Value is { } value)
            {
                var (low, high) = EndsOf([.. samples[figure.Kind.Id].OfType<double>()], samples[figure.Kind.Id].Length) ?? (value, value);
                intervals[figure.Kind.Id] = new(low, high, []);
            }
        }

        return intervals;
    }

    static Dictionary<string, FigureDifference> DifferencesOf(
        Examination first, Dictionary<string, double?[]> firstSamples, Examination other, Dictionary<string, double?[]> otherSamples)
    {
        var differences = new Dictionary<string, FigureDifference>(StringComparer.Ordinal);
        var before = first.Figures.ToDictionary(f => f.Kind.Id, f => f.Value, StringComparer.Ordinal);
        foreach (var figure in other.Figures)
        {
            if (figure.Value is not { } value || before.GetValueOrDefault(figure.Kind.Id) is not { } was)
                continue;
            var pairs = firstSamples[figure.Kind.Id].Zip(otherSamples[figure.Kind.Id], (a, b) => b - a).ToArray();
            var rounding = Telling * Math.Max(Math.Abs(was), Math.Abs(value));
            if (EndsOf([.. pairs.OfType<double>().Select(d => Math.Abs(d) <= rounding ? 0 : d)], pairs.Length) is var (low, high))
                differences[figure.Kind.Id] = new(Math.Abs(value - was) <= rounding ? 0 : value - was, low, high);
        }

        return differences;
    }

    static (double Low, double High)? EndsOf(double[] known, int all)
    {
        if (known.Length < all / 2)
            return null;
        Array.Sort(known);
        return (Quantile.OfSorted(known, 0.05), Quantile.OfSorted(known, 0.95));
    }
}
