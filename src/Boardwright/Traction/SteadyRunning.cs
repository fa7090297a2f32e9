using System.Runtime.CompilerServices;
using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>The whole board on the road in steady state: the road's force against the drive's, with pack and tyre.</summary>
/// <remarks>Top speed, climb, cruise and brakes are all read off the same two forces, so they cannot contradict each other.</remarks>
/// <validity>Steady state at the brief's temperature; windings and cells cold.</validity>
/// <error>Air and rolling coefficients dominate: 12 % and 20 % where nobody measured them.</error>
/// <source cref="Sources.Mechanics"/>
public sealed record SteadyRunning
{
    const double TopOfSearch = 100;
    const int RangePanels = 4;
    const int BrakePanels = 6;

    /// <summary>The electric side.</summary>
    public required Propulsion Drive { get; init; }
    /// <summary>The pack.</summary>
    public required PackModel Pack { get; init; }
    /// <summary>Air, rolling resistance and mass.</summary>
    public required RoadLoad Load { get; init; }
    /// <summary>Headwind, m/s.</summary>
    public required double Headwind { get; init; }
    /// <summary>Resistance of the wiring between pack and controllers, ohm.</summary>
    public required double WiringResistance { get; init; }
    /// <summary>Voltage to which the loaded pack may be charged, V.</summary>
    public required double FullVoltage { get; init; }
    /// <summary>Bus voltage below which power fades; zero where nothing fades.</summary>
    public required double TaperStart { get; init; }
    /// <summary>Bus voltage at which power is cut.</summary>
    public required double TaperEnd { get; init; }
    /// <summary>Mass with the rotating parts, kg.</summary>
    public required double EffectiveMass { get; init; }
    /// <summary>Grip of the driven tyres.</summary>
    public required TyreGrip Tyres { get; init; }

    double Weight => Load.Mass.Kilograms * RoadLoad.Gravity;

    /// <summary>The pack at a state of charge, 0 to 1.</summary>
    public Supply SupplyAt(double charge)
    {
        var (rest, ohms) = (Pack.RestVoltsAt(charge), Pack.OhmsAt(charge));
        return new Supply(rest, ohms + WiringResistance, Max(0, (FullVoltage - rest) / ohms), TaperStart, TaperEnd);
    }

    /// <summary>Force to hold a speed on a grade (rise over run), N.</summary>
    public double RoadForce(double speed, double grade) =>
        Load.ForceAt(Speed.FromMetresPerSecond(speed), Fraction.FromValue(grade), Speed.FromMetresPerSecond(Headwind)).Newtons;

    /// <summary>The largest driving force at a speed, by current, voltage, pack, electrical speed and grip, N; below zero where the motors
    /// only drag.</summary>
    public double LargestForce(double speed, in Supply supply, double grade = 0) =>
        Drive.LargestCurrent(speed, supply) is { } current
            ? Min(Drive.Force(current, speed), GripForce(speed, grade))
            : Drive.Force(0, speed);

    /// <summary>The largest driving force the tyres take: μ times the driven axle's load, which grows (rear) or shrinks (front) with the
    /// acceleration, N.</summary>
    public double GripForce(double speed, double grade) => GripUnder(RoadForce(speed, grade), Cos(Atan(grade)));
    /// <summary>The largest driving force the tyres take against a road force, N, on a slope of stated cosine.</summary>
    public double GripUnder(double roadForce, double cosine) =>
        Tyres.ForceUnder<Narrow>(roadForce, Weight * cosine, Load.Mass.Kilograms, EffectiveMass, 1);

    /// <summary>Top speed on the level at a state of charge: walking up from rest, the first speed beyond which the largest force no longer
    /// meets the road's.</summary>
    /// <returns>The speed in m/s; zero when the board cannot even start.</returns>
    public double TopSpeed(double charge)
    {
        var margin = new ForceMargin(this, SupplyAt(charge));
        return margin.At(0) <= 0 ? 0 : RootFinding.FirstFall(margin, 0, TopOfSearch, 0.5) ?? TopOfSearch;
    }

    /// <summary>Steepest grade held at a speed at a state of charge, rise over run; negative when the board cannot even hold the
    /// level.</summary>
    public double SteepestGrade(double speed, double charge)
    {
        var supply = SupplyAt(charge);
        var electric = Drive.LargestCurrent(speed, supply) is { } current ? Drive.Force(current, speed) : Drive.Force(0, speed);
        double Margin(double grade) => Min(electric, GripForce(speed, grade)) - RoadForce(speed, grade);
        return RootFinding.TryWithin(Margin, -1, 2, 1e-10) ?? (Margin(2) > 0 ? 2 : -1);
    }

    /// <summary>What a speed on a grade asks of motors and pack at a state of charge.</summary>
    /// <returns>The operating point, or <c>null</c> when the pack cannot give the power at all.</returns>
    public OperatingPoint? Holding(double speed, double grade, double charge)
    {
        var supply = SupplyAt(charge);
        var force = RoadForce(speed, grade);
        var current = Drive.CurrentFor(force, speed);
        return Drive.BusAt(current, speed, supply) is { } bus
            ? new OperatingPoint(speed, force, current, bus, Drive.LargestCurrent(speed, supply) is { } most && most >= current,
            CellPower(bus, charge))
            : null;
    }

    /// <summary>How far the charge carries at a speed on the level, from full to the reserve or to where the loaded cells reach the taper's
    /// end.</summary>
    /// <returns>The cruise, or <c>null</c> when the pack cannot give the power.</returns>
    public Cruise? Cruising(double speed, double reserve)
    {
        if (Holding(speed, 0, 0.5) is not { } half || Lasting(half.Bus.Watts, reserve) is not { } lasting)
            return null;
        var watts = half.Bus.Watts;
        var joules = Pack.Capacity.Coulombs * Quadrature.Integrate(
            charge => Propulsion.BusUnder(watts, SupplyAt(charge)) is { } bus ? CellPower(bus, charge) / bus.Amperes : 0, lasting.EndCharge,
            1, RangePanels);
        return new Cruise(half, speed * lasting.Seconds, lasting.Seconds, joules, lasting.EndCharge, lasting.EndCharge > reserve);
    }

    /// <summary>Range at a steady speed on the level, as <see cref="Cruising"/>, m; zero when the pack cannot hold it.</summary>
    public double RangeAt(double speed, double reserve) =>
        Holding(speed, 0, 0.5) is { } half && Lasting(half.Bus.Watts, reserve) is { } lasting ? speed * lasting.Seconds : 0;

    /// <summary>How long a constant power at the controllers lasts: ∫ Q/I dSoC from full to the reserve or to where power is cut.</summary>
    (double Seconds, double EndCharge)? Lasting(double watts, double reserve)
    {
        var cutting = new CutMargin(this, watts);
        if (cutting.At(1) <= 0 || reserve >= 1)
            return null;
        // Walking down from full: the first charge at which power is cut.
        var end = RootFinding.FirstFall(cutting, 1, reserve, 1.0 / 32) ?? reserve;
        return (Pack.Capacity.Coulombs * Quadrature.Integrate(new PerAmpere(this, watts), end, 1, RangePanels), end);
    }

    /// <summary>The largest electric braking force at a speed at a state of charge, by current, pack, full voltage and grip, N.</summary>
    public double LargestBrakeForce(double speed, double grade, in Supply supply)
    {
        var electric = Drive.BrakeForce(Drive.LargestBrakeCurrent(speed, supply), speed);
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

    /// <summary>Power at the cells' own terminals for a current that leaves the pack, W.</summary>
    double CellPower(Bus bus, double charge) => bus.Amperes * (Pack.RestVoltsAt(charge) - bus.Amperes * Pack.CellOhmsAt(charge));

    readonly struct CutMargin(SteadyRunning board, double watts) : IFunction
    {
        public double At(double x) => Propulsion.BusUnder(watts, board.SupplyAt(x)) is { } bus ? bus.Volts - board.TaperEnd : -1;
    }

    readonly struct PerAmpere(SteadyRunning board, double watts) : IFunction
    {
        public double At(double x) => 1 / Propulsion.BusUnder(watts, board.SupplyAt(x))!.Value.Amperes;
    }

    readonly struct ForceMargin(SteadyRunning board, Supply supply) : IFunction
    {
        public double At(double x) => board.LargestForce(x, supply) - board.RoadForce(x, 0);
    }
}

/// <summary>Grip of the driven axle's tyres.</summary>
/// <param name="Coefficient">Grip coefficient.</param>
/// <param name="WeightShare">Share of the weight on the driven axle when standing.</param>
/// <param name="Wheelbase">Wheelbase, m.</param>
/// <param name="Driven">Which axle is driven.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record TyreGrip(double Coefficient, double WeightShare, double Wheelbase, Driven Driven)
{
    // Grip on a dry and on a wet road, and height of the rider's centre of mass above it, m; common practice, no source.
    const double Dry = 0.8, Wet = 0.5, CentreOfMassHeight = 1.0;

    /// <summary>Of a board.</summary>
    internal static Answer<TyreGrip> Compute(Board board) => Answer<TyreGrip>.Ask("", needs =>
    {
        var wheelbase = needs.Read(board.Parts.Deck.Wheelbase);
        return needs.Unmet ? null : new TyreGrip(
            needs.Read(board.Brief.Road, Weather.Dry) == Weather.Wet ? Wet : Dry,
            needs.Read(board.Parts.Drive.WeightShare).Value,
            wheelbase.Items[0].Metres, needs.Read(board.Parts.Drive.Driven, Driven.Rear));
    });

    /// <summary>The largest force the tyres take beside a road force, N: μ times the driven axle's load, which changes with the
    /// acceleration.</summary>
    /// <param name="road">Road force, N.</param>
    /// <param name="upright">Weight upon the road, N.</param>
    /// <param name="mass">Mass, kg.</param>
    /// <param name="effectiveMass">Mass with what turns, kg.</param>
    /// <param name="way">1 driving, −1 braking.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal T ForceUnder<T>(T road, T upright, T mass, T effectiveMass, int way)
        where T : struct, ILanes<T>
    {
        // F = μ (share · W ± m h/L · a) with a = (F − F_road)/m_e, solved for F; no more than the whole weight can rest on one axle.
        var whole = Coefficient * upright;
        if (Driven == Driven.Both)
            return whole;
        var transfer = Coefficient * mass * CentreOfMassHeight / (Wheelbase * effectiveMass) * (Driven == Driven.Rear ? 1 : -1);
        var left = 1 - way * transfer;
        return T.Where(-left, whole, T.Max(0, T.Min((Coefficient * WeightShare * upright - transfer * road) / left, whole)));
    }
}

/// <summary>What holding a speed asks.</summary>
/// <param name="Speed">The speed, m/s.</param>
/// <param name="Force">Force at the wheels, N.</param>
/// <param name="PhaseCurrent">Phase amplitude of each motor, A.</param>
/// <param name="Bus">Voltage and current at the controllers.</param>
/// <param name="IsWithinLimits">Whether every limit allows it.</param>
/// <param name="CellWatts">Power at the cells' own terminals, W.</param>
public sealed record OperatingPoint(double Speed, double Force, double PhaseCurrent, Bus Bus, bool IsWithinLimits, double CellWatts);

/// <summary>A steady cruise until the charge is used.</summary>
/// <param name="AtHalf">The operating point at 50 % charge.</param>
/// <param name="Metres">Distance, m.</param>
/// <param name="Seconds">Time, s.</param>
/// <param name="CellJoules">Energy drawn at the cells' terminals, J.</param>
/// <param name="EndCharge">Charge left at the end, 0 to 1.</param>
/// <param name="EndsAtTaper">Whether the taper ended it before the reserve.</param>
public sealed record Cruise(OperatingPoint AtHalf, double Metres, double Seconds, double CellJoules, double EndCharge, bool EndsAtTaper)
{
    /// <summary>Energy at the cells' terminals for each metre at 50 % charge, J/m.</summary>
    public double Consumption => AtHalf.CellWatts / AtHalf.Speed;
}
