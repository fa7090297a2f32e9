using Boardwright.Wiring;

namespace Boardwright.Tests.Wiring;

public sealed class PrechargeTests
{
    static readonly Voltage Full = Voltage.FromVolts(50.4);
    static readonly Capacitance Bus = Capacitance.FromFarads(2.04e-3);

    // By hand: 50.4 V over 100 Ω are 0.504 A and 25.4 W; ½ · 2.04 mF · 50.4² = 2.591 J; τ = 0.204 s, times ln 20 and ln 100.
    [Fact]
    public void A_hundred_ohm_fill_as_by_hand()
    {
        var precharge = Precharge.With(Resistance.FromOhms(100), Full, Bus, default);

        Assert.Equal(0.504, precharge.FirstCurrent.Amperes, 1e-9);
        Assert.Equal(25.4016, precharge.FirstPower.Watts, 1e-9);
        Assert.Equal(2.5910, precharge.Pulse.Joules, 1e-4);
        Assert.Equal(0.6111, precharge.Mostly.Seconds, 1e-4);
        Assert.Equal(0.9394, precharge.Full.Seconds, 1e-4);
        Assert.Equal(0.95, precharge.Filling.Filled(precharge.Mostly), 1e-9);
        Assert.Equal(0.99, precharge.Filling.Filled(precharge.Full), 1e-9);
    }

    // By hand: 1 s / (2.04 mF ln 100) = 106 Ω; past 3 W no more than 0.05 · 50.4²/3 = 42 Ω.
    [Theory]
    [InlineData(0, 100)]
    [InlineData(3, 33)]
    [InlineData(12, 10)]
    public void The_resistor_is_the_largest_usual_one_that_fills_in_time_and_past_the_draw(double watts, double ohms)
    {
        var sized = Precharge.Sized(Full, Bus, Power.FromWatts(watts));

        Assert.Equal(ohms, sized.Resistance.Ohms, 1e-9);
        Assert.True(sized.Reaches);
        Assert.True(sized.Full.Seconds <= 1);
    }

    // An independent way: i² summed over small steps of the exponential.
    [Fact]
    public void What_it_lets_through_is_the_sum_of_its_current_squared()
    {
        var precharge = Precharge.With(Resistance.FromOhms(33), Full, Bus, default);
        const double Step = 1e-5;
        var sum = Enumerable.Range(0, 200_000)
            .Sum(i => Math.Pow(precharge.Filling.After(Duration.FromSeconds((i + 0.5) * Step)).Amperes, 2) * Step);

        Assert.Equal(sum, precharge.Through.AmpereSquaredSeconds, 1e-6);
    }
}
