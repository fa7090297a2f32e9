using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Parts;

namespace Boardwright.Heat;

/// <summary>How fast a winding warms before any heat leaves it.</summary>
/// <remarks>3/2 R i² / C with the cold resistance.</remarks>
/// <validity>The first seconds.</validity>
/// <error>That of the heat capacity: that of its usual value where it is not stated.</error>
/// <source cref="Sources.CircuitTheory"/>
public static class WindingWarming
{
    /// <summary>Kelvins each second under a phase amplitude; <c>null</c> where the heat capacity is not known.</summary>
    public static double? KelvinsPerSecond(Motor motor, MotorModel model, Current phase)
    {
        ArgumentNullException.ThrowIfNull(motor);
        ArgumentNullException.ThrowIfNull(model);
        return motor.WindingCapacity.IsKnown
            ? 1.5 * model.PhaseResistanceAt20.Ohms * phase.Amperes * phase.Amperes / motor.WindingCapacity.Value.JoulesPerKelvin : null;
    }
}
