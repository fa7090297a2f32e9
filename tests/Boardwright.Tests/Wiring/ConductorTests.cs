using Boardwright.Road;
using Boardwright.Wiring;
using CsCheck;

namespace Boardwright.Tests.Wiring;

public sealed class ConductorTests
{
    static readonly Temperature Twenty = Temperature.FromCelsius(20);

    // Handbook of Electronic Tables: ohm/km of solid copper at 20 °C; gauge 12 2.05232 mm. The tables round the diameter,
    // which moves a resistance by up to 0.05 %.
    [Theory]
    [InlineData(14, 8.282)]
    [InlineData(12, 5.20864)]
    [InlineData(10, 3.2764)]
    [InlineData(8, 2.0605)]
    [InlineData(6, 1.2959)]
    public void Resistance_matches_the_published_tables(int gauge, double ohmsPerKilometre) =>
        Assert.Equal(ohmsPerKilometre, 1000 * new Conductor(new WireGauge(gauge).Section).OhmsPerMetre(Twenty), 5e-4 * ohmsPerKilometre);

    [Fact]
    public void Gauge_12_matches_the_formula()
    {
        var gauge = new WireGauge(12);

        Assert.Equal(2.0525, gauge.Diameter.Millimetres, 0.00005);
        Assert.Equal(3.3088, gauge.Section.SquareMillimetres, 0.00005);
        Assert.Equal(6529.9, gauge.CircularMils, 0.05);
        Assert.Equal(5.2107, 1000 * new Conductor(gauge.Section).OhmsPerMetre(Twenty), 0.00005);
    }

    [Fact]
    public void A_pair_of_gauge_12_loses_this_much()
    {
        var wire = new Conductor(new WireGauge(12).Section);
        var (loop, current) = (Length.FromMetres(0.6), Current.FromAmperes(60));

        Assert.Equal(0.18758, wire.Drop(current, loop, Twenty).Volts, 0.000005);
        Assert.Equal(0.23182, wire.Drop(current, loop, Temperature.FromCelsius(80)).Volts, 0.000005);
        Assert.Equal(13.909, wire.Loss(current, loop, Temperature.FromCelsius(80)).Watts, 0.0005);
    }

    [Fact]
    public void Every_gauge_is_nearest_to_itself() =>
        Assert.All(
            Enumerable.Range(WireGauge.Thickest, WireGauge.Thinnest - WireGauge.Thickest + 1),
            number => Assert.Equal(number, WireGauge.Nearest(new WireGauge(number).Section).Number));

    [Theory]
    [InlineData(4.0, "AWG 11")]
    [InlineData(2.5, "AWG 13")]
    [InlineData(67.4, "AWG 2/0")]
    [InlineData(53.5, "AWG 1/0")]
    [InlineData(1000, "AWG 4/0")]
    public void A_section_has_a_nearest_name(double squareMillimetres, string name) =>
        Assert.Equal(name, WireGauge.Nearest(Area.FromSquareMillimetres(squareMillimetres)).Name);

    // IEC 60228, temperature factors.
    [Theory]
    [InlineData(30, 0.962)]
    [InlineData(50, 0.893)]
    [InlineData(80, 0.806)]
    [InlineData(100, 0.758)]
    public void Cable_factor_matches_the_standard(double celsius, double factor) =>
        Assert.Equal(factor, Conductor.CableFactor(Temperature.FromCelsius(celsius)), 0.0005);

    [Fact]
    public void A_quarter_more_resistance_is_65_degrees_more() =>
        Assert.Equal(89.875, Conductor.FromRatio(Temperature.FromCelsius(25), 1.25).Celsius, 0.0005);

    [Fact]
    public void The_guessed_outside_of_gauge_12_is_4_5_millimetres() =>
        Assert.Equal(4.5, new Conductor(new WireGauge(12).Section).GuessedOuterDiameter.Millimetres, 0.05);

    [Fact]
    public void Wires_in_a_bundle_carry_less() =>
        Assert.Equal([1, 0.94, 0.89, 0.83, 0.76, null], Enumerable.Range(1, 6).Select(Conductor.BundleFactor));
}

public sealed class WireTemperatureTests
{
    static readonly Conductor Twelve = new(new WireGauge(12).Section);

    static WireTemperature Wire(double celsius) =>
        new(Twelve, Length.FromMillimetres(4.5), Air.At(default, Temperature.FromCelsius(celsius)));

    // Recomputed by hand to 1 K: 40 A in 50 °C 86.86 °C (h 20.2), 60 A in 25 °C 105.5 °C.
    [Theory]
    [InlineData(50, 40, 86.86)]
    [InlineData(25, 60, 105.5)]
    public void Gauge_12_settles_where_the_hand_calculation_says(double ambient, double amperes, double celsius) =>
        Assert.Equal(celsius, Wire(ambient).At(Current.FromAmperes(amperes))!.Value.Celsius, 1.0);

    // MIL-W-5088: gauge 12 carries 40 A alone in 50 °C with its conductor at no more than 105 °C.
    [Fact]
    public void Gauge_12_keeps_the_military_limit() =>
        Assert.True(Wire(50).At(Current.FromAmperes(40))!.Value <= Temperature.FromCelsius(105));

    [Fact]
    public void The_largest_current_brings_the_wire_to_its_limit() =>
        Gen.Select(Gen.Double[-20, 60], Gen.Double[1, 150]).Sample((ambient, rise) =>
        {
            var (wire, limit) = (Wire(ambient), Temperature.FromCelsius(ambient + rise));
            return Math.Abs((wire.At(wire.LargestCurrent(limit))!.Value - limit).Kelvins) < 1e-6;
        });

    [Fact]
    public void More_current_is_always_hotter() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0.1, 10]).Sample((amperes, more) =>
            Wire(25).At(Current.FromAmperes(amperes + more)) > Wire(25).At(Current.FromAmperes(amperes)));

    [Fact]
    public void No_current_leaves_the_wire_as_warm_as_the_air() =>
        Assert.Equal(Temperature.FromCelsius(25), Wire(25).At(default));

    [Fact]
    public void Far_too_much_current_has_no_steady_state() =>
        Assert.Null(Wire(25).At(Current.FromAmperes(1000)));

    [Fact]
    public void Nothing_is_carried_in_air_as_hot_as_the_limit() =>
        Assert.Equal(default, Wire(105).LargestCurrent(Temperature.FromCelsius(105)));
}
