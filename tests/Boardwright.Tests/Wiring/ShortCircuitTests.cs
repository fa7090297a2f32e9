using Boardwright.Examinations;
using Boardwright.Wiring;

namespace Boardwright.Tests.Wiring;

public sealed class ShortCircuitTests
{
    // By hand, cells of 30 mΩ after a second: 12 · 4.2 V over 12/4 · 30 mΩ / 2.6 are 1456 A in the first milliseconds.
    [Fact]
    public void A_dead_short_is_full_voltage_over_the_cells_alone_at_once()
    {
        var fault = Examination.Examine(Boards.Tern.With(("cell.resistance", "30 mohm"), ("cell.voltage_full", "4.2 V"))).Fault.Value;

        Assert.Equal(50.4 / (0.090 / 2.6), fault.Highest.Amperes, 1e-6);
        Assert.True(fault.Lowest < fault.Highest);
    }

    [Fact]
    public void Neither_links_nor_wires_nor_plugs_help_the_fuse()
    {
        var highest = Examination.Examine(Boards.Tern).Fault.Value.Highest;

        Assert.Equal(highest, Examination.Examine(Boards.Tern.With(("pack.links", "40 mohm"), ("wiring[1].gauge", "AWG 24"))).Fault.Value.Highest);
    }

    // L/l = (µ₀/π)(ln(d/r) + ¼): for d = 4 r by hand 0.4 · (1.3863 + 0.25) = 0.6545 µH for each metre.
    [Fact]
    public void Two_wires_side_by_side_have_the_inductance_of_the_handbook()
    {
        var radius = 1e-3;
        var pair = ShortCircuit.OfPair(
            Area.FromSquareMetres(Math.PI * radius * radius), Length.FromMetres(4 * radius), Length.FromMetres(1));

        Assert.Equal(0.6545e-6, pair.Henries, 1e-10);
    }

    // By hand: 9000 A²s at 600 A are 25 ms; 226² · 5.26² · ln(394.5/339.5) = 212 300 A²s for AWG 10 from 105 °C to 160 °C.
    [Fact]
    public void A_fuse_in_a_fault_is_as_by_hand()
    {
        var blown = FuseInFault.Compute(
            Current.FromAmperes(60), FusingIntegral.FromAmpereSquaredSeconds(9000), Current.FromAmperes(600), new WireGauge(10).Section,
            HarnessRun.UsualLimit);

        Assert.Equal(0.025, blown.Melts.Seconds, 1e-12);
        Assert.Equal(27_000, blown.LetThrough.AmpereSquaredSeconds, 1e-6);
        Assert.Equal(212_300, blown.WireBears.AmpereSquaredSeconds, 300.0);
        Assert.Equal(10, blown.Times, 1e-12);
        Assert.True(blown.Protects);
    }

    [Fact]
    public void A_thinner_wire_bears_less_and_an_insulation_that_is_hot_already_bears_nothing()
    {
        var last = double.PositiveInfinity;
        foreach (var gauge in new[] { 8, 10, 12, 14, 16, 18 })
        {
            var blown = FuseInFault.Compute(
                Current.FromAmperes(60), FusingIntegral.FromAmpereSquaredSeconds(9000), Current.FromAmperes(600),
                new WireGauge(gauge).Section, HarnessRun.UsualLimit);
            Assert.True(blown.WireBears.AmpereSquaredSeconds < last);
            last = blown.WireBears.AmpereSquaredSeconds;
        }

        Assert.False(FuseInFault.Compute(
            Current.FromAmperes(60), FusingIntegral.FromAmpereSquaredSeconds(9000), Current.FromAmperes(600), new WireGauge(8).Section,
            Temperature.FromCelsius(200)).Protects);
    }
}
