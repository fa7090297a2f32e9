using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Wiring;

namespace Boardwright.Traction;

/// <summary>How warm the wires get in free air.</summary>
/// <param name="Pack">The warmest run between pack and controllers, at the pack current limit; <c>null</c> when there is none.</param>
/// <param name="Motor">The warmest run to the motors, at the climb's phase current; <c>null</c> when there is none.</param>
/// <param name="MotorLeadLoss">Power lost in the leads of all motors on the climb; <c>null</c> when there are none.</param>
/// <source cref="Sources.ChurchillChuCylinder"/>
public sealed record WireHeat(WarmRun? Pack, WarmRun? Motor, Power? MotorLeadLoss)
{
    /// <summary>Of a board.</summary>
    public static Answer<WireHeat> Compute(Board board, Answer<Air> air, Answer<CurrentLimits> pack, Answer<Climb> climb) =>
        Answer<WireHeat>.Ask("", needs =>
    {
        var around = needs.Read(air);
        WarmRun? warmestPack = null;
        WarmRun? warmestMotor = null;
        Power? loss = null;
        var packRuns = board.Wiring.Where(WiringRuns.IsPackRun).ToArray();
        foreach (var run in packRuns)
        {
            var limit = needs.Read(pack);
            if (Warm(needs, run, around, needs.Unmet ? default : limit.Enforced.Current / packRuns.Length) is { } warm)
                warmestPack = Warmer(warmestPack, warm);
        }

        foreach (var run in board.Wiring.Where(WiringRuns.IsMotorRun))
        {
            var uphill = needs.Read(climb);
            var length = needs.Read(run.Length);
            var motors = needs.Read(board.Parts.Drive.Motors);
            if (needs.Unmet || uphill.Asked is not { } asked)
                continue;
            var phase = Current.FromAmperes(asked.PhaseCurrent);
            if (Warm(needs, run, around, phase / Math.Sqrt(2)) is not { } warm)
                continue;
            warmestMotor = Warmer(warmestMotor, warm);
            var lead = new Conductor(run.Gauge.Value).Resistance(length, warm.Temperature ?? HarnessRun.UsualLimit);
            loss = Power.FromWatts(1.5 * lead.Ohms * phase.Amperes * phase.Amperes * motors);
        }

        return needs.Unmet ? null : new WireHeat(warmestPack, warmestMotor, loss);
    });

    static WarmRun? Warm(Needs needs, Run run, Air air, Current current)
    {
        var section = needs.Read(run.Gauge);
        if (needs.Unmet)
            return null;
        var conductor = new Conductor(section);
        var wire = new WireTemperature(conductor, run.OuterDiameter.Or(conductor.GuessedOuterDiameter), air);
        var limit = run.InsulationLimit.Or(HarnessRun.UsualLimit);
        return new WarmRun(run.Gauge.Key, WireGauge.Nearest(section).Name, current, wire.At(current), limit, wire.LargestCurrent(limit));
    }

    static WarmRun Warmer(WarmRun? one, WarmRun other) =>
        one is null || other.Temperature is null || (one.Temperature is { } t && other.Temperature > t) ? other : one;
}

/// <summary>One run of wire under its current.</summary>
/// <param name="Key">Entry of its gauge.</param>
/// <param name="Gauge">Its nearest gauge.</param>
/// <param name="Current">Root-mean-square current.</param>
/// <param name="Temperature">Conductor temperature; <c>null</c> when there is no steady one.</param>
/// <param name="Limit">Greatest conductor temperature.</param>
/// <param name="LargestCurrent">Current at which that limit is reached.</param>
public sealed record WarmRun(
    string Key, string Gauge, Current Current, Temperature? Temperature, Temperature Limit, Current LargestCurrent);
