using Boardwright.Files;
using Boardwright.Parts;
using Boardwright.Units;

namespace Boardwright.Tests.Files;

public sealed class BoardFileTests
{
    [Fact]
    public void The_board_of_the_format_reads_without_complaint_and_every_value_lands()
    {
        using var place = Tern.Place();
        var loaded = place.Read();

        Assert.Equal("", place.Told(loaded));
        var board = loaded.Board!;
        Assert.Equal("Tern", board.Name.Value);
        Assert.Equal(80, board.Brief.RiderMass.Value.Kilograms);
        Assert.Equal(Stance.Upright, board.Brief.Stance.Value);
        Assert.Equal(25, board.Brief.CruiseSpeed.Value.KilometresPerHour, 1e-12);
        Assert.Equal(0.15, board.Brief.ClimbWanted.Value.Value, 1e-15);
        Assert.Equal(18, board.Brief.Temperature.Value.Celsius, 1e-10);
        Assert.Equal(Surface.SmoothAsphalt, board.Brief.Surface.Value);
        Assert.Equal("routes/harbour-loop.gpx", board.Brief.Route.Value);
        Assert.Equal(["shelf/"], board.Shelf.Value.Items);

        Assert.Equal("marram-96", board.Parts.Deck.Id);
        Assert.True(board.Parts.Deck.IsChosen);
        Assert.Equal(Mounting.DropPlatform, board.Parts.Deck.Mounting.Value);
        Assert.Equal([0.72, 0.74], board.Parts.Deck.Wheelbase.Value.Items.Select(length => length.Metres));
        Assert.Equal("ling-184", board.Parts.FrontTruck.Id);
        Assert.Equal("rear_truck.mass", board.Parts.RearTruck.Mass.Key);
        Assert.Equal(4, board.Parts.Wheels.Count.Value);
        Assert.Equal(101.6, board.Parts.Wheels.Diameter.Value.Millimetres, 1e-12);
        Assert.Equal((0.3e-3, Origin.Measured), (board.Parts.Wheels.Width.Spread, board.Parts.Wheels.Width.From));
        Assert.Equal(0.022, board.Parts.Wheels.RollingResistance.Value.On(Surface.RoughAsphalt)!.Value.Value);
        Assert.Null(board.Parts.Wheels.RollingResistance.Value.On(Surface.PackedGravel));
        Assert.Equal((DriveKind.Belt, Driven.Rear, 2, Placement.Behind), (board.Parts.Drive.Kind.Value, board.Parts.Drive.Driven.Value, board.Parts.Drive.Motors.Value, board.Parts.Drive.Placement.Value));

        Assert.Equal("m6374-170", board.Parts.Motor.Id);
        Assert.Equal(170, board.Parts.Motor.Kv.Value.RpmPerVolt, 1e-10);
        Assert.Equal(0.0014, board.Parts.Motor.PhaseResistance.Spread!.Value, 1e-15);
        Assert.Equal((5.0, Origin.Guess), (board.Parts.Motor.WindingLimit.Spread, board.Parts.Motor.WindingLimit.From));
        Assert.Equal(1.4, board.Parts.Motor.NoLoadTests.Value.At(24));
        Assert.Equal(Fixing.SetScrew, board.Parts.MotorPulley.Fixing.Value);
        Assert.Equal("", board.Parts.Belt.Id);
        Assert.True(board.Parts.Belt.IsChosen);
        Assert.False(board.Parts.Gearbox.IsChosen);
        Assert.False(board.Parts.Gearbox.Ratio.IsKnown);
        Assert.Equal(31, board.Parts.Cell.Resistance.Value.At(Fraction.FromPercent(10), Temperature.FromCelsius(25)).Milliohms, 1e-9);
        Assert.Equal(3.68, board.Parts.Cell.RestVoltage.Value.At(0.5), 1e-12);
        Assert.Equal(12, board.Parts.Cell.Polarisation.R1.Value.At(Fraction.FromPercent(50), Temperature.FromCelsius(25)).Milliohms, 1e-12);
        Assert.Equal("bms-12s-60", board.Parts.Pack.Protection.Id);
        Assert.True(board.Parts.Pack.Protection.RegenThrough.Value);
        Assert.Equal("pack.protection.series", board.Parts.Pack.Protection.Series.Key);

        Assert.Equal(2, board.Wiring.Count);
        // Diameter of AWG 10 by the formula of ASTM B258, printed there as 2.588 mm.
        Assert.Equal(2.588, 2 * Math.Sqrt(board.Wiring[0].Gauge.Value.SquareMillimetres / Math.PI), 0.0005);
        Assert.Equal("wiring[2].length", board.Wiring[1].Length.Key);
        Assert.Equal(50, board.Limits.PackCurrent.Value.Amperes);
        Assert.Equal(6, board.Fixings.Box.Count.Value);
        Assert.Equal(new HourlyRate(new Money(35, "EUR")), board.Money.LabourRate.Value);
        Assert.Equal(45, board.PlugCalled("XT90").CurrentContinuous.Value.Amperes);
        Assert.Equal(40, board.PlugCalled("bullet 4 mm").CurrentContinuous.Value.Amperes);
        Assert.Equal(40, board.PlugCalled("bullet-4").CurrentContinuous.Value.Amperes);

        Assert.Equal(18, loaded.Shelf.Parts.Count);
        Assert.Equal(2, loaded.Shelf.Of<Motor>().Count());
        Assert.Equal("controller", loaded.Shelf.Find("twin-60")!.Kind);
    }

    [Fact]
    public void Every_value_has_its_place()
    {
        using var place = Tern.Place();
        var places = place.Read().Places;

        Assert.EndsWith("tern.board.yaml:43:17", places["limits.pack_current"].ToString(), StringComparison.Ordinal);
        Assert.EndsWith("tern.board.yaml:24:37", places["wheels.count"].ToString(), StringComparison.Ordinal);
        Assert.EndsWith("shelf/chassis.yaml:23:13", places["wheels.diameter"].ToString(), StringComparison.Ordinal);
        Assert.EndsWith("shelf/electrics.yml:8:21", places["motor.phase_resistance"].ToString(), StringComparison.Ordinal);
        Assert.EndsWith("tern.board.yaml:27:10", places["motor"].ToString(), StringComparison.Ordinal);
        Assert.True(places.ContainsKey("plug xt90.current_continuous"));
        Assert.False(places.ContainsKey("gearbox.ratio"));
    }
}
