namespace Boardwright.Units;

/// <summary>Every dimension, so that a number with the symbol of its unit can be written in the reader's units.</summary>
public static class Dimensions
{
    /// <summary>Every dimension. Where two share a symbol the first one is meant: <c>K</c> alone is a difference, <c>%</c> a fraction.</summary>
    public static IReadOnlyList<Dimension> All { get; } =
    [
        Number.Dimension, Fraction.Dimension, Length.Dimension, Speed.Dimension, Mass.Dimension, Force.Dimension, Torque.Dimension,
        Power.Dimension, Energy.Dimension, EnergyPerDistance.Dimension, Charge.Dimension, Voltage.Dimension, Current.Dimension,
        Resistance.Dimension, Inductance.Dimension, Capacitance.Dimension, TemperatureDifference.Dimension, Temperature.Dimension,
        ThermalResistance.Dimension, HeatCapacity.Dimension, Duration.Dimension, Frequency.Dimension, Angle.Dimension,
        AngularSpeed.Dimension, AngularStiffness.Dimension, Acceleration.Dimension, Area.Dimension, BendPerMass.Dimension,
        FusingIntegral.Dimension, Inertia.Dimension, SpeedConstant.Dimension,
    ];

    /// <summary>A number in the reader's units.</summary>
    /// <param name="value">The number.</param>
    /// <param name="symbol">Symbol of its unit, as figures and findings write it.</param>
    /// <param name="system">The reader's units.</param>
    /// <returns>The number and its symbol; both as they were where the unit has no counterpart or is none of ours, such as a currency.</returns>
    public static (double Value, string Symbol) In(UnitSystem system, double value, string symbol)
    {
        foreach (var dimension in All)
        {
            if (dimension.Find(symbol) is not { } unit)
                continue;
            return system.IsImperial && unit.Imperial is { } counterpart && dimension.Find(counterpart) is { } imperial
                ? (imperial.FromSi(unit.ToSi(value)), imperial.Symbol)
                : (value, unit.Symbol);
        }

        return (value, symbol);
    }
}
