namespace Boardwright.Searches;

/// <summary>What boards are compared by.</summary>
public enum Criterion
{
    /// <summary>Range at cruise speed, more is better.</summary>
    Range,
    /// <summary>Steepest grade at the climbing speed, more is better.</summary>
    Climb,
    /// <summary>Top speed with a full pack, more is better up to the speed limit.</summary>
    Speed,
    /// <summary>Mass of the board, less is better.</summary>
    Mass,
    /// <summary>Price, less is better.</summary>
    Price,
    /// <summary>What is spare of phase current and pack current on the brief's climb and of the controller's voltage, the least of the
    /// three; more is better.</summary>
    Spare,
}
