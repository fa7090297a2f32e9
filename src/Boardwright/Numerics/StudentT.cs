namespace Boardwright.Numerics;

/// <summary>Student's distribution of a mean in units of its estimated deviation.</summary>
public static class StudentT
{
    /// <summary>Share of the distribution at or below <paramref name="t"/>.</summary>
    /// <param name="t">Place.</param>
    /// <param name="degreesOfFreedom">Above 0; infinite gives <see cref="Normal"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    /// <error>About 1e-12, from 1 to 1e5 degrees of freedom.</error>
    /// <source>M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), eq. 26.5.27 and 26.5.8.</source>
    public static double Cumulative(double t, double degreesOfFreedom)
    {
        if (!(degreesOfFreedom > 0)) throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Must be above 0.");
        if (degreesOfFreedom > 1e5) return Normal.Cumulative(t);
        var tail = Beta(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t)) / 2;
        return t > 0 ? 1 - tail : tail;
    }

    /// <summary>The place that a given share of the distribution lies at or below.</summary>
    /// <param name="share">Above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is not above 0 and below 1, or the degrees of freedom are not above 0.</exception>
    /// <error>1e-9 of the answer, for shares from 1e-4 to 1 − 1e-4.</error>
    public static double Quantile(double share, double degreesOfFreedom)
    {
        var near = Normal.Quantile(share);
        if (degreesOfFreedom > 1e5 || near == 0) return near;
        var far = near;
        // The tails are heavier than the normal ones, so the place lies further out.
        while (share > 0.5 ? Cumulative(far, degreesOfFreedom) < share : Cumulative(far, degreesOfFreedom) > share) far *= 2;
        return RootFinding.Within(t => Cumulative(t, degreesOfFreedom) - share, 0.5 * near, far, 1e-10 * Math.Abs(near));
    }

    /// <summary>The incomplete beta function I_x(a, b), by its continued fraction.</summary>
    static double Beta(double a, double b, double x)
    {
        if (x <= 0) return 0;
        if (x >= 1) return 1;
        var front = Math.Exp(LogGamma(a + b) - LogGamma(a) - LogGamma(b) + a * Math.Log(x) + b * Math.Log(1 - x));
        return x < (a + 1) / (a + b + 2) ? front * Fraction(a, b, x) / a : 1 - front * Fraction(b, a, 1 - x) / b;
    }

    static double Fraction(double a, double b, double x)
    {
        const double Tiny = 1e-300;
        var c = 1.0;
        var d = 1 - (a + b) * x / (a + 1);
        d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
        var value = d;
        for (var m = 1; m <= 10_000; m++)
        {
            var even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 + even * d;
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = 1 + even / c;
            if (Math.Abs(c) < Tiny) c = Tiny;
            value *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 + odd * d;
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = 1 + odd / c;
            if (Math.Abs(c) < Tiny) c = Tiny;
            value *= d * c;
            if (Math.Abs(d * c - 1) < 1e-15) return value;
        }

        throw new NonConvergenceException("The continued fraction of the incomplete beta function did not settle.");
    }

    /// <summary>ln Γ(x) by Stirling's series, lifted to where it is good.</summary>
    static double LogGamma(double x)
    {
        var shift = 0.0;
        while (x < 12)
        {
            shift += Math.Log(x);
            x++;
        }

        var square = 1 / (x * x);
        var series = (1.0 / 12 - square * (1.0 / 360 - square * (1.0 / 1260 - square * (1.0 / 1680 - square / 1188)))) / x;
        return (x - 0.5) * Math.Log(x) - x + 0.5 * Math.Log(2 * Math.PI) + series - shift;
    }
}
