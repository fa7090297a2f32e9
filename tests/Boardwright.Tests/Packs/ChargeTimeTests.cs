using Boardwright.Examinations;
using Boardwright.Packs;

namespace Boardwright.Tests.Packs;

public sealed class ChargeTimeTests
{
    // One cell, charged as in the log; the board around it does not matter.
    static ChargeTime Charged(string capacity, string current, string end, string tail) => Examination.Examine(Boards.Tern.With(
        ("pack.series", "1"), ("pack.parallel", "1"), ("charger.voltage", "4.2 V"), ("cell.capacity", capacity), ("charger.current", current), ("charger.end_current", end), ("cell.charge_tail", tail))).Charge.Value;

    // Handbook, battery, check 6: 87.58 min, 44.23 of them at constant current; 87.6 min were measured (Kollmeyer 2020, charge 2 at 25 °C).
    [Fact]
    public void A_cell_with_a_measured_tail_is_charged_in_the_time_of_the_handbook()
    {
        var time = Charged("2.732 Ah", "3 A", "50 mA", "635.3 s");

        Assert.Equal(87.58, time.Full.Minutes, 0.01);
        Assert.Equal(44.23, time.TurnOver * time.LowerBound.Minutes, 0.01);
        Assert.Equal(2.732 / 3 * 60, time.LowerBound.Minutes, 1e-9);
        Assert.Equal(0.8, ChargeAfter(time, 3, 2.732), 1e-9);
    }

    // Handbook, battery, check 10: charges of about one capacity an hour down to a sixtieth of it took 1.60 to 1.64 times capacity over
    // current.
    [Fact]
    public void Capacity_over_current_is_far_too_short()
    {
        var time = Charged("2.732 Ah", "3 A", "50 mA", "635.3 s");

        Assert.InRange(time.Full.Seconds / time.LowerBound.Seconds, 1.60, 1.64);
    }

    [Fact]
    public void Where_a_tail_does_not_fit_the_steady_resistance_is_taken()
    {
        var steady = Charged("2.732 Ah", "3 A", "50 mA", "4000 s");

        Assert.Null(steady.Tail);
        Assert.True(steady.Full > steady.LowerBound);
        Assert.NotNull(Charged("2.732 Ah", "3 A", "50 mA", "").Tail);
    }

    [Fact]
    public void A_slower_tail_never_makes_a_charge_shorter()
    {
        var times = Enumerable.Range(1, 6).Select(i => Charged("2.732 Ah", "3 A", "50 mA", FormattableString.Invariant($"{300 * i} s"))).ToList();

        Assert.Equal(times.Select(t => t.Full.Seconds).Order(), times.Select(t => t.Full.Seconds));
        Assert.Equal(times.Select(t => t.ToFourFifths.Seconds).Order(), times.Select(t => t.ToFourFifths.Seconds));
        Assert.All(times, t => Assert.True(t.Full > t.ToFourFifths && t.Full > t.LowerBound));
    }

    // The charge that has gone in when 80 % are said to be reached.
    static double ChargeAfter(ChargeTime time, double amperes, double ampereHours)
    {
        var (tail, seconds) = (time.Tail!.Value, time.ToFourFifths.Seconds);
        var falling = Math.Max(0, seconds - tail.ConstantCurrent!.Value.Seconds);
        var coulombs = amperes * Math.Min(seconds, tail.ConstantCurrent!.Value.Seconds) + amperes * tail.Decay.Seconds
            * (1 - Math.Exp(-falling / tail.Decay.Seconds));
        return coulombs / 3600 / ampereHours;
    }
}
