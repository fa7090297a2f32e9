using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>How long a charge takes: constant current until the loaded pack reaches the end voltage, then a current that falls to the end
/// current.</summary>
/// <remarks>
/// The current falls as that of a measured charge did, I = I_cc e^(−t/τ), where the cell's <see cref="Cell.ChargeTail"/> is known, see
/// <see cref="ChargeTail"/>.
/// Where it is not, or so little is missing that the form does not hold, it falls as I = (V − E)/R with the steady resistance.
/// </remarks>
/// <param name="Full">From empty until the charger stops, or until the pack is full if it never falls to the end current.</param>
/// <param name="ToFourFifths">From empty to 80 % of the charge.</param>
/// <param name="LowerBound">Capacity over current, which no charge can beat.</param>
/// <param name="TurnOver">State of charge (0 to 1) at which the current begins to fall.</param>
/// <param name="Tail">The measured tail that was used; <c>null</c> where the steady resistance was.</param>
/// <validity>The brief's temperature for the resistance; that of the measured charge for τ, which doubles towards 0 °C.</validity>
/// <error>2 % with a measured τ. With the resistance, the constant-current part within a few per cent; the tail of a charge measured on an
/// 18650 cell was longer by a quarter (handbook, battery, section 1).</error>
/// <source cref="Sources.LgHg2Kollmeyer"/>
public sealed record ChargeTime(Duration Full, Duration ToFourFifths, Duration LowerBound, double TurnOver, ChargeTail? Tail)
{
    const double MostCharge = 0.8;

    /// <summary>Charges a board's pack from empty.</summary>
    public static Answer<ChargeTime> Compute(Board board, Answer<PackModel> model) => Answer<ChargeTime>.Ask("charge.time_full", needs =>
    {
        var pack = needs.Read(model);
        needs.Read(board.Parts.Cell.Capacity);
        var charger = board.Parts.Charger;
        var current = needs.Read(charger.Current).Amperes;
        var volts = needs.Read(charger.Voltage).Volts;
        var end = needs.Read(charger.EndCurrent).Amperes;
        var full = needs.Read(board.Parts.Cell.VoltageFull).Volts;
        var decay = needs.Read(board.Parts.Cell.ChargeTail, default);
        if (needs.Unmet)
            return null;
        var target = Min(volts, full * pack.Series);
        return (decay.Seconds > 0 && end > 0 && end < current ? Measured(pack, target, current, end, decay) : null)
            ?? Steady(pack, target, current, end);
    });

    /// <summary>Capacity over current, which no charge can beat.</summary>
    public static Answer<Duration> BoundOf(Board board) =>
        !board.Parts.Charger.IsChosen ? Answer<Duration>.Beside : Answer<Duration>.Ask("", needs =>
        {
            var (capacity, current) = (needs.Read(PackModel.CapacityOf(board)), needs.Read(board.Parts.Charger.Current));
            return needs.Unmet ? default : Duration.FromSeconds(capacity.Coulombs / current.Amperes);
        });

    static ChargeTime? Measured(PackModel pack, double target, double current, double end, Duration decay)
    {
        // A charger that ends low leaves the pack where it rests at that voltage.
        var reached = RootFinding.FirstFall(s => target - pack.RestVoltsAt(s), 0, 1, 1.0 / 64) ?? 1;
        var tail = new ChargeTail(pack.Capacity * reached, Current.FromAmperes(current), Current.FromAmperes(end), decay);
        if (tail.ConstantCurrent is not { } constant)
            return null;
        var turnOver = constant.Seconds * current / pack.Capacity.Coulombs;
        var atFalling = Min(MostCharge, reached) - turnOver;
        var toMost = atFalling <= 0 ? Duration.FromSeconds(MostCharge * pack.Capacity.Coulombs / current)
            : constant + decay * -Log(Max(end / current, 1 - atFalling * pack.Capacity.Coulombs / (current * decay.Seconds)));
        return new(constant + tail.ConstantVoltage, toMost, BoundOf(pack, current), turnOver, tail);
    }

    static ChargeTime? Steady(PackModel pack, double target, double current, double end)
    {
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

        var (whole, most) = (To(1), To(MostCharge));
        // A charger that never stops above no current at all never fills the pack.
        return !double.IsFinite(whole.Seconds) ? null : new(whole, most, BoundOf(pack, current), turnOver, null);
    }

    static Duration BoundOf(PackModel pack, double current) => Duration.FromSeconds(pack.Capacity.Coulombs / current);
}
