namespace Boardwright.Findings;

/// <summary>Every work that an equation, a figure or a limit is taken from.</summary>
public static class Sources
{
    /// <summary>A fact of the trade that nobody has published.</summary>
    public static Source CommonPractice { get; } = new("common practice, no source");

    /// <summary>What the builder wrote into the board file.</summary>
    public static Source Brief { get; } = new("the board file's own brief and limits");

    /// <summary>What the parts' makers state.</summary>
    public static Source MakersSheet { get; } = new("the parts' own figures on the shelf");

    /// <summary>Plain geometry.</summary>
    public static Source Geometry { get; } = new("plain geometry of the stated dimensions");

    /// <summary>Plain circuit theory.</summary>
    public static Source CircuitTheory { get; } = new("Ohm's and Kirchhoff's laws on the stated resistances");

    /// <summary>The haversine on a sphere.</summary>
    public static Source Haversine { get; } = new(
        "R. W. Sinnott, Virtues of the Haversine, Sky and Telescope 68 (2), 1984, p. 159 (from memory: the form that keeps its digits at short distances); radius 6371000 m, the earth's mean radius rounded");

    /// <summary>Smoothing by straight lines fitted locally.</summary>
    public static Source LocalRegression { get; } = new(
        "W. S. Cleveland, Robust Locally Weighted Regression and Smoothing Scatterplots, Journal of the American Statistical Association 74, 1979, pp. 829-836 (from memory: the local straight line; weights here fall linearly, without the robust rounds)");

    /// <summary>How quickly a standing person may be slowed.</summary>
    public static Source StandingBalance { get; } = new(
        "Krasna et al., Frontiers in Bioengineering and Biotechnology 9, 2021, 680883 (abstract: of braking pulses of 1.0 and 2.5 m/s2 on a sled, volunteers stood only 1.0 without a step); speeds, distances and times by uniform acceleration, v2 = u2 + 2as");
}
