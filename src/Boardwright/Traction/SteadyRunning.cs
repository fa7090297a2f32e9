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
public record SteadyRunning
{
    const double TopOfSearch = 100;
    const int RangePanels = 4;

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
    /// <summary>Voltage to which the loaded pack may be charged, V; infinity where nobody asks about braking.</summary>
    public double FullVoltage { get; init; } = double.PositiveInfinity;
    /// <summary>Bus voltage below which power fades; zero where nothing fades.</summary>
    public required double TaperStart { get; init; }
    /// <summary>Bus voltage at which power is cut.</summary>
    public required double TaperEnd { get; init; }
    /// <summary>Force that the driven tyres take at a steady speed, as a part of the weight upon the road.</summary>
    public double SteadyGrip { get; init; } = double.PositiveInfinity;

    private protected double Weight => Load.Mass.Kilograms * RoadLoad.Gravity;

    /// <summary>The pack at a state of charge, 0 to 1.</summary>
    public Supply SupplyAt(double charge)
    {
        var (rest, ohms) = (Pack.RestVoltsAt(charge), Pack.OhmsAt(charge));
        return new Supply(rest, ohms + WiringResistance, Max(0, (FullVoltage - rest) / ohms), TaperStart, TaperEnd);
    }

    /// <summary>Force to hold a speed on a grade (rise over run), N.</summary>
    public double RoadForce(double speed, double grade) =>
        Load.ForceAt(Speed.FromMetresPerSecond(speed), Fraction.FromValue(grade), Speed.FromMetresPerSecond(Headwind)).Newtons;

    /// <summary>The largest force that holds a speed, by current, voltage, pack, electrical speed and grip, N; below zero where the motors
    /// only drag. At a steady speed no weight moves between the axles.</summary>
    public double LargestSteadyForce(double speed, in Supply supply) => Min(ElectricForce(speed, supply), SteadyGrip * Weight);

    /// <summary>The largest force of the motors alone, N.</summary>
    private protected double ElectricForce(double speed, in Supply supply) => Drive.Force(Drive.LargestCurrent(speed, supply) ?? 0, speed);

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
        var electric = ElectricForce(speed, SupplyAt(charge));
        double Margin(double grade) => Min(electric, SteadyGrip * Weight * Cos(Atan(grade))) - RoadForce(speed, grade);
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
            ? new OperatingPoint(speed, force, current, bus, CellPower(bus, charge))
            : null;
    }

    /// <summary>Whether every limit allows an operating point at the state of charge it was found for.</summary>
    public bool Allows(OperatingPoint at, double charge)
    {
        ArgumentNullException.ThrowIfNull(at);
        return Drive.LargestCurrent(at.Speed, SupplyAt(charge)) is { } most && most >= at.PhaseCurrent;
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
        public double At(double x) => board.LargestSteadyForce(x, supply) - board.RoadForce(x, 0);
    }
}

/// <summary>Grip of the driven axle's tyres.</summary>
/// <param name="Coefficient">Grip coefficient.</param>
/// <param name="WeightShare">Share of the weight on the driven axle when standing.</param>
/// <param name="Wheelbase">Wheelbase, m.</param>
/// <param name="Driven">Which axle is driven.</param>
/// <param name="CentreHeight">Height of the centre of mass of rider and board above the road, m.</param>
/// <error>Grip 0.12 either way: paint, leaves and steel have 0.1 to 0.2. Height of the centre 0.04 m upright to 0.09 m tucked, for a rider
/// of 1.75 m.</error>
/// <source cref="Sources.Mechanics"/>
/// <source cref="Sources.GripPractice"/>
public sealed record TyreGrip(double Coefficient, double WeightShare, double Wheelbase, Driven Driven, double CentreHeight)
{
    // A hard urethane wheel holds less than rubber, most of all in the wet.
    const double Urethane = 0.70, Rubber = 0.75, WetUrethane = 0.35, WetRubber = 0.50;

    /// <summary>Of a board.</summary>
    internal static Answer<TyreGrip> Compute(Board board) => Answer<TyreGrip>.Ask("", needs =>
    {
        var wheelbase = needs.Read(board.Parts.Deck.Wheelbase);
        return needs.Unmet ? null : new TyreGrip(
            CoefficientOf(needs, board), ShareOf(needs, board), wheelbase.Items[0].Metres, DrivenOf(needs, board),
            CentreHeightOf(needs.Read(board.Brief.Stance, Stance.Upright)));
    });

    /// <summary>Force that the driven tyres take while no weight moves between the axles, as a part of the weight upon the road.</summary>
    internal static double SteadyOf(Needs needs, Board board) =>
        CoefficientOf(needs, board) * (DrivenOf(needs, board) == Driven.Both ? 1 : ShareOf(needs, board));

    /// <summary>The same of this grip.</summary>
    internal double Steady => Coefficient * (Driven == Driven.Both ? 1 : WeightShare);

    static double CoefficientOf(Needs needs, Board board)
    {
        var isWet = needs.Read(board.Brief.Road, Weather.Dry) == Weather.Wet;
        return board.Parts.Wheels.IsTyre(needs) ? isWet ? WetRubber : Rubber : isWet ? WetUrethane : Urethane;
    }

    static double CentreHeightOf(Stance stance) => stance switch
    {
        Stance.Tucked => 0.63,
        Stance.Crouched => 0.84,
        _ => 0.99,
    };

    static double ShareOf(Needs needs, Board board) => needs.Read(board.Parts.Drive.WeightShare).Value;

    static Driven DrivenOf(Needs needs, Board board) => needs.Read(board.Parts.Drive.Driven, Driven.Rear);

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
        var transfer = Coefficient * mass * CentreHeight / (Wheelbase * effectiveMass) * (Driven == Driven.Rear ? 1 : -1);
        var left = 1 - way * transfer;
        return T.Where(-left, whole, T.Max(0, T.Min((Coefficient * WeightShare * upright - transfer * road) / left, whole)));
    }
}

/// <summary>What holding a speed asks.</summary>
/// <param name="Speed">The speed, m/s.</param>
/// <param name="Force">Force at the wheels, N.</param>
/// <param name="PhaseCurrent">Phase amplitude of each motor, A.</param>
/// <param name="Bus">Voltage and current at the controllers.</param>
/// <param name="CellWatts">Power at the cells' own terminals, W.</param>
public sealed record OperatingPoint(double Speed, double Force, double PhaseCurrent, Bus Bus, double CellWatts);

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
