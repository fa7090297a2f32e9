namespace Boardwright.Numerics;

/// <summary>The answer of a curved least-squares problem.</summary>
public sealed class NonlinearFit
{
    readonly double[,]? inverse;
    readonly double[] left;
    readonly double[] slopes;

    internal NonlinearFit(
        IReadOnlyList<double> values, double sumOfSquares, IReadOnlyList<int> held, double[,]? inverse, double condition,
        double[] left, double[] slopes)
    {
        (Values, SumOfSquares, Held, Condition) = (values, sumOfSquares, held, condition);
        (this.inverse, this.left, this.slopes) = (inverse, left, slopes);
    }

    /// <summary>The unknowns.</summary>
    public IReadOnlyList<double> Values { get; }
    /// <summary>Σ r², at the answer.</summary>
    public double SumOfSquares { get; }
    /// <summary>How many residuals there were.</summary>
    public int Readings => left.Length;
    /// <summary>The unknowns that lie at a bound.</summary>
    public IReadOnlyList<int> Held { get; }

    /// <summary>
    /// How much worse than alone the unknowns are told apart together: largest over smallest singular value of the slopes, each
    /// column brought to length 1. 1 is best; above 1e8 or so the answer is noise in some direction.
    /// </summary>
    public double Condition { get; }

    /// <summary>The residuals at the answer.</summary>
    public IReadOnlyList<double> Left => left;
    /// <summary>Readings less unknowns that are free.</summary>
    public int DegreesOfFreedom => Readings - (Values.Count - Held.Count);
    /// <summary>Standard deviation of one residual: √(Σ r² / degrees of freedom); not a number without any.</summary>
    public double ResidualDeviation => DegreesOfFreedom > 0 ? Math.Sqrt(SumOfSquares / DegreesOfFreedom) : double.NaN;

    /// <summary>
    /// Covariance of two unknowns: s² (JᵀJ)⁻¹, right where residuals are independent and alike; zero for an unknown at a bound,
    /// infinite where the readings do not tell the unknowns apart.
    /// </summary>
    public double Covariance(int first, int second) =>
        inverse is null ? double.PositiveInfinity : ResidualDeviation * ResidualDeviation * inverse[first, second];

    /// <summary>Standard deviation of an unknown by <see cref="Covariance"/>.</summary>
    public double Deviation(int unknown) => Math.Sqrt(Covariance(unknown, unknown));

    /// <summary>
    /// Covariance as the groups scatter: (JᵀJ)⁻¹ Σ_g (J_gᵀ r_g)(J_gᵀ r_g)ᵀ (JᵀJ)⁻¹ · G/(G − p), right where residuals go
    /// together within a group, such as a run with its own gust, and are independent between groups.
    /// </summary>
    /// <remarks>An unknown that only one group tells does not count as shared.</remarks>
    /// <param name="groupOf">The group of each reading, counted from 0.</param>
    /// <param name="shared">The unknowns that all groups tell, of which the answer has one row and column each.</param>
    /// <returns>The covariances of the shared unknowns, or <c>null</c> where there are not more groups than shared unknowns.</returns>
    /// <source>
    /// K.-Y. Liang and S. L. Zeger, Longitudinal data analysis using generalized linear models, Biometrika 73 (1986) 13-22, from
    /// memory; the factor for few groups is the usual one.
    /// </source>
    public double[,]? ScatterOf(ReadOnlySpan<int> groupOf, ReadOnlySpan<int> shared)
    {
        if (groupOf.Length != Readings)
            throw new ArgumentException("Each reading belongs to a group.", nameof(groupOf));
        var groups = 0;
        foreach (var group in groupOf) groups = Math.Max(groups, group + 1);
        if (inverse is null || groups <= shared.Length)
            return null;
        var n = Values.Count;
        var pushes = new double[groups, n];
        for (var i = 0; i < Readings; i++)
        {
            for (var j = 0; j < n; j++) pushes[groupOf[i], j] += slopes[i * n + j] * left[i];
        }

        var answer = new double[shared.Length, shared.Length];
        var moves = new double[shared.Length];
        for (var group = 0; group < groups; group++)
        {
            for (var a = 0; a < shared.Length; a++)
            {
                moves[a] = 0;
                for (var j = 0; j < n; j++) moves[a] += inverse[shared[a], j] * pushes[group, j];
            }

            for (var a = 0; a < shared.Length; a++)
            {
                for (var b = 0; b < shared.Length; b++) answer[a, b] += moves[a] * moves[b] * groups / (groups - shared.Length);
            }
        }

        return answer;
    }
}
