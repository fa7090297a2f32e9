using System.Globalization;

namespace Boardwright.Numerics;

/// <summary>Finds where a function of one number is zero, between two places where its sign differs.</summary>
/// <remarks>
/// Chandrupatla's method: inverse quadratic interpolation where the last three points make it trustworthy, bisection
/// where they do not. A jump through zero counts as a root, and the place of the jump is returned.
/// </remarks>
/// <source>
/// T. R. Chandrupatla, "A new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function
/// without using derivatives", Advances in Engineering Software 28 (1997) 145-149.
/// </source>
public static class RootFinding
{
    const int MostSteps = 200;
    const double MostStrides = 1e9;
    const double CrossingTolerance = 1e-9;
    const double Epsilon = 2.220446049250313e-16;

    /// <summary>The root of <paramref name="f"/> between two places where its sign differs.</summary>
    /// <param name="f">The function, continuous if the answer is to be a zero rather than a jump.</param>
    /// <param name="low">One end, finite.</param>
    /// <param name="high">The other end, finite; the two may come in either order.</param>
    /// <param name="tolerance">Largest distance from the answer to the root, above 0; four units of rounding are added.</param>
    /// <exception cref="ArgumentException"><paramref name="f"/> has the same sign at both ends.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An end is not finite, or the tolerance is not above 0.</exception>
    /// <exception cref="NonConvergenceException">The function is not a number somewhere, or 200 steps did not suffice.</exception>
    public static double Within(Func<double, double> f, double low, double high, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(f);
        return Within(new Called(f), low, high, tolerance);
    }

    /// <inheritdoc cref="Within(Func{double, double}, double, double, double)"/>
    public static double Within<TFunction>(TFunction f, double low, double high, double tolerance)
        where TFunction : struct, IFunction =>
        TryWithin(f, low, high, tolerance) ?? throw new ArgumentException(
            string.Create(CultureInfo.InvariantCulture, $"The function has the same sign at {low} and at {high}."), nameof(f));

    /// <summary>The root of <paramref name="f"/> between two places, if its sign differs there.</summary>
    /// <param name="f">The function, continuous if the answer is to be a zero rather than a jump.</param>
    /// <param name="low">One end, finite.</param>
    /// <param name="high">The other end, finite; the two may come in either order.</param>
    /// <param name="tolerance">Largest distance from the answer to the root, above 0; four units of rounding are added.</param>
    /// <returns>The root, or <c>null</c> when <paramref name="f"/> has the same sign at both ends.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An end is not finite, or the tolerance is not above 0.</exception>
    /// <exception cref="NonConvergenceException">The function is not a number somewhere, or 200 steps did not suffice.</exception>
    public static double? TryWithin(Func<double, double> f, double low, double high, double tolerance)
    {
        ArgumentNullException.ThrowIfNull(f);
        return TryWithin(new Called(f), low, high, tolerance);
    }

    /// <inheritdoc cref="TryWithin(Func{double, double}, double, double, double)"/>
    public static double? TryWithin<TFunction>(TFunction f, double low, double high, double tolerance)
        where TFunction : struct, IFunction
    {
        RequireFinite(low, nameof(low));
        RequireFinite(high, nameof(high));
        RequireAboveZero(tolerance, nameof(tolerance));
        var (atLow, atHigh) = (Value(f, low), Value(f, high));
        if (atLow == 0) return low;
        if (atHigh == 0) return high;
        return atLow > 0 == atHigh > 0 ? null : Refine(f, low, atLow, high, atHigh, tolerance);
    }

    /// <summary>The first place on the way where <paramref name="f"/> falls from above zero to zero or below.</summary>
    /// <remarks>
    /// The function is looked at every <paramref name="step"/> and at the end; a dip that begins and ends between two
    /// looks is not seen. Where it starts at or below zero it must first rise above zero, then fall.
    /// </remarks>
    /// <param name="f">The function.</param>
    /// <param name="from">Where to start, finite.</param>
    /// <param name="to">Where to stop, finite; may lie below <paramref name="from"/>, and the walk then goes down.</param>
    /// <param name="step">Length of a step, above 0. The answer is within 1e-9 of a step of the crossing.</param>
    /// <returns>The crossing, or <c>null</c> when no step sees one.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An end is not finite, the step is not above 0, or the way is longer than 1e9 steps.
    /// </exception>
    /// <exception cref="NonConvergenceException">The function is not a number at a place looked at.</exception>
    public static double? FirstFall(Func<double, double> f, double from, double to, double step)
    {
        ArgumentNullException.ThrowIfNull(f);
        return FirstFall(new Called(f), from, to, step);
    }

    /// <inheritdoc cref="FirstFall(Func{double, double}, double, double, double)"/>
    public static double? FirstFall<TFunction>(TFunction f, double from, double to, double step)
        where TFunction : struct, IFunction
    {
        RequireFinite(from, nameof(from));
        RequireFinite(to, nameof(to));
        RequireAboveZero(step, nameof(step));
        // Doubling is exact, halving first keeps the difference of two huge ends finite.
        var strides = Math.Ceiling(2 * Math.Abs(to / 2 - from / 2) / step);
        if (!(strides <= MostStrides))
            throw new ArgumentOutOfRangeException(nameof(step), step, "The way is longer than 1e9 steps.");

        var stride = Math.CopySign(step, to - from);
        var (before, atBefore) = (from, Value(f, from));
        for (var i = 1; i <= strides; i++)
        {
            // Counted, not added up, so that rounding does not gather along the way.
            var here = i < strides ? from + i * stride : to;
            var atHere = Value(f, here);
            if (atBefore > 0 && atHere <= 0)
                return atHere == 0 ? here : Refine(f, before, atBefore, here, atHere, CrossingTolerance * step);
            (before, atBefore) = (here, atHere);
        }

        return null;
    }

    /// <summary>The first place on the way where <paramref name="f"/> rises from below zero to zero or above.</summary>
    /// <remarks>As <see cref="FirstFall(Func{double, double}, double, double, double)"/>, of the function's negative.</remarks>
    /// <inheritdoc cref="FirstFall(Func{double, double}, double, double, double)"/>
    public static double? FirstRise(Func<double, double> f, double from, double to, double step)
    {
        ArgumentNullException.ThrowIfNull(f);
        return FirstRise(new Called(f), from, to, step);
    }

    /// <inheritdoc cref="FirstRise(Func{double, double}, double, double, double)"/>
    public static double? FirstRise<TFunction>(TFunction f, double from, double to, double step)
        where TFunction : struct, IFunction =>
        FirstFall(new Negative<TFunction>(f), from, to, step);

    static double Refine<TFunction>(TFunction f, double a, double fa, double b, double fb, double tolerance)
        where TFunction : struct, IFunction
    {
        // The root lies between a, the newest point, and b; c is the point that was dropped last.
        var fraction = 0.5;
        for (var step = 0; step < MostSteps; step++)
        {
            var x = a + fraction * (b - a);
            var fx = Value(f, x);
            double c, fc;
            if (fx > 0 == fa > 0)
            {
                (c, fc) = (a, fa);
            }
            else
            {
                (c, fc) = (b, fb);
                (b, fb) = (a, fa);
            }

            (a, fa) = (x, fx);
            var best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            if (fx == 0) return x;
            var width = Math.Abs(b - a);
            var enough = tolerance + 4 * Epsilon * Math.Abs(best);
            if (width <= enough) return best;

            fraction = Fraction(a, fa, b, fb, c, fc);
            // Half the tolerance from either end, so that the far side of the root is reached too.
            var edge = Math.Min(0.5, enough / 2 / width);
            fraction = Math.Clamp(fraction, edge, 1 - edge);
        }

        throw new NonConvergenceException(string.Create(
            CultureInfo.InvariantCulture,
            $"After {MostSteps} steps the root is still only known to lie between {Math.Min(a, b)} and {Math.Max(a, b)}."));
    }

    /// <summary>How far from a towards b to look next.</summary>
    static double Fraction(double a, double fa, double b, double fb, double c, double fc)
    {
        var xi = (a - b) / (c - b);
        var phi = (fa - fb) / (fc - fb);
        // Inside these bounds the inverse parabola through the three points is monotone between a and b.
        if (!(phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi)) return 0.5;
        var fraction = fa / (fb - fa) * (fc / (fb - fc)) + (c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb));
        return double.IsFinite(fraction) ? fraction : 0.5;
    }

    static double Value<TFunction>(TFunction f, double x)
        where TFunction : struct, IFunction
    {
        var value = f.At(x);
        return double.IsNaN(value)
            ? throw new NonConvergenceException(string.Create(CultureInfo.InvariantCulture, $"The function is not a number at {x}."))
            : value;
    }

    static void RequireFinite(double value, string name)
    {
        if (!double.IsFinite(value)) throw new ArgumentOutOfRangeException(name, value, "Must be finite.");
    }

    static void RequireAboveZero(double value, string name)
    {
        if (!(value > 0 && double.IsFinite(value))) throw new ArgumentOutOfRangeException(name, value, "Must be above 0 and finite.");
    }

    readonly struct Negative<TFunction>(TFunction f) : IFunction
        where TFunction : struct, IFunction
    {
        public double At(double x) => -f.At(x);
    }
}
