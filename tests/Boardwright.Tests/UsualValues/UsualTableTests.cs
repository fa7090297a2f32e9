using System.Text.RegularExpressions;
using Boardwright.Parts;
using Boardwright.UsualValues;

namespace Boardwright.Tests.UsualValues;

public sealed partial class UsualTableTests
{
    static readonly Board Listed = new Board
    {
        Brief = new()
        {
            RiderMass = Mass.FromKilograms(82),
            Stance = Stance.Upright,
            Temperature = Temperature.FromCelsius(20),
            Surface = Surface.SmoothAsphalt,
        },
        Parts = new()
        {
            Deck = new()
            {
                IsChosen = true,
                Wheelbase = new Quantities<Length>([Length.FromMillimetres(830)]),
                Width = Length.FromMillimetres(240),
                Thickness = Length.FromMillimetres(14),
                Material = "maple",
            },
            Drive = new() { Kind = DriveKind.Belt, Motors = 2 },
            Wheels = new() { IsChosen = true, Mass = Mass.FromKilograms(0.33), Diameter = Length.FromMillimetres(97), Durometer = "78A" },
            Motor = new()
            {
                IsChosen = true,
                Mass = Mass.FromKilograms(0.9),
                Kv = SpeedConstant.FromRpmPerVolt(185),
                PolePairs = 7,
                CanDiameter = Length.FromMillimetres(63),
                CanLength = Length.FromMillimetres(74),
            },
            MotorPulley = new()
            {
                IsChosen = true,
                Profile = "HTD 5M",
                Teeth = 16,
                Length = Length.FromMillimetres(26),
                Bore = Length.FromMillimetres(10)
            },
            WheelPulley = new() { IsChosen = true, Profile = "HTD 5M", Teeth = 40, FaceWidth = Length.FromMillimetres(21) },
            Controller = new() { IsChosen = true, Motors = 1, PhaseCurrentPeak = Current.FromAmperes(100) },
            Cell = new()
            {
                IsChosen = true,
                Format = "18650",
                Capacity = Charge.FromAmpereHours(3.1),
                DischargeCurrent = Current.FromAmperes(15),
                VoltageFull = Voltage.FromVolts(4.2),
            },
            Pack = new() { IsChosen = true, Series = 12, Parallel = 4 },
        },
    }.WithNames();

    static Fitted Filled(Func<Board, Board>? change = null) => UsualTable.Complete((change?.Invoke(Listed) ?? Listed).WithNames()).Parts;

    // The check values of the handbook, usual values, section 9, computed there by an independent program.
    [Fact]
    public void Motors_as_the_handbook_computes_them()
    {
        var motor = Filled().Motor;

        Assert.Equal(14.1e-6, motor.PhaseInductance.Value.Henries, 0.05e-6);
        Assert.Equal(32.8e-3, motor.LineResistance.Value.Ohms, 0.05e-3);
        Assert.Equal(1.365, motor.NoLoadTests.Value.At(Voltage.FromVolts(24)).Amperes, 0.0005);
        Assert.Equal(2.32e-4, motor.RotorInertia.Value.KilogramSquareMetres, 0.005e-4);
        Assert.Equal(0.889, motor.WindingToCase.Value.KelvinsPerWatt, 0.0005);
        Assert.Equal(48.5, motor.WindingCapacity.Value.JoulesPerKelvin, 0.05);
        Assert.Equal(279, motor.CaseCapacity.Value.JoulesPerKelvin, 0.5);
    }

    [Fact]
    public void A_no_load_current_rises_with_the_voltage_by_six_and_four_tenths()
    {
        var tests = Filled().Motor.NoLoadTests.Value;

        Assert.Equal(1.681, tests.At(Voltage.FromVolts(36)).Amperes, 0.0005);
    }

    [Fact]
    public void Controllers_and_packs_as_the_handbook_computes_them()
    {
        var parts = Filled();

        Assert.Equal(1.7e-3, parts.Controller.BridgeResistance.Value.Ohms, 1e-9);
        Assert.Equal(2000e-6, parts.Controller.BusCapacitance.Value.Farads, 1e-9);
        Assert.Equal(5.0e-3, parts.Pack.Links.Value.Ohms, 0.05e-3);
        Assert.Equal(682, parts.Cell.ChargeTail.Value.Seconds / Slow(20), 0.5);
        Assert.Equal(44.2, parts.Cell.HeatCapacity.Value.JoulesPerKelvin, 0.05);

        static double Slow(double celsius) => 1 + (25 - celsius) / 25;
    }

    [Theory]
    [InlineData(3.1, 15, 23.5)]
    [InlineData(3.0, 20, 20.7)]
    public void A_cell_s_resistance_follows_capacity_and_current(double ampereHours, double amperes, double milliohms)
    {
        var cell = Filled(b => b with
        {
            Parts = b.Parts with
            {
                Cell = b.Parts.Cell with
                {
                    Capacity = Charge.FromAmpereHours(ampereHours),
                    DischargeCurrent = Current.FromAmperes(amperes)
                },
            },
        }).Cell;

        Assert.Equal(milliohms, 1e3 * cell.Resistance.Value.At(0.5, 298.15), 0.05);
        Assert.Equal(1.75 * milliohms, 1e3 * cell.Resistance.Value.At(0.5, 273.15), 0.1);
    }

    [Theory]
    [InlineData(75, 7.05)]
    [InlineData(78, 8.31)]
    [InlineData(85, 13.2)]
    public void Hardness_gives_the_modulus(double shore, double megapascals) =>
        Assert.Equal(megapascals, RoadValues.Modulus(shore), 0.05);

    [Theory]
    [InlineData(80, 0.600)]
    [InlineData(60, 0.531)]
    public void A_rider_s_drag_area_follows_the_mass(double kilograms, double squareMetres) =>
        Assert.Equal(squareMetres,
        UsualTable.Complete(Listed with { Brief = Listed.Brief with { RiderMass = Mass.FromKilograms(kilograms) } })
            .Brief.DragArea.Value.SquareMetres, 0.001);

    [Fact]
    public void Wheels_decks_and_pulleys_as_the_handbook_computes_them()
    {
        var parts = Filled();

        Assert.Equal(0.182e-3, parts.Deck.BendPerKg.Value.Si, 0.001e-3);
        Assert.Equal(70.9, parts.MotorPulley.Mass.Value.Grams, 0.5);
        Assert.Equal(107.6, parts.WheelPulley.Mass.Value.Grams, 1.0);
        Assert.Equal(0.58 * 0.33 * 0.097 * 0.097 / 4, parts.Wheels.Inertia.Value.KilogramSquareMetres, 1e-9);
    }

    [Fact]
    public void What_is_stated_stays_and_a_second_pass_changes_nothing()
    {
        var once = UsualTable.Complete(Listed with
        {
            Parts = Listed.Parts with { Motor = Listed.Parts.Motor with { PhaseInductance = Inductance.FromHenries(99e-6) } },
        });

        Assert.Equal(99e-6, once.Parts.Motor.PhaseInductance.Value.Henries, 1e-12);
        Assert.Same(once, UsualTable.Complete(once));
    }

    [Fact]
    public void Every_value_says_that_it_is_usual_and_how_far_it_may_be_off()
    {
        var taken = UsualTable.ListTaken(UsualTable.Complete(Listed));

        Assert.Contains(taken, t => t.Key == "motor.winding_to_case" && Math.Abs(t.Factor - 2.2) < 1e-9);
        Assert.Contains(taken, t => t.Key == "wheels.rolling_resistance" && Math.Abs(t.Factor - 1.25) < 1e-9);
        Assert.All(taken, t => Assert.NotEmpty(t.Value));
        Assert.All(taken.Where(t => t.Key != "motor.pole_pairs"), t => Assert.True(t.Factor > 1));
    }

    [Fact]
    public void A_usual_value_that_is_moved_stays_above_zero()
    {
        var board = UsualTable.Complete(Listed);
        var entry = Entry.ListEntries(typeof(Motor)).First(e => e.Key == "winding_to_case");

        var low = (Known<ThermalResistance>)entry.Moved(board.Parts.Motor.WindingToCase, -2);

        Assert.Equal(0.8 / 0.9 / 2.2 / 2.2, low.Value.KelvinsPerWatt, 1e-9);
    }

    // What fingers, fires and brakes depend on has no usual value.
    [Theory]
    [InlineData("motor.shaft_length")]
    [InlineData("mount.plate_thickness")]
    [InlineData("cell.discharge_current")]
    [InlineData("cell.charge_current")]
    [InlineData("cell.voltage_full")]
    [InlineData("pack.protection.discharge_current")]
    [InlineData("fuse.rating")]
    [InlineData("fuse.breaking_current")]
    [InlineData("charger.voltage")]
    [InlineData("controller.voltage_max")]
    [InlineData("limits.pack_current")]
    [InlineData("front_truck.lean_stop")]
    [InlineData("remote.failsafe")]
    [InlineData("motor.winding_limit")]
    [InlineData("motor.magnet_limit")]
    public void What_must_be_known_has_no_usual_value(string key) => Assert.Null(UsualTable.Find(key));

    [Fact]
    public void Every_row_is_for_an_entry_that_exists() =>
        Assert.All(UsualTable.All, row => Assert.True(EntryExists(row.Key), row.Key));

    [Fact]
    public void Lengths_have_no_usual_value() =>
        Assert.DoesNotContain(UsualTable.All, row => Dimensions().IsMatch(row.Key));

    static bool EntryExists(string key)
    {
        var (type, names) = (typeof(Board), key.Split('.'));
        if (names[0] is not "brief")
            type = typeof(Fitted);
        foreach (var name in names)
        {
            if (Entry.ListEntries(type).FirstOrDefault(e => e.Key == name) is not { } entry)
                return false;
            type = entry.ValueType;
        }

        return true;
    }

    [GeneratedRegex("_(length|diameter|width|height|depth|thickness|overhang|offset)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Dimensions();
}
