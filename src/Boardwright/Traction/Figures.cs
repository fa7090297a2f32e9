using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>Top speeds of a board, m/s.</summary>
/// <param name="Full">At full charge.</param>
/// <param name="Half">At half charge.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record TopSpeeds(double Full, double Half)
{
    /// <summary>Of a board.</summary>
    public static Answer<TopSpeeds> Compute(Answer<SteadyRunning> running) => Answer<TopSpeeds>.Ask("", needs =>
    {
        var run = needs.Read(running);
        return needs.Unmet ? null : new TopSpeeds(run.TopSpeed(1), run.TopSpeed(0.5));
    });

    /// <summary>Top speed at the brief's reserve.</summary>
    public static Answer<Speed> AtReserveOf(Board board, Answer<SteadyRunning> running) => Answer<Speed>.Ask("", needs =>
    {
        var (run, reserve) = (needs.Read(running), needs.Read(board.Brief.Reserve));
        return needs.Unmet ? default : Speed.FromMetresPerSecond(run.TopSpeed(reserve.Value));
    });

    /// <summary>Force from rest at full charge.</summary>
    public static Answer<Force> StartForceOf(Answer<MovingRunning> moving) => Answer<Force>.Ask("", needs =>
    {
        var run = needs.Read(moving);
        return needs.Unmet ? default : Force.FromNewtons(run.LargestForce(0, run.SupplyAt(1)));
    });

    /// <summary>Electrical speed with the wheels in the air at full charge.</summary>
    public static Answer<AngularSpeed> ElectricalOf(Answer<Speed> unloaded, Answer<WheelDrive> wheels) =>
        Answer<AngularSpeed>.Ask("", needs =>
    {
        var (top, drive) = (needs.Read(unloaded), needs.Read(wheels));
        return needs.Unmet ? default : AngularSpeed.FromRadiansPerSecond(drive.PolePairs * drive.MotorSpeed(top.MetresPerSecond));
    });

    /// <summary>Belt speed with the wheels in the air at full charge.</summary>
    public static Answer<Speed> BeltSpeedOf(Answer<BeltDrive> belt, Answer<Speed> unloaded, Answer<WheelDrive> wheels) =>
        belt.IsBeside ? Answer<Speed>.Beside : Answer<Speed>.Ask("", needs =>
        {
            var (laid, top, drive) = (needs.Read(belt), needs.Read(unloaded), needs.Read(wheels));
            return needs.Unmet ? default
                : BeltTension.BeltSpeed(laid.Path.Driving, AngularSpeed.FromRadiansPerSecond(drive.MotorSpeed(top.MetresPerSecond)));
        });
}

/// <summary>The brief's climb.</summary>
/// <param name="Asked">What the wanted climb asks; <c>null</c> when the pack cannot give the power.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record Climb(OperatingPoint? Asked)
{
    /// <summary>State of charge at which a climb is judged.</summary>
    public const double Charge = 0.5;

    /// <summary>Of a board, at half charge, whatever limits it.</summary>
    public static Answer<Climb> Compute(Board board, Answer<SteadyRunning> demand) => Answer<Climb>.Ask("", needs =>
    {
        var run = needs.Read(demand);
        var speed = needs.Read(board.Brief.ClimbSpeed).MetresPerSecond;
        var wanted = needs.Read(board.Brief.ClimbWanted).Value;
        return needs.Unmet ? null : new Climb(run.Holding(speed, wanted, Charge));
    });

    /// <summary>Steepest grade held at the climbing speed at half charge, rise over run.</summary>
    public static Answer<Fraction> SteepestOf(Board board, Answer<SteadyRunning> running) => Answer<Fraction>.Ask("", needs =>
    {
        var (run, speed) = (needs.Read(running), needs.Read(board.Brief.ClimbSpeed));
        return needs.Unmet ? default : Fraction.FromValue(run.SteepestGrade(speed.MetresPerSecond, Charge));
    });

    /// <summary>What the climb asks of a motor.</summary>
    public static Answer<MotorDuty> MotorDutyOf(Answer<Climb> climb, Answer<WheelDrive> wheels) => Answer<MotorDuty>.Ask("climb.phase_current", needs =>
    {
        var (climbing, drive) = (needs.Read(climb), needs.Read(wheels));
        return needs.Unmet || climbing.Asked is not { } asked ? null : new MotorDuty(
            Current.FromAmperes(asked.PhaseCurrent), AngularSpeed.FromRadiansPerSecond(drive.MotorSpeed(asked.Speed)));
    });

    /// <summary>What the climb asks of the wires for ever, and the current limits as peaks.</summary>
    public static HarnessDuty WireDutyOf(Answer<Climb> climb, Answer<CurrentLimits> pack, Answer<CurrentLimits> phase)
    {
        var asked = climb.IsKnown ? climb.Value.Asked : null;
        WireDuty? Duty(double? amperes, Answer<CurrentLimits> limits, double part)
        {
            if (amperes is not { } lasting || !limits.IsKnown)
                return null;
            var most = limits.Value.Enforced.Current;
            return new WireDuty(Current.FromAmperes(Min(lasting, most.Amperes) * part), most * part);
        }

        return new HarnessDuty("on the brief's climb", Duty(asked?.Bus.Amperes, pack, 1), Duty(asked?.PhaseCurrent, phase, 1 / Sqrt(2)));
    }
}

/// <summary>The brief's cruise.</summary>
/// <param name="Steady">The cruise; <c>null</c> when the pack cannot hold the speed.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record CruiseOfBoard(Cruise? Steady)
{
    /// <summary>Of a board, whatever limits it.</summary>
    public static Answer<CruiseOfBoard> Compute(Board board, Answer<SteadyRunning> demand) => Answer<CruiseOfBoard>.Ask("", needs =>
    {
        var run = needs.Read(demand);
        var speed = needs.Read(board.Brief.CruiseSpeed).MetresPerSecond;
        var reserve = needs.Read(board.Brief.Reserve).Value;
        needs.Read(board.Parts.Cell.Capacity);
        return needs.Unmet ? null : new CruiseOfBoard(run.Cruising(speed, reserve));
    });
}

/// <summary>The pace at which the brief's range is reached.</summary>
/// <param name="Wanted">Range wanted, m.</param>
/// <param name="Fastest">Fastest steady speed at which it is reached, m/s; <c>null</c> when there is none.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record RangePace(double Wanted, double? Fastest)
{
    const double Walking = 4 / 3.6;

    /// <summary>Of a board; beside the question where the brief wants no range.</summary>
    public static Answer<RangePace> Compute(Board board, Answer<SteadyRunning> running) =>
        !board.Brief.RangeWanted.IsKnown ? Answer<RangePace>.Beside : Answer<RangePace>.Ask("", needs =>
        {
            var run = needs.Read(running);
            var reserve = needs.Read(board.Brief.Reserve).Value;
            var wanted = needs.Read(board.Brief.RangeWanted).Metres;
            needs.Read(board.Parts.Cell.Capacity);
            return needs.Unmet ? null : new RangePace(wanted, PaceFor(run, reserve, wanted));
        });

    /// <summary>The fastest steady speed on the level at which a range is reached, looked for between walking pace and the top speed at the
    /// reserve, which is the fastest that is held to the end.</summary>
    /// <returns>The speed in m/s, or <c>null</c> when the range is out of reach.</returns>
    public static double? PaceFor(SteadyRunning run, double reserve, double metres)
    {
        double Beyond(double speed) => run.RangeAt(speed, reserve) - metres;
        var fastest = run.TopSpeed(reserve);
        if (fastest <= Walking)
            return null;
        // Idle power makes a crawl wasteful too: from the first pace that reaches it, on to where it is lost again.
        return Beyond(fastest) >= 0 ? fastest : RootFinding.FirstFall(Beyond, Walking, fastest, 2);
    }
}

/// <summary>The electric brake, from cruise speed on the level.</summary>
/// <param name="Half">Distance to stop at half charge, m; <c>null</c> when it does not stop.</param>
/// <param name="Full">The same at full charge.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record Brakes(double? Half, double? Full)
{
    /// <summary>Of a board.</summary>
    public static Answer<Brakes> Compute(Board board, Answer<BrakedRunning> braked) => Answer<Brakes>.Ask("", needs =>
    {
        var run = needs.Read(braked);
        var cruise = needs.Read(board.Brief.CruiseSpeed).MetresPerSecond;
        return needs.Unmet ? null : new Brakes(run.StoppingDistance(cruise, 0, 0.5), run.StoppingDistance(cruise, 0, 1));
    });

    /// <summary>What the rider must be able to do beside the electric brake.</summary>
    public static Answer<string> NoteOf(Board board, Answer<Brakes> brakes, Answer<Descent> descent, Answer<CurrentLimits> regen) =>
        Answer<string>.Ask("", needs =>
    {
        var (level, downhill, back) = (needs.Read(brakes), needs.Read(descent), needs.Read(regen));
        var forbidding = CurrentRatings.ForbiddenBy(board);
        if (needs.Unmet)
            return null;
        if (!forbidding.IsKnown || back.Enforced.Current.Si == 0)
            return NoteOn(level, downhill);
        needs.Read(forbidding);
        needs.Read(board.Brief.Temperature);
        return NoteOn(level, downhill) + " At the brief's temperature the cells may not be charged, and braking charges them; no controller knows, so the figures are computed with the current that is set. Set none, and stop with a foot or a slide, until the pack is at a temperature at which it may be charged.";
    });

    static string NoteOn(Brakes level, Descent downhill) =>
        level.Half is null || level.Full is null
            ? "The electric brake alone does not stop this board: the rider must be able to stop with a foot or a slide, on every ride."
            : downhill.HoldsFrom is not 1
                ? "A full pack takes hardly any braking current: until some charge is used, stop with a foot or a slide, and do not start at the top of the hill."
                : "The electric brake is gone when the pack, a plug or the remote's link is: the rider must be able to stop with a foot or a slide all the same.";
}

/// <summary>The electric brake, down the brief's climb.</summary>
/// <param name="Stop">Distance to stop at half charge from the climbing speed, m; <c>null</c> when it does not stop.</param>
/// <param name="HoldsFrom">Highest charge from which the slope is held at the climbing speed and slower, and down to half charge unless it
/// lies below that; <c>null</c> when at none.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record Descent(double? Stop, double? HoldsFrom)
{
    /// <summary>Of a board.</summary>
    public static Answer<Descent> Compute(Board board, Answer<BrakedRunning> braked) => Answer<Descent>.Ask("", needs =>
    {
        var run = needs.Read(braked);
        var speed = needs.Read(board.Brief.ClimbSpeed).MetresPerSecond;
        var grade = needs.Read(board.Brief.ClimbWanted).Value;
        if (needs.Unmet)
            return null;
        double Margin(double charge) => HoldMargin(run, speed, grade, run.SupplyAt(charge));
        // Whoever is told to start below a charge must still be held, and stop, at half charge.
        var holds = Margin(1) >= 0 ? 1 : RootFinding.FirstRise(Margin, Margin(0.5) > 0 ? 1 : 0.5, 0, 1.0 / 64);
        return new Descent(run.StoppingDistance(speed, -grade, 0.5), holds);
    });

    /// <summary>Steepest descent held at the climbing speed and slower at full charge, rise over run.</summary>
    public static Answer<Fraction> HeldGradeOf(Board board, Answer<BrakedRunning> braked) => Answer<Fraction>.Ask("", needs =>
    {
        var (run, speed) = (needs.Read(braked), needs.Read(board.Brief.ClimbSpeed));
        return needs.Unmet ? default : Fraction.FromValue(HeldGrade(run, speed.MetresPerSecond));
    });

    // Fast, the pack's limits are met first; at a walk the air no longer helps. A descent that is held at one end only is crept down
    // without end, or run away on.
    static double HoldMargin(BrakedRunning run, double speed, double grade, in Supply supply) => Math.Min(
        run.LargestBrakeForce(speed, -grade, supply) + run.RoadForce(speed, -grade),
        run.LargestBrakeForce(0, -grade, supply) + run.RoadForce(0, -grade));

    static double HeldGrade(BrakedRunning run, double speed)
    {
        var supply = run.SupplyAt(1);
        double Margin(double grade) => HoldMargin(run, speed, grade, supply);
        return Margin(0) <= 0 ? 0 : RootFinding.FirstFall(Margin, 0, 1, 1.0 / 32) ?? 1;
    }
}
