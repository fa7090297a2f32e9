using System.Runtime.CompilerServices;
using Boardwright.Numerics;
using Boardwright.Road;
using Boardwright.Traction;
using static System.Math;

namespace Boardwright.Searches;

/// <summary>What a brief can be missed by, in the order in which a screening asks.</summary>
enum Miss
{
    Price,
    Climb,
    TopSpeed,
    CruiseHeld,
    Range,
    Descent,
    Stop,
}

/// <summary>How far a screened figure may lie from the examined one; a test holds the screening to it.</summary>
static class Tolerance
{
    /// <summary>Of the range, as a part of it.</summary>
    public const double Range = 1e-7;
    /// <summary>Of the steepest grade, rise over run.</summary>
    public const double Climb = 1e-7;
    /// <summary>Of the top speed, m/s.</summary>
    public const double Speed = 1e-6;
    /// <summary>Of the spare part of currents on the climb.</summary>
    public const double Spare = 1e-7;
    /// <summary>Of every margin to what the brief asks, as a part of it; a board so near to it is examined and not judged by the
    /// screening.</summary>
    public const double Margin = 1e-6;
}

/// <summary>Screens boards by the numbers alone, many at a time, with the equations of the examination: <see cref="WheelDrive"/>,
/// <see cref="FedDrive{T}"/>, <see cref="TyreGrip"/> and <see cref="RoadLoad"/>. Its searches for a root are turned into questions that
/// need none.</summary>
/// <remarks>
/// A speed is held where the current that the road asks for is allowed; so climb, top speed and brakes need no search inside a search. What
/// is left to look for is
/// found by halving a fixed number of times.
/// </remarks>
/// <typeparam name="T">One number or several side by side.</typeparam>
/// <validity>Where force falls as speed rises, as on every board without a wind from behind that outruns it.</validity>
/// <error>Within <see cref="Tolerance"/> of the examination.</error>
/// <source cref="Findings.Sources.Pmsm"/>
sealed class FastFilter<T>
    where T : struct, ILanes<T>
{
    const int Halvings = 40;
    const int Kinds = (int)Miss.Stop + 1;
    const int BrakeSteps = 16;
    const double TopOfSearch = 100;

    readonly BriefTargets asked;
    readonly double cosine;
    readonly double[] weights;
    readonly double[] fittings;

    public FastFilter(in BriefTargets asked, FilterTables numbers)
    {
        this.asked = asked;
        cosine = 1 / Math.Sqrt(1 + asked.Climb * asked.Climb);
        (weights, fittings) = ([.. numbers.NodePlaces.Select(n => n.Weight)], numbers.Fittings);
    }

    /// <summary>How many boards missed the brief by each thing first.</summary>
    public long[] Missed { get; } = new long[Kinds];
    /// <summary>Boards screened.</summary>
    public long Screened { get; private set; }

    /// <summary>Screens a rolling with the feedings of a piece of a tile.</summary>
    /// <param name="m">The rolling.</param>
    /// <param name="tile">The tile.</param>
    /// <param name="from">First place in it, a whole number of widths.</param>
    /// <param name="to">End of the piece.</param>
    /// <param name="margins">For each place by how much the brief is met, at least; below zero where it is missed.</param>
    /// <param name="ranges">For each place the range, m.</param>
    /// <param name="shortfalls">Where given, for each place the sum of all that is missing, each as a part of what is asked and at most 1;
    /// nothing is then left out early.</param>
    /// <returns>How many places may meet the brief.</returns>
    public int Sift(in DriveNumbers m, ReadOnlySpan<double> tile, int from, int to, Span<double> margins, Span<double> ranges,
        Span<double> shortfalls = default)
    {
        var met = 0;
        var thorough = !shortfalls.IsEmpty;
        for (var at = from; at < to; at += T.Width)
        {
            var e = new SupplyColumns(tile, at, FilterTables.Tile);
            var worst = e[FilterTables.Real];
            var alive = T.CountAtLeast(worst, -Tolerance.Margin);
            Screened += alive;
            T missing = 0;
            var end = SiftOne(m, e, ref worst, ref alive, ref missing, ranges[at..], thorough);
            worst.Store(margins, at);
            if (thorough)
                missing.Store(shortfalls, at);
            met += end ? alive : 0;
        }

        return met;
    }

    bool SiftOne(in DriveNumbers m, in SupplyColumns e, ref T worst, ref int alive, ref T missing, Span<double> ranges, bool thorough)
    {
        if (!double.IsPositiveInfinity(asked.PartsBudget)
            && Left(Miss.Price, (asked.PartsBudget - m.Price - e[FilterTables.Price]) / Max(1, Abs(asked.PartsBudget)), ref worst,
            ref alive, ref missing, thorough))
            return false;

        var mass = MassOf(m, e);
        var weight = mass * RoadLoad.Gravity;
        var half = e.Feed(m, FilterTables.Half);

        T speed = asked.ClimbSpeed;
        var uphill = RoadForce(m, weight, asked.Climb, cosine, speed);
        var climb = T.Min(Allowed(m, e, half, m.Wheels.CurrentFor(uphill, speed), speed),
            (m.Tyres.Steady * weight * cosine - uphill) / weight);
        if (Left(Miss.Climb, climb, ref worst, ref alive, ref missing, thorough))
            return false;

        var full = e.Feed(m, FilterTables.Full);
        if (asked.TopSpeed > 0)
        {
            speed = asked.TopSpeed;
            var top = Allowed(m, e, full, m.Wheels.CurrentFor(RoadForce(m, weight, 0, 1, speed), speed), speed);
            if (Left(Miss.TopSpeed, top, ref worst, ref alive, ref missing, thorough))
                return false;
        }

        // Down to the reserve: the current that cruise asks is allowed there, and the power of half charge does not cut it.
        speed = asked.Cruise;
        var cruising = m.Wheels.CurrentFor(RoadForce(m, weight, 0, 1, speed), speed);
        var bus = half.BusAt(cruising, speed);
        var watts = bus.Volts * bus.Amperes;
        var reserve = e.Feed(m, FilterTables.Reserve);
        var last = BusLanes<T>.Under(watts, reserve.RestVoltage, reserve.Resistance);
        var held = T.Min(
            T.Min(bus.FedMargin(half.RestVoltage), last.FedMargin(reserve.RestVoltage)),
            T.Min(Allowed(m, e, reserve, cruising, speed), (last.Volts - reserve.TaperEnd) / reserve.RestVoltage));
        if (Left(Miss.CruiseHeld, held, ref worst, ref alive, ref missing, thorough))
            return false;

        // A constant power until the reserve: ∫ Q V/P over the charge.
        T sum = 0;
        for (var n = 0; n < weights.Length; n++)
            sum += weights[n] * BusLanes<T>.VoltsUnder(watts, e[FilterTables.Nodes + 2 * n], e[FilterTables.Nodes + 2 * n + 1], out _);
        var range = speed * e[FilterTables.Coulombs] * sum / watts;
        range.Store(ranges, 0);
        if (asked.Range > 0 && Left(Miss.Range, (range - asked.Range) / asked.Range, ref worst, ref alive, ref missing, thorough))
            return false;

        if (Left(Miss.Descent, Brakes(m, e, full, mass, asked.ClimbSpeed), ref worst, ref alive, ref missing, thorough))
            return false;
        T stops = 1e9;
        for (var i = 0; i <= BrakeSteps; i++)
            stops = T.Min(stops, Brakes(m, e, half, mass, asked.ClimbSpeed * i / BrakeSteps));
        return !Left(Miss.Stop, stops, ref worst, ref alive, ref missing, thorough);
    }

    /// <summary>What boards are compared by, for feedings that were gathered into lanes: range, climb, speed, mass, price and spare, each
    /// as a low and a high end, more being better.</summary>
    /// <param name="m">The rolling.</param>
    /// <param name="gathered">Columns of the feedings, each as many numbers as there are lanes.</param>
    /// <param name="ranges">Their ranges, from the sifting.</param>
    /// <param name="low">Low ends, one after another for each thing.</param>
    /// <param name="high">High ends.</param>
    public void Compare(in DriveNumbers m, ReadOnlySpan<double> gathered, ReadOnlySpan<double> ranges, Span<double> low, Span<double> high)
    {
        var e = new SupplyColumns(gathered, 0, T.Width);
        var mass = MassOf(m, e);
        var range = T.Load(ranges, 0);
        var half = e.Feed(m, FilterTables.Half);
        // Beyond what counts two boards are alike, and known to be.
        Store(Criterion.Range, range * (1 - Tolerance.Range), range * (1 + Tolerance.Range), asked.Worth.Range, low, high);

        var steepest = Steepest(m, e, half, mass);
        Store(Criterion.Climb, steepest - Tolerance.Climb, steepest + Tolerance.Climb, asked.Worth.Climb, low, high);

        var top = Top(m, e, mass);
        Store(Criterion.Speed, top - Tolerance.Speed, top + Tolerance.Speed, asked.Worth.Speed, low, high);

        var own = -OwnMassOf(m, e);
        Store(Criterion.Mass, own, own, double.PositiveInfinity, low, high);
        var price = -m.Price - e[FilterTables.Price];
        Store(Criterion.Price, price, price, double.PositiveInfinity, low, high);

        T speed = asked.ClimbSpeed;
        var climbing = m.Wheels.CurrentFor(RoadForce(m, mass * RoadLoad.Gravity, asked.Climb, cosine, speed), speed);
        var spare = T.Min(1 - climbing / e.PhaseLimit(m), 1 - half.BusAt(climbing, speed).Amperes / half.PackLimit);
        var volts = e[FilterTables.VoltsLeft];
        Store(Criterion.Spare, T.Min(spare - Tolerance.Spare, volts), T.Min(spare + Tolerance.Spare, volts), asked.Worth.Spare, low, high);
    }

    static void Store(Criterion criterion, T from, T to, double enough, Span<double> low, Span<double> high)
    {
        T.Min(from, enough).Store(low, (int)criterion * T.Width);
        T.Min(to, enough).Store(high, (int)criterion * T.Width);
    }

    /// <summary>Counts the boards that miss the brief by this.</summary>
    /// <returns>Whether no board is left and nobody wants to know what else is missing.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    bool Left(Miss miss, T margin, ref T worst, ref int alive, ref T missing, bool thorough)
    {
        worst = T.Min(worst, margin);
        var left = T.CountAtLeast(worst, -Tolerance.Margin);
        Missed[(int)miss] += alive - left;
        alive = left;
        if (thorough)
            missing += T.Min(1, T.Max(0, -margin));
        return left == 0 && !thorough;
    }

    /// <summary>Mass of the board alone, added up in the order of the examination.</summary>
    T OwnMassOf(in DriveNumbers m, in SupplyColumns e)
    {
        T mass = m.Mass;
        for (var column = FilterTables.Masses; column < FilterTables.EndOfMasses; column++)
            mass += e[column];
        foreach (var fitting in fittings)
            mass += fitting;
        return mass;
    }

    T MassOf(in DriveNumbers m, in SupplyColumns e) => OwnMassOf(m, e) + asked.RiderMass + asked.GearMass;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    T RoadForce(in DriveNumbers m, T weight, T grade, T cosine, T speed) =>
        RoadLoad.RollingAndGrade(weight, cosine, m.Rolling, grade) + RoadLoad.Drag(asked.Drag, speed + asked.Headwind);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static T BrakeGrip(in DriveNumbers m, T mass, T road, T cosine) =>
        m.Tyres.ForceUnder(road, mass * RoadLoad.Gravity * cosine, mass, mass + m.TurningMass, -1);

    /// <summary>By how much a driving current holds every limit, as a part of the limit; below zero where it does not.</summary>
    static T Allowed(in DriveNumbers m, in SupplyColumns e, in FedDrive<T> fed, T asked, T speed)
    {
        var current = T.Max(asked, 0);
        var electrical = m.Wheels.PolePairs * m.Wheels.MotorSpeed(speed);
        return T.Min(T.Min(AllowedByPack(fed, current, speed), 1 - current / e.PhaseLimit(m)), 1 - electrical / e[FilterTables.Electrical]);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static T AllowedByPack(in FedDrive<T> fed, T current, T speed)
    {
        var bus = fed.BusAt(current, speed);
        return T.Min(bus.FedMargin(fed.RestVoltage), fed.DriveMargin(current, speed, bus));
    }

    /// <summary>By how much the electric brake holds the brief's slope downhill, as a part of the weight's pull or of the limit that
    /// fails.</summary>
    T Brakes(in DriveNumbers m, in SupplyColumns e, in FedDrive<T> fed, T mass, T speed)
    {
        var weight = mass * RoadLoad.Gravity;
        var road = RoadForce(m, weight, -asked.Climb, cosine, speed);
        var grip = (BrakeGrip(m, mass, road, cosine) + road) / weight;
        var needed = -m.Wheels.CurrentFor(road, speed);
        var current = T.Max(needed, 0);
        // Power fed back grows with the current up to a crest, then copper eats it; both the way there and the end must hold.
        var margin = T.Min(BrakeMargin(fed, -T.Min(current, fed.Crest(speed)), speed), BrakeMargin(fed, -current, speed));
        margin = T.Min(margin, 1 - current / T.Max(T.Min(m.BrakePhase, e[FilterTables.BrakePhase]), 1e-9));
        // What the motors' own drag holds needs no current.
        return T.Min(grip, T.Where(-needed, T.Max(-needed, 0), margin));
    }

    static T BrakeMargin(in FedDrive<T> fed, T current, T speed)
    {
        var bus = fed.BusAt(current, speed);
        return T.Min(bus.FedMargin(fed.RestVoltage), fed.BrakeMargin(current, speed, bus));
    }

    /// <summary>Steepest grade held at the climbing speed at half charge.</summary>
    T Steepest(in DriveNumbers m, in SupplyColumns e, in FedDrive<T> half, T mass)
    {
        T speed = asked.ClimbSpeed;
        var phase = e.PhaseLimit(m);
        var (low, high) = ((T)0, phase);
        for (var i = 0; i < Halvings; i++)
        {
            // The limit itself is tried first: on most boards it is allowed.
            var middle = i == 0 ? high : (low + high) * 0.5;
            var fits = AllowedByPack(half, middle, speed);
            low = T.Where(fits, middle, low);
            high = T.Where(fits, high, middle);
            if (i == 0)
                high = T.Where(fits, phase, high);
        }

        var electric = m.Wheels.Force(low, speed);
        var (flat, steep) = ((T)(-1), (T)2);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = i == 0 ? steep : (flat + steep) * 0.5;
            var cosines = 1 / T.Sqrt(1 + middle * middle);
            var road = RoadForce(m, mass * RoadLoad.Gravity, middle, cosines, speed);
            var holds = T.Min(electric, m.Tyres.Steady * mass * RoadLoad.Gravity * cosines) - road;
            flat = T.Where(holds, middle, flat);
            steep = T.Where(holds, steep, middle);
        }

        return flat;
    }

    /// <summary>Top speed with a full pack on the level.</summary>
    T Top(in DriveNumbers m, in SupplyColumns e, T mass)
    {
        var full = e.Feed(m, FilterTables.Full);
        var weight = mass * RoadLoad.Gravity;
        var (low, high) = ((T)0, (T)TopOfSearch);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) * 0.5;
            var road = RoadForce(m, weight, 0, 1, middle);
            var holds = T.Min(Allowed(m, e, full, m.Wheels.CurrentFor(road, middle), middle), (m.Tyres.Steady * weight - road) / weight);
            low = T.Where(holds, middle, low);
            high = T.Where(holds, high, middle);
        }

        return low;
    }

    /// <summary>Columns of feedings, from one place on.</summary>
    readonly ref struct SupplyColumns(ReadOnlySpan<double> cells, int at, int stride)
    {
        readonly ReadOnlySpan<double> cells = cells;

        public T this[int column]
        {
            [MethodImpl(MethodImplOptions.AggressiveInlining)]
            get => T.Load(cells, column * stride + at);
        }

        public T PhaseLimit(in DriveNumbers m) => T.Min(m.Phase, this[FilterTables.Phase]);

        /// <summary>The drive as it is fed at a state of charge.</summary>
        /// <param name="m">What turns.</param>
        /// <param name="charge">First of the three columns of a state of charge.</param>
        public FedDrive<T> Feed(in DriveNumbers m, int charge) => new(
            m.Wheels, m.Wheels.PhaseResistance, this[FilterTables.Switch], this[FilterTables.Switching], this[FilterTables.Idle],
            this[FilterTables.Pack],
            this[charge + 2], this[charge], this[charge + 1], this[FilterTables.TaperStart], this[FilterTables.TaperEnd]);
    }
}
