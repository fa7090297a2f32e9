using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Traction;

/// <summary>What keeps the driving force from being larger.</summary>
public enum ForceLimit
{
    /// <summary>Phase current of the motors.</summary>
    PhaseCurrent,
    /// <summary>Current out of the pack.</summary>
    PackCurrent,
    /// <summary>Current out of the pack, which fades as the loaded voltage falls.</summary>
    Taper,
    /// <summary>The most power that the pack gives through its resistance.</summary>
    PackPower,
    /// <summary>Voltage that is left against the motors' own.</summary>
    Voltage,
    /// <summary>Electrical speed of the controllers.</summary>
    ElectricalSpeed,
    /// <summary>Grip of the driven tyres.</summary>
    Grip,
}

/// <summary>A stretch of speeds over which one thing limits the force.</summary>
/// <param name="From">Where it begins, m/s.</param>
/// <param name="To">Where it ends, m/s.</param>
/// <param name="Limit">What limits.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct LimitedStretch(double From, double To, ForceLimit Limit);

/// <summary>The largest driving force over speed at one state of charge, as far as it is above zero.</summary>
/// <param name="Charge">State of charge, 0 to 1.</param>
/// <param name="Speeds">Speeds, m/s, rising; empty when the board has no force at all.</param>
/// <param name="Forces">Largest force at each, N.</param>
/// <param name="Stretches">What limits, from rest on.</param>
public sealed record ForceLine(
    double Charge, IReadOnlyList<double> Speeds, IReadOnlyList<double> Forces, IReadOnlyList<LimitedStretch> Stretches);

/// <summary>The largest driving force over speed on the level, at three states of charge.</summary>
/// <param name="Full">At full charge.</param>
/// <param name="Half">At half charge.</param>
/// <param name="Reserve">At the brief's reserve.</param>
/// <validity>As for <see cref="SteadyRunning"/>.</validity>
/// <error>As for <see cref="SteadyRunning"/>.</error>
/// <source cref="Sources.Mechanics"/>
public sealed record Envelope(ForceLine Full, ForceLine Half, ForceLine Reserve)
{
    const int Steps = 160;
    const double TopOfSearch = 200;

    /// <summary>Of a board.</summary>
    public static Answer<Envelope> Compute(Board board, Answer<MovingRunning> running) => Answer<Envelope>.Ask("", needs =>
    {
        var run = needs.Read(running);
        var reserve = needs.Read(board.Brief.Reserve);
        return needs.Unmet ? null : new Envelope(LineOf(run, 1), LineOf(run, 0.5), LineOf(run, reserve.Value));
    });

    /// <summary>The largest force over speed at a state of charge, with the places where what limits it changes.</summary>
    public static ForceLine LineOf(MovingRunning run, double charge)
    {
        var supply = run.SupplyAt(charge);
        double Force(double speed) => run.LargestForce(speed, supply);
        if (Force(0) <= 0)
            return new ForceLine(charge, [], [], []);
        var top = RootFinding.FirstFall(Force, 0, TopOfSearch, 0.25) ?? TopOfSearch;
        var speeds = new List<double> { 0 };
        var stretches = new List<LimitedStretch>();
        var (limit, since) = (At(run, 0, supply), 0.0);
        for (var i = 1; i <= Steps; i++)
        {
            // The end itself belongs to what lies before it, as nothing is left beyond.
            var speed = top * (i < Steps ? i : i - 1e-6) / Steps;
            while (At(run, speed, supply) is var other && other != limit)
            {
                var change = ChangeBetween(speeds[^1], speed, limit);
                stretches.Add(new(since, change, limit));
                speeds.Add(change);
                since = change;
                // Just beyond the change, in case two changes lie within one step.
                var next = At(run, change + 1e-9 * top, supply);
                limit = next == limit ? other : next;
            }

            speeds.Add(i < Steps ? speed : top);
        }

        stretches.Add(new(since, top, limit));
        var forces = speeds.Select(s => Max(0, Force(s))).ToList();
        // At a speed limit the force ends all at once, and the line with it.
        if (Force(top * (1 - 1e-6)) is var last and > 1)
        {
            forces[^1] = last;
            speeds.Add(top);
            forces.Add(0);
            stretches.Add(new(top, top, ForceLimit.ElectricalSpeed));
        }

        return new ForceLine(charge, speeds, forces, stretches);

        double ChangeBetween(double before, double after, ForceLimit first)
        {
            for (var i = 0; i < 50 && after - before > 1e-12 * top; i++)
            {
                var middle = (before + after) / 2;
                if (At(run, middle, supply) == first)
                    before = middle;
                else
                    after = middle;
            }

            return after;
        }
    }

    /// <summary>What limits the driving force at a speed on the level.</summary>
    public static ForceLimit At(MovingRunning run, double speed, in Supply supply)
    {
        // A solver stops this close to the limit it has met.
        const double Met = 1e-6;
        var drive = run.Drive;
        if (drive.PolePairs * drive.MotorSpeed(speed) > drive.ElectricalSpeedLimit)
            return ForceLimit.ElectricalSpeed;
        if (drive.LargestCurrent(speed, supply) is not { } current)
            return ForceLimit.Voltage;
        if (drive.Force(current, speed) > run.GripForce(speed, 0))
            return ForceLimit.Grip;
        if (current >= drive.PhaseLimit)
            return ForceLimit.PhaseCurrent;
        if (drive.BusAt(current, speed, supply) is not { } bus)
            return ForceLimit.PackPower;
        var fade = supply.Fade(bus.Volts);
        if (drive.PackLimit * fade - bus.Amperes <= Met * drive.PackLimit)
            return fade < 1 ? ForceLimit.Taper : ForceLimit.PackCurrent;
        return drive.BusAt(current * (1 + Met) + Met, speed, supply) is null ? ForceLimit.PackPower : ForceLimit.Voltage;
    }
}
