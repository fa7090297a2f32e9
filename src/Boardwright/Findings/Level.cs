namespace Boardwright.Findings;

/// <summary>What a finding means for the builder, worst first.</summary>
public enum Level
{
    /// <summary>Someone could be hurt by it, or it cannot be put together.</summary>
    Stop,
    /// <summary>It goes together, but a limit is passed.</summary>
    Fix,
    /// <summary>It cannot be said until a value is known.</summary>
    Measure,
    /// <summary>Checked, and it holds.</summary>
    Fine,
}
