using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>How long a charge takes: constant current until the loaded pack reaches the end voltage, then I = (V − E)/R down to the end current.</summary>
/// <param name="Full">From empty until the charger stops, or until the pack is full if it never falls to the end current.</param>
/// <param name="ToFourFifths">From empty to 80 % of the charge.</param>
/// <param name="LowerBound">Capacity over current, which no charge can beat.</param>
/// <param name="TurnOver">State of charge (0 to 1) at which the current begins to fall.</param>
/// <validity>The cells' steady resistance at the brief's temperature; a real tail is longer, as its resistance grows with time.</validity>
/// <error>The constant-current part within a few per cent; the tail of a charge measured on an 18650 cell was longer by a quarter (handbook, battery, section 1).</error>
/// <source cref="Sources.CircuitTheory"/>
public sealed record ChargeTime(Duration Full, Duration ToFourFifths, Duration LowerBound, double TurnOver)
{
    /// <summary>Charges a board's pack from empty.</summary>
    public static Answer<ChargeTime> Of(Board board, Answer<PackModel> model) => Answer<ChargeTime>.Ask("charge.time_full", needs =>
    {
        var pack = needs.Of(model);
        var charger = board.Parts.Charger;
        var current = needs.Of(charger.Current).Amperes;
        var volts = needs.Of(charger.Voltage).Volts;
        var end = needs.Of(charger.EndCurrent).Amperes;
        var full = needs.Of(board.Parts.Cell.VoltageFull).Volts;
        if (needs.Unmet)
            return null;
        var target = Min(volts, full * pack.Series);
        double CurrentAt(double charge) => Min(current, (target - pack.RestVoltsAt(charge)) / pack.OhmsAt(charge));
        var turnOver = RootFinding.FirstFall(s => (target - pack.RestVoltsAt(s)) / pack.OhmsAt(s) - current, 0, 1, 1.0 / 64) ?? 1;
        var stop = RootFinding.FirstFall(s => CurrentAt(s) - Min(end, current), 0, 1, 1.0 / 64) ?? 1;
        if (CurrentAt(0) <= 0)
            return null;
        Duration To(double charge)
        {
            var reached = Min(charge, stop);
            var constant = Min(reached, turnOver);
            var seconds = pack.Capacity.Coulombs * (constant / current
                + (reached > turnOver ? Quadrature.Integrate(s => 1 / CurrentAt(s), turnOver, reached, 64) : 0));
            return Duration.FromSeconds(seconds);
        }

        var (whole, most) = (To(1), To(0.8));
        // A charger that never stops above no current at all never fills the pack.
        return !double.IsFinite(whole.Seconds) ? null : new ChargeTime(whole, most, Duration.FromSeconds(pack.Capacity.Coulombs / current), turnOver);
    });
}
