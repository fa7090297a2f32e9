using Boardwright.Numerics;
using Boardwright.Wiring;
using CsCheck;

namespace Boardwright.Tests.Wiring;

public sealed class FusingTests
{
    static readonly Area Twelve = new WireGauge(12).Section;

    static Area CircularMils(double count) => Area.FromSquareInches(Math.PI / 4 * count * 1e-6);

    // Fuse-wire table of copper: diameters in inches for 50, 100, 200 and 300 A; the table rounds the diameters, 0.2 %.
    [Theory]
    [InlineData(0.0288, 50)]
    [InlineData(0.0457, 100)]
    [InlineData(0.0725, 200)]
    [InlineData(0.095, 300)]
    public void Preece_matches_the_fuse_wire_table(double inches, double amperes) =>
        Assert.Equal(amperes, Fusing.Preece(Length.FromInches(inches)).Amperes, 0.002 * amperes);

    // Brooks prints 178 A for this example from 234 − 25 in place of 234 + 25; the equation itself gives 168.9 A.
    [Fact]
    public void Onderdonk_adds_the_ambient_temperature()
    {
        var twentyFive = Temperature.FromCelsius(25);

        Assert.Equal(168.86, Fusing.Onderdonk(CircularMils(2581), Duration.FromSeconds(5), twentyFive).Amperes, 0.005);
        Assert.Equal(2.260, Fusing.OnderdonkTime(CircularMils(4110), Current.FromAmperes(400), twentyFive).Seconds, 0.0005);
    }

    [Fact]
    public void Adiabatic_heating_matches_the_hand_calculation_and_Onderdonk()
    {
        var (start, second) = (Temperature.FromCelsius(25), Duration.FromSeconds(1));
        var integral = Fusing.Adiabatic(Twelve, start, Temperature.FromCelsius(200));
        var melting = Fusing.CurrentFor(Fusing.Adiabatic(Twelve, start, Temperature.FromCelsius(1083)), second);

        Assert.Equal(2.8822e5, integral.AmpereSquaredSeconds, 0.001 * 2.8822e5);
        Assert.Equal(536.9, Fusing.CurrentFor(integral, second).Amperes, 0.05);
        Assert.Equal(953.2, melting.Amperes, 0.05);
        Assert.Equal(955.3, Fusing.Onderdonk(Twelve, second, start).Amperes, 0.05);
    }

    // The current goes as the square root of the inverse time, and time and current are each other's inverse.
    [Fact]
    public void Onderdonk_s_two_forms_agree() =>
        Gen.Select(Gen.Double[0.1, 10], Gen.Double[-20, 100]).Sample((seconds, celsius) =>
        {
            var start = Temperature.FromCelsius(celsius);
            var current = Fusing.Onderdonk(Twelve, Duration.FromSeconds(seconds), start);
            return Math.Abs(Fusing.OnderdonkTime(Twelve, current, start).Seconds - seconds) < 1e-9;
        });
}

public sealed class InrushTests
{
    static readonly Inrush Plain = new(Voltage.FromVolts(50.4), Capacitance.FromMillifarads(2.04), Resistance.FromMilliohms(25));
    static readonly Inrush Ringing = Plain with { Inductance = Inductance.FromMicrohenries(0.5) };

    [Fact]
    public void A_board_plugged_in_matches_the_hand_calculation()
    {
        Assert.Equal(2016, Plain.PeakCurrent.Amperes, 0.5);
        Assert.Equal(2.5910, Plain.Energy.Joules, 0.00005);
        Assert.Equal(0.7984, Ringing.DampingRatio!.Value, 0.00005);
        Assert.Equal(1366.6, Ringing.PeakCurrent.Amperes, 0.05);
        Assert.Equal(34.3, Ringing.PeakTime.Microseconds, 0.05);
    }

    [Fact]
    public void A_pre_charge_resistor_matches_the_hand_calculation()
    {
        var slow = Plain with { Resistance = Resistance.FromOhms(100) };

        Assert.Equal(0.204, slow.TimeConstant.Seconds, 1e-12);
        Assert.Equal(0.99326, slow.Filled(5 * slow.TimeConstant), 0.000005);
        Assert.Equal(0.504, slow.PeakCurrent.Amperes, 1e-12);
        Assert.Equal(25.4, slow.PeakPower.Watts, 0.05);
        Assert.Equal(0.65828, slow.TimeUntil(Voltage.FromVolts(2)).Seconds, 0.000005);
    }

    [Fact]
    public void The_current_follows_Kirchhoff_step_by_step() =>
        Gen.Select(Gen.Double[0.005, 0.2], Gen.Double[0.2, 20], Gen.Double[1, 300]).Sample(
            (ohms, microhenries, microseconds) =>
            {
                var inrush = Ringing with
                {
                    Resistance = Resistance.FromOhms(ohms),
                    Inductance = Inductance.FromMicrohenries(microhenries)
                };
                Span<double> state = [0, 0];
                RungeKutta.Advance(new Circuit(inrush), 0, state, microseconds * 1e-6, 4000);
                return Math.Abs(inrush.After(Duration.FromMicroseconds(microseconds)).Amperes - state[0]) < 1e-4
                    * inrush.PeakCurrent.Amperes;
            },
            iter: 50);

    [Fact]
    public void Nothing_is_above_the_peak() =>
        Gen.Select(Gen.Double[0.005, 0.2], Gen.Double[0.2, 20], Gen.Double[0, 1000]).Sample((ohms, microhenries, microseconds) =>
        {
            var inrush = Ringing with { Resistance = Resistance.FromOhms(ohms), Inductance = Inductance.FromMicrohenries(microhenries) };
            return inrush.After(Duration.FromMicroseconds(microseconds)) <= inrush.PeakCurrent * (1 + 1e-12);
        });

    [Fact]
    public void Critical_damping_is_the_limit_of_both_sides()
    {
        // R = 2 √(L/C).
        var critical = 2 * Math.Sqrt(0.5e-6 / 2.04e-3);
        double Peak(double factor) => (Ringing with { Resistance = Resistance.FromOhms(critical * factor) }).PeakCurrent.Amperes;

        Assert.Equal(Peak(1), Peak(1 + 1e-5), 1e-4 * Peak(1));
        Assert.Equal(Peak(1), Peak(1 - 1e-5), 1e-4 * Peak(1));
    }

    readonly struct Circuit(Inrush inrush) : IDerivative
    {
        public void At(double time, ReadOnlySpan<double> state, Span<double> rates)
        {
            rates[0] = (inrush.Supply.Volts - inrush.Resistance.Ohms * state[0] - state[1]) / inrush.Inductance.Henries;
            rates[1] = state[0] / inrush.Capacitance.Farads;
        }
    }
}
