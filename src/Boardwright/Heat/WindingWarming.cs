using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Parts;

namespace Boardwright.Heat;

/// <summary>How fast a winding warms before any heat leaves it.</summary>
/// <remarks>3/2 R i² / C with the cold resistance.</remarks>
/// <validity>The first seconds.</validity>
/// <error>That of the heat capacity: 30 % where it is a guess by mass.</error>
/// <source cref="Sources.CircuitTheory"/>
public static class WindingWarming
{
    /// <summary>Kelvins each second under a phase amplitude; <c>null</c> where the heat capacity cannot even be guessed.</summary>
    public static double? KelvinsPerSecond(Motor motor, MotorModel model, Current phase)
    {
        ArgumentNullException.ThrowIfNull(motor);
        ArgumentNullException.ThrowIfNull(model);
        HeatCapacity? capacity = motor.WindingCapacity.IsKnown ? motor.WindingCapacity.Value
            : motor.Mass.IsKnown ? TwoNode.GuessedWindingCapacity(motor.Mass.Value) : null;
        return 1.5 * model.PhaseResistanceAt20.Ohms * phase.Amperes * phase.Amperes / capacity?.JoulesPerKelvin;
    }
}
