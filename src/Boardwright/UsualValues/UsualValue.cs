using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.UsualValues;

/// <summary>An entry that listings do not print, and what is taken for it from what is known.</summary>
/// <remarks>The spread is one standard deviation of the logarithm, written ×/÷ f: two cases in three lie between value/f and
/// value · f.</remarks>
public sealed class UsualValue
{
    readonly Func<Board, Board, Board> fill;

    UsualValue(string key, string inputs, string equation, double factor, string validity, Source source, Func<Board, Board, Board> fill)
    {
        (Key, Inputs, Equation, Factor, Validity, Source) = (key, inputs, equation, factor, validity, source);
        this.fill = fill;
    }

    /// <summary>Dotted key of the entry; that of an item in a list without its number.</summary>
    public string Key { get; }
    /// <summary>The entries that the value follows from; empty where it is the same for every board.</summary>
    public string Inputs { get; }
    /// <summary>The value, in plain symbols.</summary>
    public string Equation { get; }
    /// <summary>One standard deviation ×/÷ f; 1 where the value is a count.</summary>
    public double Factor { get; }
    /// <summary>Where it holds, and what it must not be used for.</summary>
    public string Validity { get; }
    /// <summary>Where it comes from.</summary>
    public Source Source { get; }

    /// <summary>Adds the value to a board that does not state it.</summary>
    /// <param name="stated">The board as its maker wrote it: what the value follows from.</param>
    /// <param name="filled">The board with the usual values so far.</param>
    internal Board AddTo(Board stated, Board filled) => fill(stated, filled);

    /// <summary>A usual quantity.</summary>
    internal static UsualValue Quantity<T>(
        string key, string inputs, string equation, double factor, string validity, Source source,
        Func<Board, Known<T>> entry, Func<Board, Known<T>, Board> with, Func<Board, UsualEstimate<T>?> estimate)
        where T : struct, IQuantity<T> =>
        Create(key, inputs, equation, factor, validity, source, entry, with, estimate, static value => Abs(value.Si));

    /// <summary>A usual table or curve, whose spread is a part of the whole.</summary>
    internal static UsualValue Table<T>(
        string key, string inputs, string equation, double factor, string validity, Source source,
        Func<Board, Known<T>> entry, Func<Board, Known<T>, Board> with, Func<Board, UsualEstimate<T>?> estimate)
        where T : notnull =>
        Create(key, inputs, equation, factor, validity, source, entry, with, estimate, static _ => 1);

    /// <summary>A row that fills entries in a list.</summary>
    internal static UsualValue OfList(
        string key, string inputs, string equation, double factor, string validity, Source source, Func<Board, Board, Board> fill) =>
        new(key, inputs, equation, factor, validity, source, fill);

    static UsualValue Create<T>(
        string key, string inputs, string equation, double factor, string validity, Source source,
        Func<Board, Known<T>> entry, Func<Board, Known<T>, Board> with, Func<Board, UsualEstimate<T>?> estimate, Func<T, double> scale)
        where T : notnull =>
        new(key, inputs, equation, factor, validity, source, (stated, filled) =>
        {
            var known = entry(stated);
            if (known.IsKnown || estimate(stated) is not { } usual)
                return filled;
            var spread = scale(usual.Value) * Log(usual.Factor ?? factor);
            // What a board states may be beyond any part that was ever made.
            if (!double.IsFinite(spread) || !double.IsNormal(scale(usual.Value)))
                return filled;
            return with(filled, new Known<T>(usual.Value, spread > 0 ? spread : null, Origin.Usual, known.Key));
        });
}

/// <summary>A value estimated for one board.</summary>
/// <param name="Value">The value.</param>
/// <param name="Factor">Its own spread, where it differs from that of the row.</param>
readonly record struct UsualEstimate<T>(T Value, double? Factor = null);

/// <summary>A usual value that was taken for a board.</summary>
/// <param name="Key">Dotted key of the entry.</param>
/// <param name="Value">The value, as the file would write it.</param>
/// <param name="Factor">One standard deviation ×/÷ f; 1 for a count.</param>
/// <param name="Row">The row it comes from.</param>
public sealed record TakenValue(string Key, string Value, double Factor, UsualValue Row);
