using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Fits;

/// <summary>A length that is a sum of dimensions, each of which may be off a little.</summary>
/// <remarks>A dimension that occurs twice counts once, with both signs added up. A maker's ± is taken as two standard deviations.</remarks>
/// <source cref="Sources.CommonPractice"/>
public sealed class DimensionChain
{
    static readonly ConcurrentDictionary<(Type Sheet, string Key), Entry?> Entries = new();

    readonly Link[] links;

    DimensionChain(double nominal, Link[] links) => (Nominal, this.links) = (Length.FromMetres(nominal), links);

    /// <summary>The length if every dimension is as written.</summary>
    public Length Nominal { get; }
    /// <summary>How far off it is at worst, when every dimension is off the wrong way by all of its ±.</summary>
    public Length Worst => Length.FromMetres(links.Sum(l => Abs(l.Times) * l.Most));
    /// <summary>How far off it likely is: two standard deviations, the root of their squares, and never more than the worst.</summary>
    public Length Likely
    {
        get
        {
            var squares = Length.FromMetres(2 * Sqrt(links.Sum(l => l.Times * l.Times * l.Deviation * l.Deviation)));
            return squares < Worst ? squares : Worst;
        }
    }

    /// <summary>The length in the worst case.</summary>
    public Length Least => Nominal - Worst;
    /// <summary>The greatest length that the dimensions leave open of which only two ends are known; the nominal one where there are
    /// none.</summary>
    public Length Possible => Nominal + Length.FromMetres(links.Where(l => l.IsOpen).Sum(l => Abs(l.Times) * l.Most));
    /// <summary>The dimensions that may be off, the one that matters most first.</summary>
    public IReadOnlyList<string> Loosest =>
        [.. links.Where(l => Abs(l.Times) * l.Most > 1e-9).OrderByDescending(l => Abs(l.Times) * l.Most).Select(l => l.Key)];

    /// <summary>A length that is what it is.</summary>
    public static DimensionChain Exact(Length length) => new(length.Si, []);

    /// <summary>An entry of a board, with its spread.</summary>
    /// <param name="needs">Collects what is missing.</param>
    /// <param name="known">The entry.</param>
    /// <param name="sheet">The sheet on which it is.</param>
    public static DimensionChain Read(Needs needs, Known<Length> known, Type sheet)
    {
        ArgumentNullException.ThrowIfNull(needs);
        var length = needs.Read(known);
        var key = known.Key[(known.Key.LastIndexOf('.') + 1)..];
        var spread = Entries.GetOrAdd((sheet, key), static place => Entry.ListEntries(place.Sheet).FirstOrDefault(e => e.Key == place.Key))
            ?.SpreadOf(known) ?? 0;
        return new(length.Si, [new(known.Key, 1, spread, 2 * spread, false)]);
    }

    /// <summary>A dimension of which only two ends are known: its middle, and half of the way to either end.</summary>
    public static DimensionChain Between(string key, Length least, Length most)
    {
        var half = Max(0, (most - least).Si) / 2;
        return new((least + most).Si / 2, [new(key, 1, half / Sqrt(3), half, true)]);
    }

    /// <summary>The sum of two.</summary>
    public DimensionChain Plus(DimensionChain other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new((Nominal + other.Nominal).Si, Joined(links, other.links));
    }

    static Link[] Joined(Link[] some, Link[] more)
    {
        var joined = new List<Link>(some.Length + more.Length);
        joined.AddRange(some);
        foreach (var link in more)
        {
            var at = joined.FindIndex(l => l.Key == link.Key);
            if (at < 0)
                joined.Add(link);
            else
            {
                var there = joined[at];
                joined[at] = new(
                    link.Key, there.Times + link.Times, Max(there.Deviation, link.Deviation), Max(there.Most, link.Most),
                    there.IsOpen || link.IsOpen);
            }
        }

        return [.. joined];
    }

    /// <summary>What is left when another is taken away.</summary>
    public DimensionChain Minus(DimensionChain other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Plus(other.Times(-1));
    }

    /// <summary>A multiple.</summary>
    public DimensionChain Times(double factor) =>
        new(Nominal.Si * factor, Array.ConvertAll(links, l => l with { Times = l.Times * factor }));

    /// <summary>A sum as uncertain as this one, of another length.</summary>
    public DimensionChain WithNominal(Length nominal) => new(nominal.Si, links);

    /// <summary>A dimension in the sum: how often it counts, its standard deviation and its ±, in metres, and whether only
    /// its two ends are known.</summary>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Link(string Key, double Times, double Deviation, double Most, bool IsOpen);
}
