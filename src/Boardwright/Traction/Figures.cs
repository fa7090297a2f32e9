using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Numerics;
using Boardwright.Parts;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>Top speeds of a board, m/s, and its push from rest, N.</summary>
/// <param name="Full">At full charge.</param>
/// <param name="Half">At half charge.</param>
/// <param name="Reserve">At the brief's reserve.</param>
/// <param name="UnloadedFull">Wheels in the air, full charge.</param>
/// <param name="StartForce">Force from rest, full charge.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record TopSpeeds(double Full, double Half, double Reserve, double UnloadedFull, double StartForce)
{
    /// <summary>Of a board.</summary>
    public static Answer<TopSpeeds> Compute(Board board, Answer<SteadyRunning> running) => Answer<TopSpeeds>.Ask("", needs =>
    {
        var run = needs.Read(running);
        var reserve = needs.Read(board.Brief.Reserve);
        if (needs.Unmet)
            return null;
        var full = run.SupplyAt(1);
        return new TopSpeeds(run.TopSpeed(1), run.TopSpeed(0.5), run.TopSpeed(reserve.Value), run.Drive.UnloadedSpeed(full),
            run.LargestForce(0, full));
    });

    /// <summary>Electrical speed with the wheels in the air at full charge.</summary>
    public static Answer<AngularSpeed> ElectricalOf(Answer<TopSpeeds> speeds, Answer<Propulsion> drive) =>
        Answer<AngularSpeed>.Ask("", needs =>
    {
        var (top, electric) = (needs.Read(speeds), needs.Read(drive));
        return needs.Unmet ? default : AngularSpeed.FromRadiansPerSecond(electric.PolePairs * electric.MotorSpeed(top.UnloadedFull));
    });

    /// <summary>Belt speed with the wheels in the air at full charge.</summary>
    public static Answer<Speed> BeltSpeedOf(Answer<BeltDrive> belt, Answer<TopSpeeds> speeds, Answer<Propulsion> drive) =>
        belt.IsBeside ? Answer<Speed>.Beside : Answer<Speed>.Ask("", needs =>
        {
            var (laid, top, electric) = (needs.Read(belt), needs.Read(speeds), needs.Read(drive));
            return needs.Unmet ? default
                : BeltTension.BeltSpeed(laid.Path.Driving, AngularSpeed.FromRadiansPerSecond(electric.MotorSpeed(top.UnloadedFull)));
        });
}

/// <summary>The brief's climb.</summary>
/// <param name="Steepest">Steepest grade held at the climbing speed, rise over run.</param>
/// <param name="Asked">What the wanted climb asks; <c>null</c> when the pack cannot give the power.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record Climb(double Steepest, OperatingPoint? Asked)
{
    /// <summary>Of a board, at half charge.</summary>
    public static Answer<Climb> Compute(Board board, Answer<SteadyRunning> running) => Answer<Climb>.Ask("", needs =>
    {
        var run = needs.Read(running);
        var speed = needs.Read(board.Brief.ClimbSpeed).MetresPerSecond;
        var wanted = needs.Read(board.Brief.ClimbWanted).Value;
        return needs.Unmet ? null : new Climb(run.SteepestGrade(speed, 0.5), run.Holding(speed, wanted, 0.5));
    });

    /// <summary>What the climb asks of a motor.</summary>
    public static Answer<MotorDuty> MotorDutyOf(Answer<Climb> climb, Answer<Propulsion> drive) => Answer<MotorDuty>.Ask("climb.phase_current", needs =>
    {
        var (climbing, electric) = (needs.Read(climb), needs.Read(drive));
        return needs.Unmet || climbing.Asked is not { } asked ? null : new MotorDuty(
            Current.FromAmperes(asked.PhaseCurrent), AngularSpeed.FromRadiansPerSecond(electric.MotorSpeed(asked.Speed)));
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
/// <param name="Wanted">Range wanted, m; <c>null</c> when the brief does not say.</param>
/// <param name="Pace">Fastest steady speed at which that range is reached, m/s; <c>null</c> when there is none.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record CruiseOfBoard(Cruise? Steady, double? Wanted, double? Pace)
{
    const double Walking = 4 / 3.6;

    /// <summary>Of a board.</summary>
    public static Answer<CruiseOfBoard> Compute(Board board, Answer<SteadyRunning> running) => Answer<CruiseOfBoard>.Ask("", needs =>
    {
        var run = needs.Read(running);
        var speed = needs.Read(board.Brief.CruiseSpeed).MetresPerSecond;
        var reserve = needs.Read(board.Brief.Reserve).Value;
        if (needs.Unmet)
            return null;
        var wanted = board.Brief.RangeWanted.IsKnown ? needs.Read(board.Brief.RangeWanted).Metres : (double?)null;
        return new CruiseOfBoard(run.Cruising(speed, reserve), wanted, wanted is { } metres ? PaceFor(run, reserve, metres) : null);
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

/// <summary>The electric brake.</summary>
/// <param name="Half">Distance to stop from cruise speed on the level at half charge, m; <c>null</c> when it does not stop.</param>
/// <param name="Full">The same at full charge.</param>
/// <param name="Downhill">The same at half charge, down the brief's climb from its climbing speed.</param>
/// <param name="GradeHeldFull">Steepest descent held at the climbing speed and slower at full charge, rise over run.</param>
/// <param name="HoldsFrom">Highest charge from which the brief's climb is held downhill at the climbing speed and slower, and down to half
/// charge unless it lies below that; <c>null</c> when at none.</param>
/// <source cref="Sources.Mechanics"/>
public sealed record Brakes(double? Half, double? Full, double? Downhill, double GradeHeldFull, double? HoldsFrom)
{
    /// <summary>Of a board.</summary>
    public static Answer<Brakes> Compute(Board board, Answer<SteadyRunning> running) => Answer<Brakes>.Ask("", needs =>
    {
        var run = needs.Read(running);
        var cruise = needs.Read(board.Brief.CruiseSpeed).MetresPerSecond;
        var climb = needs.Read(board.Brief.ClimbSpeed).MetresPerSecond;
        var grade = needs.Read(board.Brief.ClimbWanted).Value;
        if (needs.Unmet)
            return null;
        var (half, full) = (run.StoppingDistance(cruise, 0, 0.5), run.StoppingDistance(cruise, 0, 1));
        double Margin(double charge) => HoldMargin(run, climb, grade, run.SupplyAt(charge));
        // Whoever is told to start below a charge must still be held, and stop, at half charge.
        var holds = Margin(1) >= 0 ? 1 : RootFinding.FirstRise(Margin, Margin(0.5) > 0 ? 1 : 0.5, 0, 1.0 / 64);
        return new Brakes(half, full, run.StoppingDistance(climb, -grade, 0.5), HeldGrade(run, climb), holds);
    });

    // Fast, the pack's limits are met first; at a walk the air no longer helps. A descent that is held at one end only is crept down
    // without end, or run away on.
    static double HoldMargin(SteadyRunning run, double speed, double grade, in Supply supply) => Math.Min(
        run.LargestBrakeForce(speed, -grade, supply) + run.RoadForce(speed, -grade),
        run.LargestBrakeForce(0, -grade, supply) + run.RoadForce(0, -grade));

    static double HeldGrade(SteadyRunning run, double speed)
    {
        var supply = run.SupplyAt(1);
        double Margin(double grade) => HoldMargin(run, speed, grade, supply);
        return Margin(0) <= 0 ? 0 : RootFinding.FirstFall(Margin, 0, 1, 1.0 / 32) ?? 1;
    }

    /// <summary>What the rider must be able to do beside the electric brake.</summary>
    public static Answer<string> NoteOf(Board board, Answer<Brakes> brakes, Answer<CurrentLimits> regen) => Answer<string>.Ask("", needs =>
    {
        var (found, back) = (needs.Read(brakes), needs.Read(regen));
        var forbidding = CurrentRatings.ForbiddenBy(board);
        if (needs.Unmet)
            return null;
        if (!forbidding.IsKnown || back.Enforced.Current.Si == 0)
            return NoteOn(found);
        needs.Read(forbidding);
        needs.Read(board.Brief.Temperature);
        return NoteOn(found) + " At the brief's temperature the cells may not be charged, and braking charges them; no controller knows, so the figures are computed with the current that is set. Set none, and stop with a foot or a slide, until the pack is at a temperature at which it may be charged.";
    });

    static string NoteOn(Brakes brakes) =>
        brakes.Half is null || brakes.Full is null
            ? "The electric brake alone does not stop this board: the rider must be able to stop with a foot or a slide, on every ride."
            : brakes.HoldsFrom is not 1
                ? "A full pack takes hardly any braking current: until some charge is used, stop with a foot or a slide, and do not start at the top of the hill."
                : "The electric brake is gone when the pack, a plug or the remote's link is: the rider must be able to stop with a foot or a slide all the same.";
}
