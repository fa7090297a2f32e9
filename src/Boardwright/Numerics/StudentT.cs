namespace Boardwright.Numerics;

/// <summary>Student's distribution of a mean in units of its estimated deviation.</summary>
static class StudentT
{
    // Beyond, its places differ from the normal ones by less than 4e-5 of themselves.
    const double MostFreedom = 1e5;

    /// <summary>Share of the distribution at or below <paramref name="t"/>.</summary>
    /// <param name="t">Place.</param>
    /// <param name="degreesOfFreedom">Above 0 and at most 1e5.</param>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are out of range.</exception>
    /// <error>About 1e-12, from 1 to 1e5 degrees of freedom.</error>
    /// <source>M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), eq. 26.5.27 and 26.5.8.</source>
    public static double Cumulative(double t, double degreesOfFreedom)
    {
        if (!(degreesOfFreedom is > 0 and <= MostFreedom))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Must be above 0 and at most 1e5.");
        var tail = Beta(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + t * t)) / 2;
        return t > 0 ? 1 - tail : tail;
    }

    /// <summary>The place that a given share of the distribution lies at or below.</summary>
    /// <param name="share">Above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">Above 0; beyond 1e5 the distribution is <see cref="Normal"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share or the degrees of freedom are out of range.</exception>
    /// <error>1e-9 of the answer, for shares from 1e-4 to 1 − 1e-4; 4e-5 beyond 1e5 degrees of freedom.</error>
    public static double Quantile(double share, double degreesOfFreedom)
    {
        var near = Normal.Quantile(share);
        if (degreesOfFreedom > MostFreedom || near == 0) return near;
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
        var c = 1.0;
        var d = 1 / NotZero(1 - (a + b) * x / (a + 1));
        var value = d;
        for (var m = 1; m <= 10_000; m++)
        {
            Take(m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)));
            Take(-(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1)));
            if (Math.Abs(d * c - 1) < 1e-15) return value;
        }

        throw new NonConvergenceException("The continued fraction of the incomplete beta function did not settle.");

        void Take(double part)
        {
            d = 1 / NotZero(1 + part * d);
            c = NotZero(1 + part / c);
            value *= d * c;
        }
    }

    static double NotZero(double value) => Math.Abs(value) < 1e-300 ? 1e-300 : value;

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
