using System.Globalization;
using Boardwright.Files.Boards;
using Boardwright.Parts;

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
        Assert.Equal((DriveKind.Belt, Driven.Rear, 2, Placement.Behind),
            (board.Parts.Drive.Kind.Value, board.Parts.Drive.Driven.Value, board.Parts.Drive.Motors.Value,
            board.Parts.Drive.Placement.Value));

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
        Assert.Equal(2, loaded.Shelf.PartsOfType<Motor>().Count());
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

    // The program runs without cultures of its own (InvariantGlobalization), so de-DE and tr-TR bring nothing but their name; the test
    // plays a culture with decimal commas.
    [Fact]
    public void A_culture_with_decimal_commas_changes_nothing()
    {
        using var place = Tern.Place();
        var before = CultureInfo.CurrentCulture;
        var expected = Everything();
        try
        {
            var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator, culture.NumberFormat.NegativeSign) =
                (",", ".", "−");
            CultureInfo.CurrentCulture = culture;
            Assert.Equal("1,5", 1.5.ToString(CultureInfo.CurrentCulture));
            Assert.Equal(expected, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        string Everything() => string.Join(
            '\n', Facts(place.Read()), Schemas.Board(), Schemas.Shelf(), BoardFile.ReadText("boardwright: 1\nbrief: { rider_mass: 900 kg, headwind: 99 m/s }", "a.board.yaml").Complaints[0]);

        static string Facts(LoadedBoard loaded) => string.Join('\n', Flat(loaded.Board!).Concat(loaded.Places.Select(pair => $"{pair.Key} {pair.Value}")));

        static IEnumerable<string> Flat(Sheet sheet) => Entry.ListEntries(sheet.GetType()).SelectMany(entry => entry.Read(sheet) switch
        {
            Sheet inner => Flat(inner),
            IEnumerable<Sheet> list => list.SelectMany(Flat),
            IReadOnlyDictionary<string, BoxPosition> spots => spots.Values.SelectMany(Flat),
            var known => [FormattableString.Invariant($"{((IKnown)known).Key} {known} {((IKnown)known).Spread:R}")],
        });
    }

    [Fact]
    public void A_text_that_is_not_saved_yet_is_read_as_if_it_were()
    {
        using var place = Tern.Place();
        var loaded = BoardFile.ReadText("\uFEFF" + Tern.Board.Replace("rider_mass: 80 kg", "rider_mass: 81 kg", StringComparison.Ordinal), Path.Combine(place.Folder, "tern.board.yaml"));
        Assert.Equal(81, loaded.Board!.Brief.RiderMass.Value.Kilograms);
        Assert.Equal("marram-96", loaded.Board.Parts.Deck.Id);
    }

    [Fact]
    public void Overrides_hold_and_the_rest_comes_from_the_shelf_part_and_from_the_part_that_it_uses()
    {
        using var place = Tern.Place().Write("tern.board.yaml", Tern.Board
            .Replace("motor: m6374-170", "motor: { use: m6374-170, kind: motor, kv: 200 rpm/V }", StringComparison.Ordinal)
            .Replace("cell: c21700-50", "cell: { use: c21700-50, polarisation: { tau1: 20 s } }", StringComparison.Ordinal)
            .Replace("protection: bms-12s-60", "protection: { use: bms-12s-60, series: 10 }", StringComparison.Ordinal)
            .Replace("  box: dune-tray-620", "  box: dune-tray-620\n  fittings: [gland-12, { use: gland-12, count: 2 }, { thread: M16 }]\n  fuse: fuse-60", StringComparison.Ordinal));
        var loaded = place.Read();

        Assert.Equal("", place.Told(loaded));
        var parts = loaded.Board!.Parts;
        Assert.Equal("m6374-170", parts.Motor.Id);
        Assert.Equal(200, parts.Motor.Kv.Value.RpmPerVolt, 1e-10);
        Assert.Equal(10, parts.Motor.ShaftDiameter.Value.Millimetres, 1e-12);
        Assert.Equal(7, parts.Motor.PolePairs.Value);
        Assert.Equal((12.0, 20.0), (parts.Cell.Polarisation.R1.Value.At(0.5, 298.15) * 1000, parts.Cell.Polarisation.Tau1.Value.Si));
        Assert.Equal(10, parts.Pack.Protection.Series.Value);
        Assert.True(parts.Pack.Protection.RegenThrough.Value);
        Assert.Equal("gland-12 gland-12 ", string.Join(' ', parts.Fittings.Select(fitting => fitting.Id)));
        Assert.Equal("fittings[2].count", parts.Fittings[1].Count.Key);
        Assert.Equal(2, parts.Fittings[1].Count.Value);
        Assert.Equal(12, loaded.Shelf.PartsOfType<Protection>().Single().Series.Value);
        Assert.Equal(30, loaded.Shelf.PartsOfType<Cell>().Single().Polarisation.Tau1.Value.Si);
    }

    [Theory]
    [InlineData("resistance: 25 mohm", 25, 25)]
    [InlineData("resistance: { value: 25 mohm, give: 10 %, from: measured }", 25, 25)]
    [InlineData("resistance: { 10 %: 40 mohm, 90 %: 20 mohm }", 20, 40)]
    [InlineData("resistance: { temperatures: [25 °C], 10 %: 40 mohm, 90 %: [20 mohm] }", 20, 40)]
    [InlineData("resistance: { temperatures: [0 °C, 25 °C], 50 %: [40 mohm, 20 mohm] }", 20, 20)]
    [InlineData("resistance: { value: { 10 %: 40 mohm, 90 %: 20 mohm }, give: 10 % }", 20, 40)]
    public void A_resistance_has_several_forms(string entry, double full, double empty)
    {
        var loaded = BoardFile.ReadText($"boardwright: 1\nparts:\n  cell:\n    {entry}\n", "tern.board.yaml");
        Assert.Empty(loaded.Complaints);
        var resistance = loaded.Board!.Parts.Cell.Resistance;
        Assert.Equal(full, resistance.Value.At(Fraction.FromPercent(90), Temperature.FromCelsius(25)).Milliohms, 1e-9);
        Assert.Equal(empty, resistance.Value.At(Fraction.FromPercent(10), Temperature.FromCelsius(25)).Milliohms, 1e-9);
        Assert.Equal(entry.Contains("give", StringComparison.Ordinal) ? 0.1 : null, resistance.Spread);
    }

    [Theory]
    [InlineData("5 %", 0.5)]
    [InlineData("0.1 mm", 0.1)]
    [InlineData("0.01 in", 0.254)]
    public void A_spread_is_relative_or_absolute(string give, double millimetres)
    {
        var board = BoardFile.ReadText($"boardwright: 1\nparts: {{ motor: {{ shaft_diameter: {{ value: 10 mm, give: {give}, from: maker }} }} }}\n", "tern.board.yaml").Board!;
        Assert.Equal(millimetres / 1000, board.Parts.Motor.ShaftDiameter.Spread!.Value, 1e-15);
        Assert.Equal(Origin.Maker, board.Parts.Motor.ShaftDiameter.From);
    }

    [Theory]
    [InlineData("yes", true)]
    [InlineData("no", false)]
    [InlineData("true", true)]
    [InlineData("false", false)]
    public void Yes_and_no_have_two_spellings(string word, bool meant) =>
        Assert.Equal(meant, BoardFile.ReadText($"boardwright: 1\nparts: {{ pack: {{ protection: {{ regen_through: {word} }} }} }}\n", "tern.board.yaml").Board!.Parts.Pack.Protection.RegenThrough.Value);

    [Fact]
    public void Sections_may_be_empty_while_a_board_grows()
    {
        var loaded = BoardFile.ReadText("boardwright: 1\nbrief:\nparts:\n  motor:\n  fittings:\nwiring:\nlimits:\n", "tern.board.yaml");
        Assert.Empty(loaded.Complaints);
        Assert.False(loaded.Board!.Parts.Motor.IsChosen);
        Assert.Equal("motor.kv", loaded.Board.Parts.Motor.Kv.Key);
    }
}
