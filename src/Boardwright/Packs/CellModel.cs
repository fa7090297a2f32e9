using System.Runtime.InteropServices;
using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>A resistor and a capacitor side by side, the part of a cell's answer that takes its time.</summary>
/// <param name="Resistance">Its resistance over charge and temperature.</param>
/// <param name="TimeConstant">Its time constant, above zero.</param>
/// <source cref="Sources.Plett"/>
public sealed record CellBranch(ResistanceTable Resistance, Duration TimeConstant);

/// <summary>What a cell remembers: how full it is and what its branches hold.</summary>
/// <param name="Charge">State of charge; 1 is full.</param>
/// <param name="FirstVolts">Voltage over the first branch, in the sense of a discharge.</param>
/// <param name="SecondVolts">Voltage over the second branch.</param>
/// <source cref="Sources.Plett"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CellState(double Charge, double FirstVolts, double SecondVolts)
{
    /// <summary>A cell that has rested.</summary>
    public static CellState Rested(double charge) => new(charge, 0, 0);
}

/// <summary>What a cell did in a step of constant current.</summary>
/// <param name="After">State at the end.</param>
/// <param name="Amperes">The current; positive when it leaves the cell.</param>
/// <param name="MeanVolts">Terminal voltage, mean over the step.</param>
/// <param name="RestVolts">Rest voltage at the charge of the middle of the step.</param>
/// <param name="HeatWatts">Heat in the resistors, mean over the step: I²·R0 + v1²/R1 + v2²/R2; never below zero.</param>
/// <source cref="Sources.Plett"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CellStep(CellState After, double Amperes, double MeanVolts, double RestVolts, double HeatWatts)
{
    /// <summary>Power at the terminals, mean over the step.</summary>
    public double Watts => Amperes * MeanVolts;
}

/// <summary>The voltage of one cell under a current that changes: V = E(s) − I·R0 − v1 − v2, with dv/dt = (R·I − v)/tau for each branch and
/// ds/dt = −I/Q.</summary>
/// <remarks>
/// Steps of constant current are exact for the tables' values at the middle of the step: v becomes u + (v − u)·exp(−Δt/tau)
/// with u = R·I. So the length of the steps matters only as far as the tables change within one. Beyond the ends of a table its end value
/// holds,
/// and the charge goes on below 0 and above 1: whoever steps must stop at the voltage he wants to stop at.
/// </remarks>
/// <validity>Currents between a tenth of a second and some minutes, at temperatures the tables cover. Not for the end of a charge (see
/// <see cref="ChargeTail"/>), not for ageing.</validity>
/// <error>Two branches fitted at the temperature of use: 9 to 14 mV RMS and 0.1 to 0.2 % of the energy of a drive at 25 °C; 21 to 40 mV and
/// 0.3 to 1.2 % at 0 °C. A resistance alone: some 33 mV and 0.4 % (handbook, battery, section 3).</error>
/// <source cref="Sources.Plett"/>
public sealed class CellModel
{
    readonly Curve<Fraction, Voltage> rest;
    readonly ResistanceTable atOnce;
    readonly double coulombs;

    /// <summary>A cell from its tables.</summary>
    /// <param name="capacity">Charge between empty and full, above zero.</param>
    /// <param name="restVoltage">Rest voltage over state of charge.</param>
    /// <param name="resistance">The resistance that answers at once.</param>
    /// <param name="first">The first branch, where there is one.</param>
    /// <param name="second">The second branch, where there is one.</param>
    /// <exception cref="ArgumentOutOfRangeException">The capacity or a time constant is not above zero.</exception>
    /// <exception cref="ArgumentException">There is a second branch without a first.</exception>
    public CellModel(Charge capacity, Curve<Fraction, Voltage> restVoltage, ResistanceTable resistance, CellBranch? first = null,
        CellBranch? second = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(capacity.Coulombs, nameof(capacity));
        if (first is not null)
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(first.TimeConstant.Seconds, nameof(first));
        if (second is not null)
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(second.TimeConstant.Seconds, nameof(second));
        if (second is not null && first is null)
            throw new ArgumentException("A second branch needs a first.", nameof(second));
        (coulombs, rest, atOnce, First, Second) = (capacity.Coulombs, restVoltage, resistance, first, second);
    }

    /// <summary>Charge between empty and full.</summary>
    public Charge Capacity => Charge.FromCoulombs(coulombs);
    /// <summary>The first branch, where there is one.</summary>
    public CellBranch? First { get; }
    /// <summary>The second branch, where there is one.</summary>
    public CellBranch? Second { get; }

    /// <summary>The model of a shelf cell: with two branches, one, or a resistance alone, as far as the shelf knows them.</summary>
    public static Answer<CellModel> Compute(Cell cell) => Answer<CellModel>.Ask("", needs =>
    {
        var capacity = needs.Read(cell.Capacity);
        var restVoltage = needs.Read(cell.RestVoltage);
        var resistance = needs.Read(cell.Resistance);
        var (slow, first, second) = (cell.Polarisation, default(CellBranch), default(CellBranch));
        // Half a branch is a slip of the pen, and the other half is asked for.
        if (slow.R1.IsKnown || slow.Tau1.IsKnown || slow.R2.IsKnown || slow.Tau2.IsKnown)
            first = new CellBranch(needs.Read(slow.R1), needs.Read(slow.Tau1));
        if (slow.R2.IsKnown || slow.Tau2.IsKnown)
            second = new CellBranch(needs.Read(slow.R2), needs.Read(slow.Tau2));
        // A cell that belongs to no board has entries without names, which are missing all the same.
        var whole = !needs.Unmet && capacity.Coulombs > 0 && restVoltage is not null && resistance is not null && IsWhole(first)
            && IsWhole(second);
        return whole ? new CellModel(capacity, restVoltage!, resistance!, first, second) : null;
    });

    static bool IsWhole(CellBranch? branch) => branch is null || (branch.Resistance is not null && branch.TimeConstant.Seconds > 0);

    /// <summary>Rest voltage at a state of charge (0 to 1), in volts.</summary>
    public double RestVoltsAt(double charge) => rest.At(charge);

    /// <summary>Resistance in ohm that a current meets at once: R0.</summary>
    /// <param name="charge">State of charge, 0 to 1.</param>
    /// <param name="kelvins">Temperature of the cell.</param>
    public double OhmsAtOnce(double charge, double kelvins) => atOnce.At(charge, kelvins);

    /// <summary>Resistance in ohm that a current has met after a time: R0 + Σ R·(1 − exp(−t/tau)).</summary>
    /// <param name="seconds">Time since the current began; 0 for the resistance at once, infinity for the whole.</param>
    /// <param name="charge">State of charge, 0 to 1.</param>
    /// <param name="kelvins">Temperature of the cell.</param>
    public double OhmsAfter(double seconds, double charge, double kelvins)
    {
        double Slow(CellBranch? branch) =>
            branch is null ? 0 : branch.Resistance.At(charge, kelvins) * (1 - Exp(-seconds / branch.TimeConstant.Seconds));
        return atOnce.At(charge, kelvins) + Slow(First) + Slow(Second);
    }

    /// <summary>Terminal voltage at an instant, in volts: E(s) − I·R0 − v1 − v2.</summary>
    public double VoltsAt(CellState state, double amperes, double kelvins) =>
        rest.At(state.Charge) - amperes * atOnce.At(state.Charge, kelvins) - state.FirstVolts - state.SecondVolts;

    /// <summary>Draws a constant current for a time.</summary>
    /// <param name="state">State at the beginning.</param>
    /// <param name="amperes">The current; negative to charge.</param>
    /// <param name="seconds">How long, at least 0.</param>
    /// <param name="kelvins">Temperature of the cell.</param>
    public CellStep Step(CellState state, double amperes, double seconds, double kelvins)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seconds);
        var middle = state.Charge - amperes * seconds / (2 * coulombs);
        var (first, firstMean, firstHeat) = Advance(First, state.FirstVolts, amperes, seconds, middle, kelvins);
        var (second, secondMean, secondHeat) = Advance(Second, state.SecondVolts, amperes, seconds, middle, kelvins);
        var (open, ohms) = (rest.At(middle), atOnce.At(middle, kelvins));
        return new CellStep(
            new CellState(state.Charge - amperes * seconds / coulombs, first, second),
            amperes,
            open - amperes * ohms - firstMean - secondMean,
            open,
            amperes * amperes * ohms + firstHeat + secondHeat);
    }

    /// <summary>Draws the constant current that gives a mean power over a time.</summary>
    /// <remarks>With U the mean voltage without current and R what a current meets on the mean over the step, I = (U − √(U² − 4·R·P)) / 2R,
    /// the smaller of the two currents.</remarks>
    /// <param name="state">State at the beginning.</param>
    /// <param name="watts">Power at the terminals; negative to charge.</param>
    /// <param name="seconds">How long, at least 0.</param>
    /// <param name="kelvins">Temperature of the cell.</param>
    /// <returns>The step, or <c>null</c> when the cell cannot give the power: P is above U²/4R.</returns>
    public CellStep? StepAtPower(CellState state, double watts, double seconds, double kelvins)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(seconds);
        var amperes = 0.0;
        // The tables are read at the middle of the step, which the current moves; each round gains some three digits for steps of a second.
        for (var round = 0; round < 30; round++)
        {
            var middle = state.Charge - amperes * seconds / (2 * coulombs);
            var (volts, ohms) = (rest.At(middle), atOnce.At(middle, kelvins));
            Meet(First, state.FirstVolts);
            Meet(Second, state.SecondVolts);
            void Meet(CellBranch? branch, double held)
            {
                if (branch is null) return;
                var kept = MeanKept(seconds / branch.TimeConstant.Seconds);
                volts -= held * kept;
                ohms += branch.Resistance.At(middle, kelvins) * (1 - kept);
            }

            var inside = volts * volts - 4 * ohms * watts;
            if (inside < 0 || volts <= 0) return null;
            // The form that does not cancel for small resistances.
            var next = 2 * watts / (volts + Sqrt(inside));
            var change = Abs(next - amperes);
            amperes = next;
            if (change <= 1e-13 * Abs(amperes)) break;
        }

        return Step(state, amperes, seconds, kelvins);
    }

    /// <summary>Energy held in the branches' capacitors, in joules: Σ v²·tau/2R.</summary>
    public double StoredJoules(CellState state, double kelvins)
    {
        double Of(CellBranch? branch, double volts) => branch is null || volts == 0 ? 0
            : volts * volts * branch.TimeConstant.Seconds / (2 * branch.Resistance.At(state.Charge, kelvins));
        return Of(First, state.FirstVolts) + Of(Second, state.SecondVolts);
    }

    static (double After, double Mean, double Heat) Advance(
        CellBranch? branch, double volts, double amperes, double seconds, double charge, double kelvins)
    {
        if (branch is null) return (0, 0, 0);
        var ohms = branch.Resistance.At(charge, kelvins);
        var (aim, spans) = (ohms * amperes, seconds / branch.TimeConstant.Seconds);
        var (away, kept) = (volts - aim, MeanKept(spans));
        var meanSquare = aim * aim + 2 * aim * away * kept + away * away * MeanKept(2 * spans);
        return (aim + away * Exp(-spans), aim + away * kept, ohms > 0 ? meanSquare / ohms : 0);
    }

    /// <summary>The mean of exp(−t) over 0 to a time: (1 − exp(−x))/x.</summary>
    static double MeanKept(double spans) => spans < 1e-5 ? 1 - spans / 2 + spans * spans / 6 : -Expm1(-spans) / spans;

    static double Expm1(double x) => Abs(x) < 1e-3 ? x * (1 + x / 2 * (1 + x / 3 * (1 + x / 4))) : Exp(x) - 1;
}
