using System.Runtime.CompilerServices;
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
public static class Tolerance
{
    /// <summary>Of the range, as a part of it.</summary>
    public const double Range = 1e-7;

    /// <summary>Of the steepest grade, rise over run.</summary>
    public const double Climb = 1e-7;

    /// <summary>Of the top speed, m/s.</summary>
    public const double Speed = 1e-6;

    /// <summary>Of the spare part of currents on the climb.</summary>
    public const double Spare = 1e-7;

    /// <summary>Of every margin to what the brief asks, as a part of it; a board so near to it is examined and not judged by the screening.</summary>
    public const double Margin = 1e-6;
}

/// <summary>Screens boards by the numbers alone, many at a time: the equations of <see cref="Propulsion"/> and <see cref="SteadyRunning"/>, with searches for a root turned into questions that need none.</summary>
/// <remarks>
/// A speed is held where the current that the road asks for is allowed; so climb, top speed and brakes need no search inside a search. What is left to look for is
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
    readonly double[] places;
    readonly double[] weights;

    public FastFilter(in BriefTargets asked, FilterTables numbers)
    {
        this.asked = asked;
        cosine = 1 / Math.Sqrt(1 + asked.Climb * asked.Climb);
        (places, weights) = ([.. numbers.NodePlaces.Select(n => n.At)], [.. numbers.NodePlaces.Select(n => n.Weight)]);
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
    /// <param name="shortfalls">Where given, for each place the sum of all that is missing, each as a part of what is asked and at most 1; nothing is then left out early.</param>
    /// <returns>How many places may meet the brief.</returns>
    public int Sift(in DriveNumbers m, ReadOnlySpan<double> tile, int from, int to, Span<double> margins, Span<double> ranges, Span<double> shortfalls = default)
    {
        var met = 0;
        var thorough = !shortfalls.IsEmpty;
        for (var at = from; at < to; at += T.Width)
        {
            var e = new SupplyColumns(tile, at, FilterTables.Tile);
            var worst = e[FilterTables.Real];
            var alive = T.CountAtLeast(worst, -Tolerance.Margin);
            Screened += alive;
            var missing = T.All(0);
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
            && Left(Miss.Price, (T.All(asked.PartsBudget - m.Price) - e[FilterTables.Price]) / T.All(Max(1, Abs(asked.PartsBudget))), ref worst, ref alive, ref missing, thorough))
            return false;

        var mass = MassOf(m, e);
        var weight = mass * T.All(RoadLoad.Gravity);

        var uphill = weight * T.All(cosine * (m.Rolling + asked.Climb)) + T.All(DragAt(asked.ClimbSpeed));
        var climbing = CurrentFor(m, uphill, T.All(asked.ClimbSpeed));
        var climb = T.Min(
            Allowed(m, e, climbing, T.All(asked.ClimbSpeed), e[FilterTables.HalfVolts], e[FilterTables.HalfOhms]),
            (GripUnder(m, mass, uphill, T.All(cosine), 1) - uphill) / weight);
        if (Left(Miss.Climb, climb, ref worst, ref alive, ref missing, thorough))
            return false;

        if (asked.TopSpeed > 0)
        {
            var fast = weight * T.All(m.Rolling) + T.All(DragAt(asked.TopSpeed));
            var top = Allowed(m, e, CurrentFor(m, fast, T.All(asked.TopSpeed)), T.All(asked.TopSpeed), e[FilterTables.FullVolts], e[FilterTables.FullOhms]);
            if (Left(Miss.TopSpeed, top, ref worst, ref alive, ref missing, thorough))
                return false;
        }

        // Down to the reserve: the current that cruise asks is allowed there, and the power of half charge does not cut it.
        var level = weight * T.All(m.Rolling) + T.All(DragAt(asked.Cruise));
        var cruising = CurrentFor(m, level, T.All(asked.Cruise));
        var bus = BusAt(m, e, cruising, T.All(asked.Cruise), e[FilterTables.HalfVolts], e[FilterTables.HalfOhms], out var isFed);
        var watts = bus.Volts * bus.Amperes;
        var last = VoltsUnder(watts, e[FilterTables.ReserveVolts], e[FilterTables.ReserveOhms], out var lastIsFed);
        var held = T.Min(T.Min(isFed, lastIsFed), T.Min(
            Allowed(m, e, cruising, T.All(asked.Cruise), e[FilterTables.ReserveVolts], e[FilterTables.ReserveOhms]),
            (last - e[FilterTables.TaperEnd]) / e[FilterTables.ReserveVolts]));
        if (Left(Miss.CruiseHeld, held, ref worst, ref alive, ref missing, thorough))
            return false;

        // A constant power until the reserve: ∫ Q V/P over the charge.
        var sum = T.All(0);
        for (var n = 0; n < places.Length; n++)
            sum += T.All(weights[n]) * VoltsUnder(watts, e[FilterTables.Nodes + 2 * n], e[FilterTables.Nodes + 2 * n + 1], out _);
        var range = T.All(asked.Cruise) * e[FilterTables.Coulombs] * sum / watts;
        range.Store(ranges, 0);
        if (asked.Range > 0 && Left(Miss.Range, (range - T.All(asked.Range)) / T.All(asked.Range), ref worst, ref alive, ref missing, thorough))
            return false;

        if (Left(Miss.Descent, Brakes(m, e, mass, weight, asked.ClimbSpeed, e[FilterTables.FullVolts], e[FilterTables.FullOhms], e[FilterTables.FullRoom]), ref worst, ref alive, ref missing, thorough))
            return false;
        var stops = T.All(1e9);
        for (var i = 0; i <= BrakeSteps; i++)
            stops = T.Min(stops, Brakes(m, e, mass, weight, asked.ClimbSpeed * i / BrakeSteps, e[FilterTables.HalfVolts], e[FilterTables.HalfOhms], e[FilterTables.HalfRoom]));
        return !Left(Miss.Stop, stops, ref worst, ref alive, ref missing, thorough);
    }

    /// <summary>What boards are compared by, for feedings that were gathered into lanes: range, climb, speed, mass, price and spare, each as a low and a high end, more being better.</summary>
    /// <param name="m">The rolling.</param>
    /// <param name="gathered">Columns of the feedings, each as many numbers as there are lanes.</param>
    /// <param name="ranges">Their ranges, from the sifting.</param>
    /// <param name="low">Low ends, one after another for each thing.</param>
    /// <param name="high">High ends.</param>
    public void Compare(in DriveNumbers m, ReadOnlySpan<double> gathered, ReadOnlySpan<double> ranges, Span<double> low, Span<double> high)
    {
        var e = new SupplyColumns(gathered, 0, T.Width);
        var mass = MassOf(m, e);
        var weight = mass * T.All(RoadLoad.Gravity);
        var range = T.Load(ranges, 0);
        // Beyond what counts two boards are alike, and known to be.
        Store(Criterion.Range, range * T.All(1 - Tolerance.Range), range * T.All(1 + Tolerance.Range), asked.Worth.Range, low, high);

        var steepest = Steepest(m, e, mass, weight);
        Store(Criterion.Climb, steepest - T.All(Tolerance.Climb), steepest + T.All(Tolerance.Climb), asked.Worth.Climb, low, high);

        var top = Top(m, e, mass, weight);
        Store(Criterion.Speed, top - T.All(Tolerance.Speed), top + T.All(Tolerance.Speed), asked.Worth.Speed, low, high);

        var own = T.All(0) - OwnMassOf(m, e);
        Store(Criterion.Mass, own, own, double.PositiveInfinity, low, high);
        var price = T.All(-m.Price) - e[FilterTables.Price];
        Store(Criterion.Price, price, price, double.PositiveInfinity, low, high);

        var uphill = weight * T.All(cosine * (m.Rolling + asked.Climb)) + T.All(DragAt(asked.ClimbSpeed));
        var climbing = CurrentFor(m, uphill, T.All(asked.ClimbSpeed));
        var bus = BusAt(m, e, climbing, T.All(asked.ClimbSpeed), e[FilterTables.HalfVolts], e[FilterTables.HalfOhms], out _);
        var phase = T.Min(T.All(m.Phase), e[FilterTables.Phase]);
        var spare = T.Min(T.All(1) - climbing / phase, T.All(1) - bus.Amperes / e[FilterTables.Pack]);
        Store(Criterion.Spare, T.Min(spare - T.All(Tolerance.Spare), e[FilterTables.VoltsLeft]), T.Min(spare + T.All(Tolerance.Spare), e[FilterTables.VoltsLeft]), asked.Worth.Spare, low, high);
    }

    static void Store(Criterion criterion, T from, T to, double enough, Span<double> low, Span<double> high)
    {
        T.Min(from, T.All(enough)).Store(low, (int)criterion * T.Width);
        T.Min(to, T.All(enough)).Store(high, (int)criterion * T.Width);
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
            missing += T.Min(T.All(1), T.Max(T.All(0), T.All(0) - margin));
        return left == 0 && !thorough;
    }

    /// <summary>Mass of the board alone, added up in the order of the examination.</summary>
    T OwnMassOf(in DriveNumbers m, in SupplyColumns e)
    {
        var mass = T.All(m.Mass) + e[FilterTables.ControllerMass] + e[FilterTables.CellMass] + e[FilterTables.PackMass] + e[FilterTables.ProtectionMass] + e[FilterTables.RemoteMass] + e[FilterTables.BoxMass] + e[FilterTables.FuseMass];
        foreach (var fitting in asked.Fittings)
            mass += T.All(fitting);
        return mass;
    }

    T MassOf(in DriveNumbers m, in SupplyColumns e) => OwnMassOf(m, e) + T.All(asked.RiderMass) + T.All(asked.GearMass);

    double DragAt(double speed) => asked.Drag * (speed + asked.Headwind) * Abs(speed + asked.Headwind);

    T DragAt(T speed)
    {
        var through = speed + T.All(asked.Headwind);
        return T.All(asked.Drag) * through * T.Abs(through);
    }

    static T CurrentFor(in DriveNumbers m, T force, T speed)
    {
        var torque = force * T.All(m.Radius / (m.Motors * m.Ratio));
        torque = T.Where(force, torque * T.All(1 / m.Efficiency), torque * T.All(m.Efficiency));
        return (torque + T.All(m.Drag) + T.All(m.DragSlope * m.Ratio / m.Radius) * speed) / T.All(m.Torque);
    }

    static (T Volts, T Amperes) BusAt(in DriveNumbers m, in SupplyColumns e, T current, T speed, T rest, T ohms, out T isFed)
    {
        var motor = speed * T.All(m.Ratio / m.Radius);
        var power = T.All(m.Motors) * (T.All(1.5) * (T.All(m.Ohms) + e[FilterTables.Switch]) * current * current + T.All(m.Torque) * current * motor) + e[FilterTables.Idle];
        var switching = T.All(m.Motors) * e[FilterTables.Switching] * T.Abs(current);
        var left = rest - switching * ohms;
        var root = left * left - T.All(4) * power * ohms;
        isFed = T.Min(root / (rest * rest), left / rest);
        var volts = T.Max((left + T.Sqrt(T.Max(root, T.All(0)))) * T.All(0.5), T.All(1e-3));
        return (volts, (power + switching * volts) / volts);
    }

    static T VoltsUnder(T watts, T rest, T ohms, out T isFed)
    {
        var root = rest * rest - T.All(4) * watts * ohms;
        isFed = root / (rest * rest);
        return (rest + T.Sqrt(T.Max(root, T.All(0)))) * T.All(0.5);
    }

    static T VoltageMargin(in DriveNumbers m, T current, T electrical, T volts)
    {
        var across = electrical * T.All(m.Henries) * current;
        var along = T.All(m.Ohms) * current + electrical * T.All(m.Flux);
        return T.All(Propulsion.Modulation / 1.7320508075688772) * volts - T.Sqrt(across * across + along * along);
    }

    /// <summary>By how much a driving current holds every limit, as a part of the limit; below zero where it does not.</summary>
    static T Allowed(in DriveNumbers m, in SupplyColumns e, T asked, T speed, T rest, T ohms)
    {
        var current = T.Max(asked, T.All(0));
        var bus = BusAt(m, e, current, speed, rest, ohms, out var margin);
        var electrical = speed * T.All(m.PolePairs * m.Ratio / m.Radius);
        var fade = T.Where(bus.Volts - e[FilterTables.TaperStart], T.All(1), T.Max(T.All(0), (bus.Volts - e[FilterTables.TaperEnd]) / (e[FilterTables.TaperStart] - e[FilterTables.TaperEnd])));
        margin = T.Min(margin, (e[FilterTables.Pack] * fade - bus.Amperes) / e[FilterTables.Pack]);
        margin = T.Min(margin, VoltageMargin(m, current, electrical, bus.Volts) / rest);
        margin = T.Min(margin, T.All(1) - current / T.Min(T.All(m.Phase), e[FilterTables.Phase]));
        return T.Min(margin, T.All(1) - electrical / e[FilterTables.Electrical]);
    }

    /// <summary>Grip of the driven tyres against a road force; the sign says whether it drives or brakes.</summary>
    T GripUnder(in DriveNumbers m, T mass, T road, T cosines, int sign)
    {
        var upright = mass * T.All(RoadLoad.Gravity) * cosines;
        var whole = T.All(asked.Grip) * upright;
        if (m.Transfers == 0)
            return whole;
        var effective = mass + T.All(m.WheelMass) + T.All(m.RotorMass);
        var transfer = T.All(asked.Grip * SteadyRunning.CentreOfMassHeight / m.Wheelbase * m.Transfers) * mass / effective;
        var left = T.All(1) - T.All(sign) * transfer;
        var standing = (whole * T.All(asked.WeightShare) - transfer * road) / T.Max(left, T.All(1e-12));
        return T.Where(T.All(0) - left, whole, T.Max(T.All(0), T.Min(standing, whole)));
    }

    /// <summary>By how much the electric brake holds the brief's slope downhill, as a part of the weight's pull or of the limit that fails.</summary>
    T Brakes(in DriveNumbers m, in SupplyColumns e, T mass, T weight, double speed, T rest, T ohms, T room)
    {
        var road = weight * T.All(cosine * (m.Rolling - asked.Climb)) + T.All(DragAt(speed));
        var pull = T.All(0) - road;
        var grip = (GripUnder(m, mass, road, T.All(cosine), -1) - pull) / weight;
        var drag = T.All(m.Drag + m.DragSlope * m.Ratio / m.Radius * speed);
        var needed = (pull * T.All(m.Radius * m.Efficiency / (m.Motors * m.Ratio)) - drag) / T.All(m.Torque);
        var current = T.Max(needed, T.All(0));
        var allowed = T.Min(e[FilterTables.Regen], room);
        var limit = T.Min(T.All(m.BrakePhase), e[FilterTables.BrakePhase]);
        // Power fed back grows with the current up to a crest, then copper eats it; both the way there and the end must hold.
        var crest = T.All(m.Torque * speed * m.Ratio / m.Radius / 3) / (T.All(m.Ohms) + e[FilterTables.Switch]);
        var margin = T.Min(BrakeMargin(m, e, T.Min(current, crest), speed, rest, ohms, allowed), BrakeMargin(m, e, current, speed, rest, ohms, allowed));
        margin = T.Min(margin, T.All(1) - current / T.Max(limit, T.All(1e-9)));
        // What the motors' own drag holds needs no current.
        return T.Min(grip, T.Where(T.All(0) - needed, T.Max(T.All(0) - needed, T.All(0)), margin));
    }

    static T BrakeMargin(in DriveNumbers m, in SupplyColumns e, T amperes, double speed, T rest, T ohms, T allowed)
    {
        var electrical = T.All(speed * m.PolePairs * m.Ratio / m.Radius);
        var bus = BusAt(m, e, T.All(0) - amperes, T.All(speed), rest, ohms, out var isFed);
        return T.Min(isFed, T.Min((allowed + bus.Amperes) / e[FilterTables.Pack], VoltageMargin(m, T.All(0) - amperes, electrical, bus.Volts) / rest));
    }

    /// <summary>Steepest grade held at the climbing speed at half charge.</summary>
    T Steepest(in DriveNumbers m, in SupplyColumns e, T mass, T weight)
    {
        var speed = T.All(asked.ClimbSpeed);
        var (low, high) = (T.All(0), T.Min(T.All(m.Phase), e[FilterTables.Phase]));
        var phase = high;
        for (var i = 0; i < Halvings; i++)
        {
            // The limit itself is tried first: on most boards it is allowed.
            var middle = i == 0 ? high : (low + high) * T.All(0.5);
            var fits = AllowedBelowPhase(m, e, middle, speed);
            low = T.Where(fits, middle, low);
            high = T.Where(fits, high, middle);
            if (i == 0)
                high = T.Where(fits, phase, high);
        }

        var torque = T.All(m.Torque) * low - T.All(m.Drag + m.DragSlope * m.Ratio / m.Radius * asked.ClimbSpeed);
        var electric = T.All(m.Motors * m.Ratio / m.Radius) * T.Where(torque, torque * T.All(m.Efficiency), torque * T.All(1 / m.Efficiency));
        var (flat, steep) = (T.All(-1), T.All(2));
        var air = T.All(DragAt(asked.ClimbSpeed));
        for (var i = 0; i < Halvings; i++)
        {
            var middle = i == 0 ? steep : (flat + steep) * T.All(0.5);
            var cosines = T.All(1) / T.Sqrt(T.All(1) + middle * middle);
            var road = weight * cosines * (T.All(m.Rolling) + middle) + air;
            var holds = T.Min(electric, GripUnder(m, mass, road, cosines, 1)) - road;
            flat = T.Where(holds, middle, flat);
            steep = T.Where(holds, steep, middle);
        }

        return flat;
    }

    static T AllowedBelowPhase(in DriveNumbers m, in SupplyColumns e, T current, T speed)
    {
        var bus = BusAt(m, e, current, speed, e[FilterTables.HalfVolts], e[FilterTables.HalfOhms], out var margin);
        var electrical = speed * T.All(m.PolePairs * m.Ratio / m.Radius);
        var fade = T.Where(bus.Volts - e[FilterTables.TaperStart], T.All(1), T.Max(T.All(0), (bus.Volts - e[FilterTables.TaperEnd]) / (e[FilterTables.TaperStart] - e[FilterTables.TaperEnd])));
        return T.Min(margin, T.Min((e[FilterTables.Pack] * fade - bus.Amperes) / e[FilterTables.Pack], VoltageMargin(m, current, electrical, bus.Volts) / e[FilterTables.HalfVolts]));
    }

    /// <summary>Top speed with a full pack on the level.</summary>
    T Top(in DriveNumbers m, in SupplyColumns e, T mass, T weight)
    {
        var rolling = weight * T.All(m.Rolling);
        var (low, high) = (T.All(0), T.All(TopOfSearch));
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) * T.All(0.5);
            var road = rolling + DragAt(middle);
            var holds = T.Min(
                Allowed(m, e, CurrentFor(m, road, middle), middle, e[FilterTables.FullVolts], e[FilterTables.FullOhms]),
                (GripUnder(m, mass, road, T.All(1), 1) - road) / weight);
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
    }
}
