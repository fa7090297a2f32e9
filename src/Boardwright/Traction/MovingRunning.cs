using System.Diagnostics.CodeAnalysis;
using Boardwright.Findings;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>The board on the road while its speed changes: what turns gains speed too, and weight moves between the axles.</summary>
/// <validity>As for <see cref="SteadyRunning"/>.</validity>
/// <error>As for <see cref="SteadyRunning"/>.</error>
/// <source cref="Sources.Mechanics"/>
public record MovingRunning : SteadyRunning
{
    /// <summary>A board with what counts beside its steady running.</summary>
    /// <param name="steady">The board at steady speeds.</param>
    /// <param name="effectiveMass">Mass with the rotating parts, kg.</param>
    /// <param name="tyres">Grip of the driven tyres.</param>
    [SetsRequiredMembers]
    public MovingRunning(SteadyRunning steady, double effectiveMass, TyreGrip tyres)
        : base(steady) => (EffectiveMass, Tyres) = (effectiveMass, tyres);

    /// <summary>Mass with the rotating parts, kg.</summary>
    public double EffectiveMass { get; init; }
    /// <summary>Grip of the driven tyres.</summary>
    public TyreGrip Tyres { get; init; }

    /// <summary>The largest driving force at a speed, by current, voltage, pack, electrical speed and grip, N; below zero where the motors
    /// only drag.</summary>
    public double LargestForce(double speed, in Supply supply) =>
        Drive.LargestCurrent(speed, supply) is { } current ? Min(Drive.Force(current, speed), GripForce(speed, 0)) : Drive.Force(0, speed);

    /// <summary>The largest driving force the tyres take: μ times the driven axle's load, which grows (rear) or shrinks (front) with the
    /// acceleration, N.</summary>
    public double GripForce(double speed, double grade) => GripUnder(RoadForce(speed, grade), Cos(Atan(grade)));
    /// <summary>The largest driving force the tyres take against a road force, N, on a slope of stated cosine.</summary>
    public double GripUnder(double roadForce, double cosine) =>
        Tyres.ForceUnder<Narrow>(roadForce, Weight * cosine, Load.Mass.Kilograms, EffectiveMass, 1);
}

/// <summary>The board on the road while it brakes.</summary>
/// <validity>As for <see cref="SteadyRunning"/>.</validity>
/// <error>As for <see cref="SteadyRunning"/>.</error>
/// <source cref="Sources.Mechanics"/>
public sealed record BrakedRunning : MovingRunning
{
    const int BrakePanels = 6;

    /// <summary>A board with what it holds its currents to when braking.</summary>
    /// <param name="moving">The board while its speed changes.</param>
    /// <param name="braking">What it holds the currents to.</param>
    /// <param name="fullVoltage">Voltage to which the loaded pack may be charged, V.</param>
    [SetsRequiredMembers]
    public BrakedRunning(MovingRunning moving, BrakeLimits braking, double fullVoltage)
        : base(moving) => (Braking, FullVoltage) = (braking, fullVoltage);

    /// <summary>What the board holds its currents to when braking.</summary>
    public BrakeLimits Braking { get; init; }

    /// <summary>The largest electric braking force at a speed at a state of charge, by current, pack, full voltage and grip, N.</summary>
    public double LargestBrakeForce(double speed, double grade, in Supply supply)
    {
        var electric = Drive.BrakeForce(Drive.LargestBrakeCurrent(speed, supply, Braking), speed);
        return Min(electric, BrakeGrip(speed, grade));
    }

    /// <summary>The largest braking force the driven axle's tyres take; braking unloads a rear axle, N.</summary>
    public double BrakeGrip(double speed, double grade) => BrakeGripUnder(RoadForce(speed, grade), Cos(Atan(grade)));
    /// <summary>The largest braking force the driven axle's tyres take beside a road force, N, on a slope of stated cosine.</summary>
    public double BrakeGripUnder(double roadForce, double cosine) =>
        Tyres.ForceUnder<Narrow>(roadForce, Weight * cosine, Load.Mass.Kilograms, EffectiveMass, -1);

    /// <summary>Distance to stop with the electric brake alone, reaction included, m.</summary>
    /// <returns>The distance, or <c>null</c> when the board does not stop.</returns>
    public double? StoppingDistance(double speed, double grade, double charge, double reactionSeconds = 1.0)
    {
        var supply = SupplyAt(charge);
        double Deceleration(double v) => (LargestBrakeForce(v, grade, supply) + RoadForce(v, grade)) / EffectiveMass;
        for (var i = 0; i <= 16; i++)
        {
            if (Deceleration(speed * i / 16) <= 0)
                return null;
        }

        return speed * reactionSeconds + Quadrature.Integrate(v => v / Deceleration(v), 0, speed, BrakePanels);
    }
}
