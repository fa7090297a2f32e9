using System.Globalization;
using Boardwright.Documents.Charts;
using CsCheck;

namespace Boardwright.Tests.Documents;

public sealed class TicksTests
{
    static readonly Gen<(double Low, double Span, int Most)> Axes =
        Gen.Select(Gen.Double[-1e4, 1e4], Gen.Double[-6, 6].Select(e => Math.Pow(10, e)), Gen.Int[1, 12]);

    [Fact]
    public void A_step_is_one_two_or_five_times_a_power_of_ten() => Axes.Sample((_, span, most) =>
    {
        var step = Ticks.Step(span, most);
        var lead = step / Math.Pow(10, Math.Floor(Math.Log10(step) + 1e-9));
        return new[] { 1.0, 2, 5 }.Any(n => Math.Abs(lead - n) < 1e-9) && span / step <= most * (1 + 1e-9);
    });

    [Fact]
    public void No_smaller_round_step_would_do() => Axes.Sample((_, span, most) =>
        span / (Ticks.Step(span, most) * 0.39) > most);

    [Fact]
    public void Ticks_lie_on_the_axis_and_are_evenly_apart() => Axes.Sample((low, span, most) =>
    {
        var step = Ticks.Step(span, most);
        var ticks = Ticks.Between(low, low + span, step);
        return ticks.Count <= most + 1
            && ticks.All(t => t >= low - 1e-5 * step && t <= low + span + 1e-5 * step)
            && ticks.Zip(ticks.Skip(1)).All(p => Math.Abs(p.Second - p.First - step) < 1e-6 * step + 1e-9);
    });

    [Fact]
    public void Ticks_read_as_what_they_are() => Axes.Sample((low, span, most) =>
    {
        var step = Ticks.Step(span, most);
        return Ticks.Between(low, low + span, step).All(t =>
            Math.Abs(double.Parse(Ticks.Write(t, step).Replace('−', '-'), CultureInfo.InvariantCulture) - t) < 1e-6 * step + 1e-9);
    });

    [Theory]
    [InlineData(95, 8, 15)]
    [InlineData(50, 5, 10)]
    [InlineData(170, 6, 30)]
    [InlineData(4, 8, 0.5)]
    public void Minutes_go_in_parts_of_an_hour(double span, int most, double step) =>
        Assert.Equal(step, Ticks.Step(span, most, isOfSixty: true));

    [Theory]
    [InlineData(0.3, 0.1, "0.3")]
    [InlineData(-20, 20, "−20")]
    [InlineData(-0.0, 5, "0")]
    [InlineData(0.02, 0.02, "0.02")]
    [InlineData(3500, 500, "3500")]
    public void A_tick_has_the_decimals_of_its_step(double tick, double step, string text) => Assert.Equal(text, Ticks.Write(tick, step));
}
