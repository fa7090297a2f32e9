using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>How much of a belt's rating is left when few teeth of the small pulley are in mesh.</summary>
/// <validity>Whole teeth, counted down. From six teeth on, the whole rating.</validity>
/// <error>Makers disagree: 0.8 or 0.7 at five teeth, 0.6 or 0.5 at four.</error>
/// <source cref="Sources.SdpSiTechnicalSection"/>
/// <source cref="Sources.TsubakiMeshing"/>
public sealed record MeshLadder
{
    const int Enough = 6;
    readonly double[] factors;

    MeshLadder(string name, Source source, params double[] factors) => (Name, Source, this.factors) = (name, source, factors);

    /// <summary>The name.</summary>
    public string Name { get; }
    /// <summary>Where it comes from.</summary>
    public Source Source { get; }
    /// <summary>One fifth of the rating lost for each tooth that is missing from six, nothing left below two: the default.</summary>
    public static MeshLadder Default { get; } = new("one fifth per tooth", Sources.SdpSiTechnicalSection, 0, 0, 0.2, 0.4, 0.6, 0.8);
    /// <summary>The stricter ladder: 0.7 at five teeth, 0.5 at four, no rating below.</summary>
    public static MeshLadder Strict { get; } = new("strict", Sources.TsubakiMeshing, 0, 0, 0, 0, 0.5, 0.7);

    /// <summary>The part k of the rating that is left, 0 to 1.</summary>
    /// <param name="wholeTeeth">Whole teeth in mesh, at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public double Factor(int wholeTeeth)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(wholeTeeth);
        return wholeTeeth >= Enough ? 1 : factors[wholeTeeth];
    }
}
