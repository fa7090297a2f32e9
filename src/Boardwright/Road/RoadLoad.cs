using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Road;

/// <summary>What holds a rider and board back on the road: rolling, grade and air.</summary>
/// <param name="Mass">Mass m of rider, gear and board, above 0.</param>
/// <param name="RollingResistance">Rolling coefficient Crr, 0 or more.</param>
/// <param name="DragArea">Drag area CdA, 0 or more.</param>
/// <param name="AirDensityKilogramsPerCubicMetre">Air density ρ, 0 or more.</param>
/// <validity>Rolling forwards, v ≥ 0, wind along the road, rolling coefficient the same at every speed.</validity>
/// <error>As good as Crr and CdA: measured by coast-down a few per cent, guessed 30 %.</error>
/// <source cref="Sources.Martin1998"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct RoadLoad(Mass Mass, Number RollingResistance, Area DragArea, double AirDensityKilogramsPerCubicMetre)
{
    /// <summary>Standard acceleration of free fall g, m/s².</summary>
    public const double Gravity = 9.80665;
    /// <summary>Weight m g.</summary>
    public Force Weight => Force.FromNewtons(Mass.Kilograms * Gravity);
    /// <summary>½ ρ CdA, in kg/m: air force for each m²/s² of speed squared.</summary>
    public double DragKilogramsPerMetre => 0.5 * AirDensityKilogramsPerCubicMetre * DragArea.SquareMetres;

    /// <summary>Rolling and grade together, at any speed: m g (Crr cos θ + sin θ), tan θ the grade.</summary>
    /// <param name="grade">Rise over run, negative downhill.</param>
    public Force RollingAndGrade(Fraction grade = default)
    {
        var cosine = 1 / Sqrt(1 + grade.Value * grade.Value);
        return Force.FromNewtons(RollingAndGrade<Narrow>(Mass.Kilograms * Gravity, cosine, RollingResistance.Value, grade.Value));
    }

    /// <inheritdoc cref="RollingAndGrade(Fraction)"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T RollingAndGrade<T>(T weight, T cosine, double rolling, T grade)
        where T : struct, ILanes<T> => weight * cosine * (rolling + grade);

    /// <summary>Air alone: ½ ρ CdA (v + w)|v + w|; negative when the wind pushes.</summary>
    /// <param name="speed">Speed over the ground v.</param>
    /// <param name="headwind">Wind against the way of travel w, negative from behind.</param>
    public Force Drag(Speed speed, Speed headwind = default) =>
        Force.FromNewtons(Drag<Narrow>(DragKilogramsPerMetre, speed.MetresPerSecond + headwind.MetresPerSecond));

    /// <inheritdoc cref="Drag(Speed, Speed)"/>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T Drag<T>(double kilogramsPerMetre, T through)
        where T : struct, ILanes<T> => kilogramsPerMetre * through * T.Abs(through);

    /// <summary>Force that holds a speed: F = m g (Crr cos θ + sin θ) + ½ ρ CdA (v + w)|v + w|; negative when the board must be
    /// braked.</summary>
    /// <param name="speed">Speed over the ground v, 0 or more.</param>
    /// <param name="grade">Rise over run, negative downhill.</param>
    /// <param name="headwind">Wind against the way of travel w, negative from behind.</param>
    public Force ForceAt(Speed speed, Fraction grade = default, Speed headwind = default) => RollingAndGrade(grade) + Drag(speed, headwind);

    /// <summary>Power at the wheels that holds a speed: F v.</summary>
    /// <inheritdoc cref="ForceAt(Speed, Fraction, Speed)"/>
    public Power PowerAt(Speed speed, Fraction grade = default, Speed headwind = default) =>
        Power.FromWatts(ForceAt(speed, grade, headwind).Newtons * speed.MetresPerSecond);

    /// <summary>Energy at the wheels for each metre at a steady speed, which is the force itself.</summary>
    /// <inheritdoc cref="ForceAt(Speed, Fraction, Speed)"/>
    public EnergyPerDistance ConsumptionAt(Speed speed, Fraction grade = default, Speed headwind = default) =>
        EnergyPerDistance.FromJoulesPerMetre(ForceAt(speed, grade, headwind).Newtons);

    /// <summary>
    /// The steepest grade that a force at the wheels holds at a speed:
    /// tan θ with θ = asin(F/(m g √(1 + Crr²))) − atan(Crr), F the force less the air's.
    /// </summary>
    /// <param name="force">Force at the wheels.</param>
    /// <param name="speed">Speed over the ground, 0 or more.</param>
    /// <param name="headwind">Wind against the way of travel, negative from behind.</param>
    /// <returns>
    /// The grade, negative when only a descent will do; <c>null</c> when the force is more than any slope asks for,
    /// or so far below zero that no descent gives it.
    /// </returns>
    public Fraction? SteepestGrade(Force force, Speed speed = default, Speed headwind = default)
    {
        var crr = RollingResistance.Value;
        var sine = (force.Newtons - Drag(speed, headwind).Newtons) / (Mass.Kilograms * Gravity * Sqrt(1 + crr * crr));
        if (!(Abs(sine) <= 1))
            return null;
        var slope = Asin(sine) - Atan(crr);
        // Beyond the vertical the formula gives the slope's other side, where the same force would hold too.
        return Abs(slope) < PI / 2 ? Fraction.FromValue(Tan(slope)) : null;
    }

    /// <summary>
    /// The speed that a power at the wheels holds without wind: the real root of F₂ v³ + F₀ v − P = 0 by Cardano's formula,
    /// F₂ = ½ ρ CdA, F₀ = m g (Crr cos θ + sin θ).
    /// </summary>
    /// <param name="power">Power at the wheels, 0 or more.</param>
    /// <param name="grade">Rise over run, negative downhill.</param>
    /// <returns>The highest speed the power holds; <c>null</c> when there is nothing to hold the board back, neither air nor
    /// rolling.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The power is below 0.</exception>
    public Speed? SpeedAt(Power power, Fraction grade = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(power.Watts, nameof(power));
        var (f0, f2) = (RollingAndGrade(grade).Newtons, DragKilogramsPerMetre);
        if (f2 == 0)
            return f0 > 0 ? Speed.FromMetresPerSecond(power.Watts / f0) : null;
        var (a, b) = (f0 / f2, power.Watts / f2);
        var discriminant = b * b / 4 + a * a * a / 27;
        if (discriminant >= 0)
        {
            var larger = Cbrt(b / 2 + Sqrt(discriminant));
            if (larger == 0)
                return Speed.FromMetresPerSecond(0);
            var other = a / 3 / larger;
            // Both roots of the same sign: their difference as a quotient, which does not lose its digits to cancellation.
            return Speed.FromMetresPerSecond(a > 0 ? b / (larger * larger + a / 3 + other * other) : larger - other);
        }

        // Downhill with three real roots: the greatest is the one reached from above.
        var reach = 2 * Sqrt(-a / 3);
        return Speed.FromMetresPerSecond(reach * Cos(Acos(Clamp(3 * b / (-a * reach), -1, 1)) / 3));
    }

    /// <summary>The speed at which the air holds back as much as rolling does: √(F₀/F₂) on the level without wind.</summary>
    /// <returns>The speed, or <c>null</c> when there is no air force.</returns>
    public Speed? SpeedWhereDragEqualsRolling() =>
        DragKilogramsPerMetre == 0 ? null : Speed.FromMetresPerSecond(Sqrt(RollingAndGrade().Newtons / DragKilogramsPerMetre));

    /// <summary>The board rolling freely on this road.</summary>
    /// <param name="effectiveMass">Mass with what the turning parts add, above 0.</param>
    /// <param name="grade">Rise over run, negative downhill.</param>
    public Coasting Coasting(Mass effectiveMass, Fraction grade = default) =>
        new(effectiveMass, RollingAndGrade(grade), DragKilogramsPerMetre);

    /// <summary>The board driven by a constant force at the wheels on this road.</summary>
    /// <param name="effectiveMass">Mass with what the turning parts add, above 0.</param>
    /// <param name="force">Force at the wheels.</param>
    /// <param name="grade">Rise over run, negative downhill.</param>
    public Coasting Driven(Mass effectiveMass, Force force, Fraction grade = default) =>
        new(effectiveMass, RollingAndGrade(grade) - force, DragKilogramsPerMetre);
}
