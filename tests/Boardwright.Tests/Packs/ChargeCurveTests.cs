using Boardwright.Examinations;
using Boardwright.Packs;

namespace Boardwright.Tests.Packs;

public sealed class ChargeCurveTests
{
    [Theory]
    [InlineData("charger.current", "4 A")]
    [InlineData("charger.current", "18 A")]
    [InlineData("charger.voltage", "49 V")]
    [InlineData("cell.charge_tail", "640 s")]
    [InlineData("cell.charge_tail", "100000 s")]
    public void It_takes_as_long_as_the_charge_time_says(string key, string value)
    {
        var examination = Examination.Examine(Boards.Tern.With((key, value)));
        var time = examination.Charge.Value;
        var curve = ChargeCurve.Compute(examination.Board, examination.Pack, examination.Charge).Value;

        Assert.Equal(time.Full.Seconds, curve.Moments[^1].Seconds, 1e-4 * time.Full.Seconds);
        Assert.All(curve.Moments.Zip(curve.Moments.Skip(1)),
            p => Assert.True(p.First.Seconds < p.Second.Seconds && p.First.Charge < p.Second.Charge));
        Assert.All(curve.Moments.Zip(curve.Moments.Skip(1)),
            p => Assert.True(p.First.Amperes >= p.Second.Amperes - 1e-9 && p.First.Volts <= p.Second.Volts + 1e-9));
    }

    [Fact]
    public void Nothing_is_drawn_without_a_charger() =>
        Assert.False(ChargeCurve.Compute(
        Boards.Tern.With(("charger.current", "")), Examination.Examine(Boards.Tern).Pack, Examination.Examine(Boards.Tern).Charge).IsKnown);
}
