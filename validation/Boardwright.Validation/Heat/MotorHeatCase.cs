using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Motors;
using Boardwright.Numerics;
using Boardwright.Units;
using Boardwright.Wiring;

namespace Boardwright.Validation.Heat;

/// <summary>A motor's temperature.</summary>
public sealed class MotorHeatCase : Case
{
    // A brushed motor's sheet: 3.1 and 14 K/W, 12.0 and 612 s.
    static readonly TwoNode Motor = new(
        HeatCapacity.FromJoulesPerKelvin(12 / 3.1), HeatCapacity.FromJoulesPerKelvin(612 / 14.0),
        ThermalResistance.FromKelvinsPerWatt(3.1));

    static readonly FixedCooling Room20 = new(ThermalResistance.FromKelvinsPerWatt(14), Temperature.FromCelsius(20));

    /// <inheritdoc/>
    public override string Room => "Heat";

    /// <inheritdoc/>
    public override string Topic => "Motor temperature";

    /// <inheritdoc/>
    public override string About =>
        "The two bodies of a motor, winding and case, with the copper's own rise, against makers' sheets of motors for general purposes. The guesses for a motor without a sheet are not compared: nobody has published one.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare()
    {
        yield return new("Copper's resistance at 100 °C over that at 20 °C", "0.00393 /K", "1.3144", "", MotorHeat.CopperFactor(Temperature.FromCelsius(100)), Sources.Iec60028, "",
            EvidenceLevel.ComputedFromPublished);
        yield return new("Temperature from a quarter more resistance", "from 25 °C", "89.875", "°C", Conductor.FromRatio(Temperature.FromCelsius(25), 1.25).Celsius, Sources.Iec60028, "",
            EvidenceLevel.ComputedFromPublished);

        var nominal = RootFinding.Within(
            static i => ((Motor.Settled(Heat(i * i * 2.18), Room20)?.Winding ?? TwoNode.CopperMelts) - Room20.Ambient).Kelvins - 75, 0.5,
            1.5, 1e-12);
        const string sheet = "12 V motor 118743, 2.18 Ω, 17.1 K/W, rise of 75 K";
        yield return new("Nominal current", sheet, "1.24", "A", nominal, Sources.MakersSheet, "motor 118743",
            EvidenceLevel.Published)
        { Allowed = Allowance.Part(1e-2, "the sheet's rounded constants") };
        yield return By("Nominal current", sheet, "1.2466", "A", nominal);

        foreach (var (seconds, winding, body) in new[] { (12.0, "3.9747", "0.1957"), (60, "7.6799", "1.9808"), (600, "22.4048", "16.4170") })
        {
            var given = $"12 V motor 118743, 2 W for {seconds} s";
            var after = Motor.AfterAtConstantLoss(Power.FromWatts(2), default, Room20, Duration.FromSeconds(seconds));
            yield return By("Rise of the winding, closed form", given, winding, "K", (after.Winding - Room20.Ambient).Kelvins) with
            {
                MissBecause = seconds == 12 ? "The last digit of the hand calculation: the closed form gives 3.97464, and so do steps of 0.1 ms." : null,
            };
            yield return By("Rise of the case, closed form", given, body, "K", (after.Case - Room20.Ambient).Kelvins);
        }

        var still = Motor.AfterAtConstantLoss(Power.FromWatts(2), default, Room20, Duration.FromHours(1000));
        yield return By("Final rise of the winding", "12 V motor 118743, 2 W", "34.2", "K", (still.Winding - Room20.Ambient).Kelvins);
        yield return By("Final rise of the case", "12 V motor 118743, 2 W", "28.0", "K", (still.Case - Room20.Ambient).Kelvins);
        var (fast, slow) = Motor.TimeConstants(Room20.Resistance);
        yield return By("Fast time constant", "12 V motor 118743", "11.007", "s", fast.Seconds);
        yield return By("Slow time constant", "12 V motor 118743", "667.19", "s", slow.Seconds);

        var settled = Motor.Settled(Heat(1.24 * 1.24 * 2.18), Room20);
        yield return By("Settled rise with the copper's own", "12 V motor 118743, 1.24 A", "73.985", "K", ((settled?.Winding ?? TwoNode.CopperMelts) - Room20.Ambient).Kelvins);

        var servo = new DirectCurrentMotor(SpeedConstant.FromRpmPerVolt(1000 / 43.0), Resistance.FromOhms(1.6), Current.FromAmperes(0.53));
        foreach (var (ounceInches, rise) in new[] { (165, "99"), (330, "149") })
        {
            var current = servo.CurrentAt(Torque.FromPoundForceInches(ounceInches / 16.0));
            var supply = Voltage.FromVolts(120);
            var loss = supply.Volts * current.Amperes - servo.ShaftPower(supply, current).Watts;
            yield return new("Rise of a servo motor", $"120 V, 43 V at 1000 r/min, 1.6 Ω, 0.53 A, 1.3 K/W, {ounceInches} oz-in", rise, "K", loss * 1.3, Sources.MakersSheet, "motor 500400167", EvidenceLevel.Published)
            {
                Allowed = Allowance.Part(1e-2, "the sheet's rounded constants"),
                MissBecause = "The sheet's curve leaves out the voltage that the no-load current loses in the winding, so it has less loss than the motor's equations give.",
            };
        }
    }

    static MotorHeat Heat(double copperWatts) => new(Power.FromWatts(copperWatts), default);

    static Check By(string quantity, string given, string printed, string unit, double ours) =>
        new(quantity, given, printed, unit, ours, Sources.TwoNodeMotor, "", EvidenceLevel.ComputedFromPublished);
}
