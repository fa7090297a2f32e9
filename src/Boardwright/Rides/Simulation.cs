using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Packs;
using Boardwright.Traction;
using static System.Math;

namespace Boardwright.Rides;

/// <summary>Rides a course step by step: m_e dv/dt = F − F_road, with the pack's branches, the charge and four warm bodies.</summary>
/// <remarks>
/// <para>
/// A step is as long as stated, and shorter where it would run over a corner: a change of grade, the start of braking, the
/// target speed, a halt, the reserve. Within a step the acceleration is constant. Where nothing holds the board back it is the
/// rider's, which is exact; elsewhere it is that of the largest force at the middle of the step (the implicit midpoint rule).
/// The current follows from the force at the middle; the pack's branches are advanced exactly for a constant current, charge
/// likewise, tables are read at the middle, and the warm bodies go by the trapezoidal rule. Every part is of second order, so
/// half the step leaves a quarter of the error.
/// </para>
/// <para>Every watt is booked with the same current, speed and voltage that moved the board, so the energies add up to rounding.</para>
/// </remarks>
/// <validity>Steps of up to some seconds; shorter than a quarter of the winding's time constant. A hot controller fades the phase current
/// for driving and braking alike.</validity>
/// <error>At the default step below 0.1 % of distance, energy and every temperature's rise, against the same ride at half the step.</error>
/// <source cref="Sources.Midpoint"/>
public sealed class Simulation
{
    // Squares of speeds nearer to the target than this part count as on it; a tenth of a millimetre per second.
    const double Near = 1e-9;

    // Places and speeds nearer to a corner than this are the corner, m and m/s.
    const double Touching = 1e-7;

    // A jump within a step is closed in on down to this part of a step.
    const double Sliver = 1.0 / 256;

    // Slower than this for this long, and the rider steps off.
    const double WalkingPace = 4 / 3.6;
    const double Patience = 60;

    // A sensor that shows less than this shows a board that stands.
    const double StandingStill = 0.3;

    readonly RideCourse course;
    readonly RideOptions options;
    readonly RideHeat heat;
    readonly BrakedRunning running;
    readonly Propulsion drive;
    readonly CellModel cell;
    readonly double step, reserve, mass, rolling, weight, air, wind, accelerating;
    readonly double phaseOhmsAt20, oilTorque, coulombs, cells, links, wiring, full;
    readonly double firstSeconds, secondSeconds;
    readonly List<RideMoment> trace = [];

    RideState now;
    RideEnergy energy;
    Peaks peaks;
    Electric pack;
    double waiting, crawling, nextTrace;
    RideMoment? latest;
    double moving, phaseSquare, packSquare;
    double cellRate, windingRate, controllerRate, lastAmperes;
    double lastHeldBack;
    int index;
    long steps;

    /// <summary>Sets a board at the start of a course.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step or the charge is outside its range.</exception>
    public Simulation(RideModel model, RideCourse course, RideOptions options)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(options.Step.Seconds, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(options.Step.Seconds, RideOptions.LongestStepSeconds, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegative(options.StartCharge.Value, nameof(options));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(options.StartCharge.Value, 1, nameof(options));
        (this.course, this.options, heat, running, drive, cell) =
            (course, options, model.Heat, model.Running, model.Running.Drive, model.Cell);
        step = options.Step.Seconds;
        reserve = model.Reserve;
        mass = running.EffectiveMass;
        weight = running.Load.Weight.Newtons;
        rolling = weight * running.Load.RollingResistance.Value;
        air = running.Load.DragKilogramsPerMetre;
        wind = running.Headwind;
        accelerating = model.Pace.Accelerating.MetresPerSecondSquared;
        (phaseOhmsAt20, oilTorque) = (model.PhaseOhmsAt20, model.OilTorque);
        coulombs = running.Pack.Capacity.Coulombs;
        cells = (double)running.Pack.Series / running.Pack.Parallel;
        (links, wiring, full) = (running.Pack.Links.Ohms, running.WiringResistance, running.FullVoltage);
        (firstSeconds, secondSeconds) = (cell.First?.TimeConstant.Seconds ?? 0, cell.Second?.TimeConstant.Seconds ?? 0);
        now = RideState.AtRest(options.StartCharge.Value, heat.Ambient);
        peaks = Peaks.At(now);
    }

    /// <summary>State of the ride.</summary>
    public RideState State
    {
        get => now;
        internal set => now = value;
    }

    /// <summary>How the ride ended; <c>null</c> while it goes on.</summary>
    public RideEnd? End { get; private set; }
    /// <summary>What held the board back when it could not go on.</summary>
    public RideLimit HeldBack { get; private set; }
    /// <summary>Energy so far.</summary>
    public RideEnergy Energy => energy;
    /// <summary>Steps so far.</summary>
    public long Steps => steps;
    /// <summary>Times round the route, this one not counted.</summary>
    public int Laps { get; private set; }

    internal Peaks Most => peaks;

    internal double MovingSeconds => moving;

    internal double PhaseSquareSeconds => phaseSquare;

    internal double PackSquareSeconds => packSquare;

    internal List<RideMoment> Trace => trace;

    /// <summary>Rides to the end.</summary>
    public void Run()
    {
        while (End is null)
            Advance();
        // However far apart moments are, the trace ends where the ride does.
        if (latest is { } end && trace[^1].State.Seconds < end.State.Seconds)
            trace.Add(end);
    }

    /// <summary>Rides for a time, or to the end if that comes sooner.</summary>
    internal void RunFor(double seconds)
    {
        for (var until = now.Seconds + seconds - Touching; End is null && now.Seconds < until;)
            Advance();
    }

    /// <summary>One step.</summary>
    public void Advance()
    {
        if (End is not null)
            return;
        if (now.Seconds >= options.Longest.Seconds)
            End = RideEnd.TimeIsUp;
        else if (waiting > 0)
            Wait();
        else
            Roll();
    }

    /// <summary>Goes to a speed in a time whatever the board's limits are, as a ride that was ridden did; braking is the motors' as far as
    /// they may, the rest the foot's.</summary>
    /// <param name="seconds">The time, above 0.</param>
    /// <param name="until">Speed at its end, m/s.</param>
    /// <param name="sine">Sine of the slope.</param>
    /// <param name="cosine">Cosine of the slope.</param>
    /// <param name="bus">Volts and amperes at the controllers, mean over the time.</param>
    /// <returns>Whether the model could do what was ridden, all limits held.</returns>
    internal bool Follow(double seconds, double until, double sine, double cosine, out Bus bus)
    {
        RideCourse.CoursePiece piece = new(0, double.PositiveInfinity, 0, 0, cosine, sine, false, 0);
        var rate = (until - now.Speed) / seconds;
        Look(seconds);
        Pull pull = default;
        var isHeld = true;
        if (Max(now.Speed, until) < StandingStill)
        {
            pull.Bus = drive.BusAt(0, 0, pack.Supply, pack.PhaseOhms) ?? new Bus(pack.Open, 0);
            rate = 0;
        }
        else
        {
            isHeld = Wanted(rate, now.Speed + rate * seconds / 2, piece, ref pull);
            if (!isHeld && drive.BusAt(pull.Current, pull.Middle, pack.Supply, pack.PhaseOhms) is { } driven)
                pull.Bus = driven;
            else if (!isHeld)
                Largest(rate, now.Speed + rate * seconds / 2, piece, ref pull);
            End = null;
        }

        Book(seconds, rate, piece, pull);
        now.Speed = until;
        bus = pull.Bus;
        return isHeld;
    }

    void Wait()
    {
        var h = Min(step, waiting);
        Look(h);
        if (drive.BusAt(0, 0, pack.Supply, pack.PhaseOhms) is not { } bus)
        {
            End = RideEnd.PowerCut;
            return;
        }

        waiting -= h;
        Book(h, 0, default, new Pull { Bus = bus });
        if (now.Charge <= reserve)
            End = RideEnd.Reserve;
    }

    void Roll()
    {
        ref readonly var piece = ref course.Pieces[index];
        var v = now.Speed;
        var below = piece.SquareAt(now.Place) - v * v;
        var isBehind = below > Near * (1 + v * v);
        var wish = isBehind ? accelerating : piece.Slope / 2;
        Pull pull = default;
        double h;
        // Once more where the motors' share of the braking jumps, and where the step would use more than the reserve leaves.
        for (var (most, isCut) = (step, false); ;)
        {
            h = TimeFor(wish, most, below, isBehind, piece);
            Look(h);
            if (!Wanted(wish, v + wish * h / 2, piece, ref pull))
                h = LimitedStep(wish, most, below, isBehind, piece, ref pull);
            if (End is not null)
                return;
            if (!isCut && h > step * Sliver && pull.Current < 0 && wish < 0 && Jumps(wish, v, v + wish * h, piece))
            {
                most = h / 2;
                continue;
            }

            var left = (now.Charge - reserve) * coulombs;
            if (isCut || pull.Bus.Amperes * h <= left + 1e-9 * coulombs)
                break;
            (most, isCut) = (Max(Touching, left / pull.Bus.Amperes), true);
        }

        Book(h, pull.Acceleration, piece, pull);
        Corner(piece);
        Watch(h, pull);
    }

    /// <summary>What the rider wants, driving or braking.</summary>
    /// <returns>Whether the board can do it; braking it always can, by foot where the motors do not suffice.</returns>
    bool Wanted(double wish, double middle, in RideCourse.CoursePiece piece, ref Pull pull)
    {
        var road = RoadForce(middle, piece);
        var force = mass * wish + road;
        pull = new Pull { Middle = middle, Acceleration = wish, Road = road, Force = force };
        if (force >= drive.Force(0, middle))
        {
            pull.Current = drive.CurrentFor(force, middle);
            return force <= running.GripUnder(road, piece.Cosine)
                && drive.Allows(pull.Current, middle, pack.Supply, pack.PhaseOhms, drive.PhaseLimit * pack.Fade, out pull.Bus);
        }

        var wanted = Min(-force, running.BrakeGripUnder(road, piece.Cosine));
        var needed = Min(-drive.CurrentFor(-wanted, middle), running.Braking.Phase * pack.Fade);
        var most = running.Braking with { Phase = needed };
        var current = needed <= 0 ? 0 : drive.LargestBrakeCurrent(middle, pack.Supply, pack.PhaseOhms, most);
        pull.Current = -current;
        pull.Force = -drive.BrakeForce(current, middle);
        // The motors' own drag may exceed what the tyres of one axle take; then nothing is left for the foot.
        pull.Foot = Max(0, pull.Force - force);
        pull.Acceleration = (pull.Force - pull.Foot - road) / mass;
        if (drive.BusAt(-current, middle, pack.Supply, pack.PhaseOhms) is { } bus)
            pull.Bus = bus;
        else
            End = RideEnd.PowerCut;
        return true;
    }

    /// <summary>Whether the motors' part of the braking changes so much between two speeds that its middle does not stand for it: where the
    /// pack's limit lets go at a crawl it jumps.</summary>
    bool Jumps(double wish, double fast, double slow, in RideCourse.CoursePiece piece)
    {
        const double Much = 0.2;
        Pull one = default, other = default;
        return Wanted(wish, fast, piece, ref one) && Wanted(wish, slow, piece, ref other)
            && Abs(one.Current - other.Current) > Much * running.Braking.Phase;
    }

    /// <summary>The most the board can do: a = (F_largest(v + a h/2) − F_road)/m_e, solved for a by the secant rule.</summary>
    /// <returns>Length of the step.</returns>
    double LimitedStep(double wish, double most, double below, bool isBehind, in RideCourse.CoursePiece piece, ref Pull pull)
    {
        const int Rounds = 30;
        const double Enough = 1e-9;
        var v = now.Speed;
        var a = lastHeldBack;
        double h = 0, before = 0, gapBefore = 0;
        for (var round = 0; round < Rounds; round++)
        {
            h = TimeFor(a, most, below, isBehind, piece);
            Look(h);
            Largest(wish, Max(0, v + a * h / 2), piece, ref pull);
            var gap = pull.Acceleration - a;
            if (Abs(gap) <= Enough)
                break;
            var slope = round > 0 ? (gap - gapBefore) / (a - before) : -1;
            (before, gapBefore) = (a, gap);
            // The force falls with speed, so the gap falls at least as fast as a grows; a kink must not send the rule astray.
            a -= gap / (slope < -0.2 ? slope : -1);
        }

        lastHeldBack = pull.Acceleration;
        if (v == 0 && pull.Acceleration <= Enough)
        {
            HeldBack = pull.HeldBack;
            End = pull.HeldBack == RideLimit.Taper ? RideEnd.PowerCut : RideEnd.CannotGoOn;
        }

        return h;
    }

    void Largest(double wish, double middle, in RideCourse.CoursePiece piece, ref Pull pull)
    {
        var road = RoadForce(middle, piece);
        var phaseLimit = drive.PhaseLimit * pack.Fade;
        pull = new Pull { Middle = middle, Road = road };
        if (drive.LargestCurrent(middle, pack.Supply, pack.PhaseOhms, phaseLimit) is { } current)
        {
            pull.Current = current;
            pull.Force = drive.Force(current, middle);
            pull.HeldBack = current >= phaseLimit ? pack.Fade < 1 ? RideLimit.HotController : RideLimit.PhaseCurrent : RideLimit.Voltage;
        }
        else
        {
            pull.Force = drive.Force(0, middle);
            pull.HeldBack = RideLimit.Voltage;
        }

        var most = Min(running.GripUnder(road, piece.Cosine), mass * wish + road);
        if (pull.Force > most)
        {
            pull.HeldBack = most < mass * wish + road ? RideLimit.Grip : RideLimit.Nothing;
            pull.Force = most;
            pull.Current = drive.CurrentFor(most, middle);
        }

        pull.Acceleration = (pull.Force - road) / mass;
        if (drive.BusAt(pull.Current, middle, pack.Supply, pack.PhaseOhms) is not { } bus)
        {
            End = RideEnd.PowerCut;
            return;
        }

        pull.Bus = bus;
        var fade = pack.Supply.Fade(bus.Volts);
        if (pull.HeldBack == RideLimit.Voltage && bus.Amperes >= drive.PackLimit * fade * (1 - 1e-6))
            pull.HeldBack = fade < 1 ? RideLimit.Taper : RideLimit.PackCurrent;
    }

    double RoadForce(double speed, in RideCourse.CoursePiece piece)
    {
        var through = speed + wind;
        return rolling * piece.Cosine + weight * piece.Sine + air * through * Abs(through);
    }

    /// <summary>Time at an acceleration until the step is over, the piece ends, the target is met or the board stands.</summary>
    double TimeFor(double a, double most, double below, bool isBehind, in RideCourse.CoursePiece piece)
    {
        var v = now.Speed;
        var left = piece.End - now.Place;
        var end = v * v + 2 * a * left;
        var time = end >= 0 ? Min(most, 2 * left / (v + Sqrt(end))) : most;
        if (isBehind && 2 * a > piece.Slope)
        {
            var way = below / (2 * a - piece.Slope);
            time = Min(time, 2 * way / (v + Sqrt(v * v + 2 * a * way)));
        }

        if (a < 0)
            time = Min(time, -v / a);
        return Max(time, 1e-9);
    }

    /// <summary>Looks at pack, windings and controllers at the middle of a step.</summary>
    void Look(double h)
    {
        if (h != pack.For)
        {
            pack.For = h;
            (pack.FirstDecay, pack.FirstKept) = Decay(h, firstSeconds);
            (pack.SecondDecay, pack.SecondKept) = Decay(h, secondSeconds);
        }

        var charge = now.Charge - lastAmperes * h / (2 * coulombs);
        var kelvins = now.Cells + cellRate * h / 2;
        pack.Rest = running.Pack.Series * cell.RestVoltsAt(charge);
        pack.Ohms = cells * cell.OhmsAtOnce(charge, kelvins);
        pack.First = cell.First is { } first ? cells * first.Resistance.At(charge, kelvins) : 0;
        pack.Second = cell.Second is { } second ? cells * second.Resistance.At(charge, kelvins) : 0;
        pack.Open = pack.Rest - now.FirstVolts * pack.FirstKept - now.SecondVolts * pack.SecondKept;
        pack.Met = pack.Ohms + pack.First * (1 - pack.FirstKept) + pack.Second * (1 - pack.SecondKept);
        var inside = pack.Met + links;
        pack.Supply = new Supply(pack.Open, inside + wiring, Max(0, (full - pack.Open) / inside), running.TaperStart, running.TaperEnd);
        pack.PhaseOhms = phaseOhmsAt20 * (1 + MotorHeat.CopperPerKelvin * (now.Winding + windingRate * h / 2 - 293.15));
        pack.Fade = heat.Fade(now.Controller + controllerRate * h / 2);
    }

    /// <summary>exp(−x) and its mean over 0 to x.</summary>
    static (double Decay, double Kept) Decay(double seconds, double timeConstant)
    {
        if (timeConstant == 0)
            return (0, 0);
        var x = seconds / timeConstant;
        var decay = Exp(-x);
        return (decay, x < 1e-4 ? 1 - x / 2 + x * x / 6 : (1 - decay) / x);
    }

    /// <summary>Moves everything on by a step and books its energies.</summary>
    void Book(double h, double a, in RideCourse.CoursePiece piece, Pull pull)
    {
        var v = pull.Middle;
        var moved = v * h;
        var motor = drive.MotorSpeed(v);
        var (i, amperes, volts) = (pull.Current, pull.Bus.Amperes, pull.Bus.Volts);
        var n = drive.Motors;

        var through = v + wind;
        energy.Air += air * through * Abs(through) * moved;
        energy.Rolling += rolling * piece.Cosine * moved;
        energy.Grade += weight * piece.Sine * moved;
        energy.Motion += mass * a * moved;
        energy.FootBrake += pull.Foot * moved;

        var drag = v > 0 ? drive.Drag(motor) * motor : 0;
        var shaft = v > 0 ? n * (drive.TorqueConstant * i - drive.Drag(motor)) * motor : 0;
        var copper = 1.5 * pack.PhaseOhms * i * i;
        var conduction = 1.5 * drive.SwitchResistance * i * i;
        var switching = drive.SwitchingFactor * Abs(i) * volts;
        energy.Drag += n * drag * h;
        energy.Gears += (shaft - pull.Force * v) * h;
        energy.Copper += n * copper * h;
        energy.Conduction += n * conduction * h;
        energy.Switching += n * switching * h;
        energy.Idle += drive.IdlePower * h;
        energy.Wiring += amperes * amperes * wiring * h;
        energy.Links += amperes * amperes * links * h;
        energy.CellResistance += amperes * amperes * pack.Ohms * h;
        energy.FromCells += pack.Rest * amperes * h;
        var cellVolts = pack.Open - amperes * pack.Met;
        if (amperes > 0)
            energy.Delivered += amperes * cellVolts * h;
        else
            energy.Returned -= amperes * cellVolts * h;

        var (first, burntFirst) = Branch(now.FirstVolts, pack.First, pack.FirstDecay, pack.FirstKept, h, amperes);
        var (second, burntSecond) = Branch(now.SecondVolts, pack.Second, pack.SecondDecay, pack.SecondKept, h, amperes);
        (now.FirstVolts, now.SecondVolts) = (first, second);

        Warm(h, v, copper, drag - (v > 0 ? oilTorque * motor : 0), n * (conduction + switching) + drive.IdlePower,
            amperes * amperes * pack.Ohms + (burntFirst + burntSecond) / h);
        now.Charge -= amperes * h / coulombs;
        now.Seconds += h;
        now.Metres += moved;
        now.Place += moved;
        // Braking to a halt may round to a hair below it.
        now.Speed = Max(0, now.Speed + a * h);
        lastAmperes = amperes;
        steps++;
        moving += v > 0 ? h : 0;
        phaseSquare += i * i * h;
        packSquare += amperes * amperes * h;
        peaks.Take(now, Abs(i), amperes, cellVolts, h, heat, pull, volts < running.TaperStart);
        if (a != 0 && pull.HeldBack == RideLimit.Nothing)
            TakeFastEnd(Max(v + a * h / 2, v - a * h / 2), a, piece, pull);
        if (options.TraceEvery is { } every)
        {
            RideMoment moment = new(now, piece.Cosine > 0 ? piece.Sine / piece.Cosine : 0, pull.Force, pull.Foot, i, amperes, volts,
                cellVolts / running.Pack.Series, pull.HeldBack);
            latest = moment;
            if (now.Seconds >= nextTrace)
            {
                trace.Add(moment);
                nextTrace = now.Seconds + every.Seconds - Touching;
            }
        }
    }

    /// <summary>Currents are greatest at the fast end of a step, not at its middle, when the rider starts or brakes.</summary>
    void TakeFastEnd(double fast, double a, in RideCourse.CoursePiece piece, Pull pull)
    {
        // Power grows no faster than the cube of the speed, so most steps cannot set a new mark.
        var growth = pull.Middle > 0 ? fast / pull.Middle : double.PositiveInfinity;
        var most = Abs(pull.Bus.Amperes) * growth * growth * growth;
        if (most <= (pull.Bus.Amperes > 0 ? peaks.Out : peaks.Into) && Abs(pull.Current) * growth * growth <= peaks.Phase)
            return;
        Pull end = default;
        if (Wanted(a, fast, piece, ref end) && End is null)
            peaks.Mark(Abs(end.Current), end.Bus.Amperes, pack.Open - end.Bus.Amperes * pack.Met, now.Metres);
    }

    /// <summary>Advances a branch exactly: its voltage, and what its resistor burnt, J.</summary>
    (double Volts, double Burnt) Branch(double volts, double ohms, double decay, double kept, double h, double amperes)
    {
        if (ohms <= 0)
            return (0, 0);
        var aim = ohms * amperes;
        var away = volts - aim;
        var square = aim * aim + 2 * aim * away * kept + away * away * kept * (1 + decay) / 2;
        var burnt = square / ohms * h;
        energy.Polarisation += burnt;
        energy.HeldInPolarisation += amperes * (aim + away * kept) * h - burnt;
        return (aim + away * decay, burnt);
    }

    /// <summary>Warms windings and cases, controllers and cells by the trapezoidal rule.</summary>
    void Warm(double h, double speed, double copper, double shell, double bridges, double inCells)
    {
        var (between, outside) = (heat.WindingToCase, heat.CaseToAir.At(speed, now.Case));
        var through = between * (now.Winding - now.Case);
        var (w, c) = (copper - through, shell + through - outside * (now.Case - heat.Ambient));
        var (ww, cc, wc) = (heat.WindingCapacity / h + between / 2, heat.CaseCapacity / h + (between + outside) / 2, between / 2);
        var determinant = ww * cc - wc * wc;
        var winding = (w * cc + c * wc) / determinant;
        now.Winding += winding;
        now.Case += (c * ww + w * wc) / determinant;
        windingRate = winding / h;

        controllerRate = (bridges / heat.Controllers - heat.ControllerToAir * (now.Controller - heat.Ambient))
            / (heat.ControllerCapacity + heat.ControllerToAir * h / 2);
        now.Controller += controllerRate * h;
        cellRate = (inCells - heat.PackToAir * (now.Cells - heat.Ambient)) / (heat.CellCapacity + heat.PackToAir * h / 2);
        now.Cells += cellRate * h;
    }

    /// <summary>Comes to the end of a piece, to a halt, to the end of the route.</summary>
    void Corner(in RideCourse.CoursePiece piece)
    {
        if (now.Speed < Touching)
            now.Speed = 0;
        if (piece.End - now.Place > Touching)
            return;
        now.Place = piece.End;
        if (piece.IsHalt)
        {
            now.Speed = 0;
            waiting = piece.WaitSeconds;
        }

        if (++index < course.Pieces.Length)
            return;
        index = 0;
        now.Place = 0;
        Laps++;
        if (!options.Repeats)
            End = RideEnd.EndOfRoute;
    }

    void Watch(double h, Pull pull)
    {
        crawling = pull.HeldBack != RideLimit.Nothing && now.Speed < WalkingPace ? crawling + h : 0;
        if (End is not null)
            return;
        if (now.Charge <= reserve + 1e-9)
            End = RideEnd.Reserve;
        else if (running.TaperStart == 0 && pull.Bus.Volts <= running.TaperEnd)
            End = RideEnd.PowerCut;
        else if (crawling > Patience)
        {
            HeldBack = pull.HeldBack;
            End = pull.HeldBack == RideLimit.Taper ? RideEnd.PowerCut : RideEnd.CannotGoOn;
        }
    }

    /// <summary>The pack, windings and controllers at the middle of a step.</summary>
    [StructLayout(LayoutKind.Auto)]
    struct Electric
    {
        public double For, FirstDecay, FirstKept, SecondDecay, SecondKept, Rest, Ohms, First, Second, Open, Met, PhaseOhms, Fade;
        public Supply Supply;
    }

    /// <summary>What drives and holds the board in a step.</summary>
    [StructLayout(LayoutKind.Auto)]
    internal struct Pull
    {
        public double Middle, Acceleration, Road, Force, Foot, Current;
        public Bus Bus;
        public RideLimit HeldBack;
    }
}
