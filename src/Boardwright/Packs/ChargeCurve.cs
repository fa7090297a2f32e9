using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>One moment of a charge.</summary>
/// <param name="Seconds">Time since the beginning, s.</param>
/// <param name="Charge">State of charge, 0 to 1.</param>
/// <param name="Amperes">Current into the pack, A.</param>
/// <param name="Volts">Voltage at the pack's terminals, V.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ChargeMoment(double Seconds, double Charge, double Amperes, double Volts);

/// <summary>A charge from empty as <see cref="ChargeTime"/> reckons it, moment by moment.</summary>
/// <param name="Moments">From the beginning to where the charger stops.</param>
/// <param name="TurnOver">The moment at which the current begins to fall.</param>
/// <validity>As for <see cref="ChargeTime"/>.</validity>
/// <error>As for <see cref="ChargeTime"/>.</error>
/// <source cref="Sources.CircuitTheory"/>
public sealed record ChargeCurve(IReadOnlyList<ChargeMoment> Moments, ChargeMoment TurnOver)
{
    const int Steps = 96;

    /// <summary>Of a board.</summary>
    /// <param name="board">The board.</param>
    /// <param name="model">Its pack.</param>
    /// <param name="time">How long its charge takes; where there is none there is no curve.</param>
    public static Answer<ChargeCurve> Compute(Board board, Answer<PackModel> model, Answer<ChargeTime> time) =>
        Answer<ChargeCurve>.Ask("", needs =>
    {
        var (pack, charger, known) = (needs.Read(model), board.Parts.Charger, needs.Read(time));
        var current = needs.Read(charger.Current).Amperes;
        var volts = needs.Read(charger.Voltage).Volts;
        var end = needs.Read(charger.EndCurrent).Amperes;
        var full = needs.Read(board.Parts.Cell.VoltageFull).Volts;
        if (needs.Unmet)
            return null;
        var target = Min(volts, full * pack.Series);
        return known.Tail is { } tail ? Measured(pack, target, tail, known.TurnOver) : Steady(pack, target, current, end, known.TurnOver);
    });

    // The slow resistance that the tail stands for is there all along a charge of hours, so the voltage rises into the end voltage without
    // a step.
    static ChargeCurve Measured(PackModel pack, double target, ChargeTail tail, double turn)
    {
        var (current, capacity, decay) = (tail.Current.Amperes, pack.Capacity.Coulombs, tail.Decay.Seconds);
        var ohms = (target - pack.RestVoltsAt(turn)) / current;
        var moments = new List<ChargeMoment>();
        for (var i = 0; i <= Steps; i++)
        {
            var charge = turn * i / Steps;
            moments.Add(new(capacity * charge / current, charge, current, Min(target, pack.RestVoltsAt(charge) + current * ohms)));
        }

        var turnOver = moments[^1];
        for (var i = 1; i <= Steps; i++)
        {
            var seconds = tail.ConstantVoltage.Seconds * i / Steps;
            var left = Exp(-seconds / decay);
            moments.Add(new(turnOver.Seconds + seconds, turn + current * decay * (1 - left) / capacity, current * left, target));
        }

        return new ChargeCurve(moments, turnOver);
    }

    static ChargeCurve Steady(PackModel pack, double target, double current, double end, double turnsOver)
    {
        double CurrentAt(double charge) => Min(current, (target - pack.RestVoltsAt(charge)) / pack.OhmsAt(charge));
        var stop = RootFinding.FirstFall(s => CurrentAt(s) - Min(end, current), 0, 1, 1.0 / 64) ?? 1;
        var turn = Min(turnsOver, stop);
        var capacity = pack.Capacity.Coulombs;
        ChargeMoment At(double seconds, double charge)
        {
            var amperes = Max(0, CurrentAt(charge));
            return new(seconds, charge, amperes, pack.RestVoltsAt(charge) + amperes * pack.OhmsAt(charge));
        }

        var moments = new List<ChargeMoment>();
        for (var i = 0; i <= Steps; i++)
            moments.Add(At(capacity * turn * i / Steps / current, turn * i / Steps));
        var turnOver = moments[^1];
        for (var i = 1; i <= Steps && stop > turn; i++)
        {
            var (before, here) = (moments[^1], turn + (stop - turn) * i / Steps);
            moments.Add(At(before.Seconds + capacity * Quadrature.Integrate(s => 1 / CurrentAt(s), before.Charge, here, 4), here));
        }

        return new ChargeCurve(moments, turnOver);
    }
}
