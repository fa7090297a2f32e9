using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Road;

/// <summary>
/// Free motion without wind against a force F₀ + F₁ v + F₂ v²: m_e dv/dt = −(F₀ + F₁ v + F₂ v²), solved in closed form.
/// </summary>
/// <param name="EffectiveMass">Mass with what the turning parts add m_e, above 0.</param>
/// <param name="Constant">F₀: rolling and grade, less a constant driving force; negative when the board is driven.</param>
/// <param name="DragKilogramsPerMetre">F₂, in kg/m, 0 or more.</param>
/// <param name="LinearNewtonSecondsPerMetre">F₁, in N s/m, 0 or more; only <see cref="TimeBetween"/> knows it.</param>
/// <validity>Constant coefficients, no wind, speeds of 0 or more.</validity>
/// <error>Exact for the stated law of force.</error>
/// <source cref="Sources.Thompson"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Coasting(
    Mass EffectiveMass, Force Constant, double DragKilogramsPerMetre, double LinearNewtonSecondsPerMetre = 0)
{
    /// <summary>The speed at which a driving force and the air hold each other: √(−F₀/F₂).</summary>
    /// <returns>The speed, or <c>null</c> when nothing drives the board or nothing holds it back.</returns>
    public Speed? TerminalSpeed => Constant.Newtons <= 0 && DragKilogramsPerMetre > 0
        ? Speed.FromMetresPerSecond(Sqrt(-Constant.Newtons / DragKilogramsPerMetre))
        : null;

    /// <summary>Time from one speed to another: m_e ∫ dv/(F₀ + F₁ v + F₂ v²).</summary>
    /// <param name="from">Speed at the start, 0 or more.</param>
    /// <param name="to">Speed at the end, 0 or more.</param>
    /// <returns>The time; <c>null</c> when the second speed is never reached from the first.</returns>
    public Duration? TimeBetween(Speed from, Speed to)
    {
        var (start, end) = (from.MetresPerSecond, to.MetresPerSecond);
        if (start == end)
            return Duration.FromSeconds(0);
        if (!Reaches(start, end))
            return null;
        return Duration.FromSeconds(EffectiveMass.Kilograms * Integral(start, end));
    }

    /// <summary>Way from one speed to another: m_e/(2 F₂) · ln((F₀ + F₂ v₀²)/(F₀ + F₂ v₁²)).</summary>
    /// <param name="from">Speed at the start, 0 or more.</param>
    /// <param name="to">Speed at the end, 0 or more.</param>
    /// <returns>The way; <c>null</c> when the second speed is never reached from the first.</returns>
    /// <exception cref="InvalidOperationException">There is a force that grows with speed itself; only the time is known in closed form
    /// here.</exception>
    public Length? DistanceBetween(Speed from, Speed to)
    {
        RequireNoLinearForce();
        var (start, end) = (from.MetresPerSecond, to.MetresPerSecond);
        if (start == end)
            return Length.FromMetres(0);
        if (!Reaches(start, end))
            return null;
        var (f0, f2) = (Constant.Newtons, DragKilogramsPerMetre);
        var mass = EffectiveMass.Kilograms;
        return Length.FromMetres(f2 == 0
            ? mass * (start * start - end * end) / (2 * f0)
            : mass / (2 * f2) * Log((f0 + f2 * start * start) / (f0 + f2 * end * end)));
    }

    /// <summary>Speed after a time; a board that is not driven stands still once it has stopped.</summary>
    /// <remarks>
    /// F₀ > 0: v = tan(atan(k v₀) − t √(F₀F₂)/m_e)/k, k = √(F₂/F₀), written as the tangent of a difference. F₀ &lt; 0, v_t = √(−F₀/F₂): v =
    /// v_t tanh(t √(−F₀F₂)/m_e + artanh(v₀/v_t)),
    /// written so that it holds above v_t too.
    /// </remarks>
    /// <param name="from">Speed at the start, 0 or more.</param>
    /// <param name="time">Time, 0 or more.</param>
    /// <exception cref="InvalidOperationException">There is a force that grows with speed itself.</exception>
    public Speed SpeedAfter(Speed from, Duration time)
    {
        RequireNoLinearForce();
        var (start, seconds) = (from.MetresPerSecond, time.Seconds);
        var (f0, f2, mass) = (Constant.Newtons, DragKilogramsPerMetre, EffectiveMass.Kilograms);
        double end;
        if (f2 == 0)
        {
            end = start - f0 * seconds / mass;
        }
        else if (f0 == 0)
        {
            end = start / (1 + f2 * start * seconds / mass);
        }
        else if (f0 > 0)
        {
            // The tangent of a difference, so that a rolling force near zero does not cost all digits.
            var k = Sqrt(f2 / f0);
            var phase = seconds * Sqrt(f0 * f2) / mass;
            end = phase >= PI / 2 ? 0 : (start - Tan(phase) / k) / (1 + k * start * Tan(phase));
        }
        else
        {
            var terminal = Sqrt(-f0 / f2);
            var growth = Tanh(seconds * Sqrt(-f0 * f2) / mass);
            end = terminal * (start + terminal * growth) / (terminal + start * growth);
        }

        return Speed.FromMetresPerSecond(Max(0, end));
    }

    /// <summary>Way covered in a time; a board that is not driven stands still once it has stopped.</summary>
    /// <param name="from">Speed at the start, 0 or more.</param>
    /// <param name="time">Time, 0 or more.</param>
    /// <exception cref="InvalidOperationException">There is a force that grows with speed itself.</exception>
    public Length DistanceAfter(Speed from, Duration time)
    {
        RequireNoLinearForce();
        var (start, seconds) = (from.MetresPerSecond, time.Seconds);
        var (f0, f2, mass) = (Constant.Newtons, DragKilogramsPerMetre, EffectiveMass.Kilograms);
        if (f0 > 0 && TimeBetween(from, default) is { } untilRest && untilRest <= time)
            return DistanceBetween(from, default) ?? default;
        if (f2 == 0)
            return Length.FromMetres(start * seconds - f0 * seconds * seconds / (2 * mass));
        if (f0 == 0)
            return Length.FromMetres(mass / f2 * Log(1 + f2 * start * seconds / mass));
        var rate = Sqrt(Abs(f0) * f2) / mass;
        var ratio = start * Sqrt(f2 / Abs(f0));
        var phase = rate * seconds;
        return Length.FromMetres(mass / f2 * (f0 > 0
            ? Log(Cos(phase) + ratio * Sin(phase))
            // ln(cosh x + r sinh x), written so that a long time does not overflow.
            : phase + Log((1 + Exp(-2 * phase)) / 2 * (1 + ratio * Tanh(phase)))));
    }

    /// <summary>Finds the two forces from two stop-watch times of one coast-down, v_a to v_b and v_b to v_c.</summary>
    /// <remarks>
    /// The ratio of the times depends on k = √(F₂/F₀) alone and rises with it, so k is a bracketed root;
    /// √(F₀F₂) = m_e (atan(k v_a) − atan(k v_b))/t₁ then gives both.
    /// </remarks>
    /// <param name="effectiveMass">Mass with what the turning parts add.</param>
    /// <param name="first">Speed at the start.</param>
    /// <param name="middle">Speed between the two times, below the first.</param>
    /// <param name="last">Speed at the end, below the middle one, 0 or more.</param>
    /// <param name="upper">Time from the first to the middle speed, above 0.</param>
    /// <param name="lower">Time from the middle to the last speed, above 0.</param>
    /// <returns>The forces; <c>null</c> when no rolling and air force of 0 or more give these times.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speeds do not fall, or a time is not above 0.</exception>
    /// <error>A time 1 % too long moves F₀ by 1 % and F₂ by 3 %, in opposite directions.</error>
    public static Coasting? FromTwoTimes(Mass effectiveMass, Speed first, Speed middle, Speed last, Duration upper, Duration lower)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(last.MetresPerSecond, nameof(last));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(middle, last);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(first, middle);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(upper.Seconds, nameof(upper));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lower.Seconds, nameof(lower));
        var (a, b, c) = (first.MetresPerSecond, middle.MetresPerSecond, last.MetresPerSecond);
        var ratio = lower.Seconds / upper.Seconds;
        double Excess(double logOfK)
        {
            var k = Exp(logOfK);
            return ratio * (Atan(k * a) - Atan(k * b)) - (Atan(k * b) - Atan(k * c));
        }

        // k from 1e-4 to 1e4 s/m: air between a hundred-millionth of rolling and a hundred million times it.
        if (RootFinding.TryWithin(Excess, Log(1e-4), Log(1e4), 1e-13) is not { } root)
            return null;
        var ratioOfForces = Exp(root);
        var mean = effectiveMass.Kilograms * (Atan(ratioOfForces * a) - Atan(ratioOfForces * b)) / upper.Seconds;
        return new(effectiveMass, Force.FromNewtons(mean / ratioOfForces), mean * ratioOfForces);
    }

    /// <summary>Speed after a time at constant power without any resistance: √(v₀² + 2 P t/m_e).</summary>
    /// <param name="effectiveMass">Mass with what the turning parts add.</param>
    /// <param name="power">Power at the wheels.</param>
    /// <param name="from">Speed at the start.</param>
    /// <param name="time">Time.</param>
    public static Speed SpeedAtConstantPower(Mass effectiveMass, Power power, Speed from, Duration time) =>
        Speed.FromMetresPerSecond(
        Sqrt(from.MetresPerSecond * from.MetresPerSecond + 2 * power.Watts * time.Seconds / effectiveMass.Kilograms));

    bool Reaches(double start, double end)
    {
        // Resistance keeps one sign all the way exactly when it has the same sign at both ends and, rising with speed, between them.
        var (atStart, atEnd) = (Resistance(start), Resistance(end));
        return end < start ? atStart > 0 && atEnd > 0 : atStart < 0 && atEnd < 0;
    }

    double Resistance(double speed) =>
        Constant.Newtons + speed * (LinearNewtonSecondsPerMetre + speed * DragKilogramsPerMetre);

    /// <summary>∫ dv/(F₀ + F₁ v + F₂ v²) from the second speed to the first.</summary>
    double Integral(double start, double end)
    {
        var (f0, f1, f2) = (Constant.Newtons, LinearNewtonSecondsPerMetre, DragKilogramsPerMetre);
        if (f2 == 0)
            return f1 == 0 ? (start - end) / f0 : Log((f0 + f1 * start) / (f0 + f1 * end)) / f1;
        var discriminant = 4 * f0 * f2 - f1 * f1;
        var (atStart, atEnd) = (2 * f2 * start + f1, 2 * f2 * end + f1);
        var difference = 2 * f2 * (start - end);
        // The differences of two angles and of two areas, each as one, so that near ends do not cancel.
        var q = Sqrt(Abs(discriminant));
        if (discriminant > 0)
            return 2 / q * Atan2(q * difference, discriminant + atStart * atEnd);
        return discriminant < 0
            ? 2 / q * Atanh(q * difference / (atStart * atEnd + discriminant))
            : 2 * difference / (atStart * atEnd);
    }

    void RequireNoLinearForce()
    {
        if (LinearNewtonSecondsPerMetre != 0)
            throw new InvalidOperationException("With a force that grows with speed itself only the time between two speeds is known in closed form.");
    }
}
