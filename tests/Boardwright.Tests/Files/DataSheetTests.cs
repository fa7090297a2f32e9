using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

/// <summary>Values go into a board file as data sheets print them.</summary>
public sealed class DataSheetTests
{
    [Theory]
    [InlineData("motor", "line_resistance: 56 mΩ", "motor.line_resistance", 0.056)]
    [InlineData("motor", "line_resistance: 0.056 Ohm", "motor.line_resistance", 0.056)]
    [InlineData("motor", "line_resistance: 56mOhm", "motor.line_resistance", 0.056)]
    [InlineData("cell", "capacity: 5000mAh", "cell.capacity", 18000)]
    [InlineData("cell", "capacity: 5000 mAh", "cell.capacity", 18000)]
    [InlineData("cell", "voltage_full: 4.2V", "cell.voltage_full", 4.2)]
    [InlineData("cell", "voltage_full: 4.2 V", "cell.voltage_full", 4.2)]
    [InlineData("cell", "discharge_current: 15A", "cell.discharge_current", 15)]
    [InlineData("controller", "pack_current: 60A", "controller.pack_current", 60)]
    [InlineData("belt", "length: 285mm", "belt.length", 0.285)]
    [InlineData("belt", "length: 285 mm", "belt.length", 0.285)]
    [InlineData("motor", "can: 63 x 74", "motor.can_diameter", 0.063)]
    [InlineData("motor", "can: 63 x 74", "motor.can_length", 0.074)]
    [InlineData("motor", "can: 63x74mm", "motor.can_length", 0.074)]
    [InlineData("motor", "can: 63 mm × 74 mm", "motor.can_length", 0.074)]
    [InlineData("motor", "can: 2.5 x 2.9 in", "motor.can_diameter", 0.0635)]
    [InlineData("wheels", "size: 107 x 65", "wheels.width", 0.065)]
    [InlineData("controller", "size: 110*74*26 mm", "controller.height", 0.026)]
    [InlineData("box", "inner: 590 x 152 x 52 mm", "box.inner_depth", 0.052)]
    public void A_quantity_is_read_as_a_sheet_prints_it(string place, string line, string key, double si)
    {
        var board = Read($"parts:\n  {place}: {{ {line} }}\n");

        Assert.Equal(si, ((IQuantity)Known(board, key).Content!).Si, 1e-9);
        Assert.NotNull(BoardText.Read($"boardwright: 1\nparts:\n  {place}: {{ {line} }}\n", key));
    }

    [Theory]
    [InlineData("190 KV")]
    [InlineData("190KV")]
    [InlineData("190 kv")]
    [InlineData("190 Kv")]
    [InlineData("190 RPM/V")]
    [InlineData("190 rpm/V")]
    [InlineData("190")]
    public void A_speed_constant_is_read_as_a_sheet_prints_it(string written)
    {
        Assert.Equal(190, Read($"parts:\n  motor: {{ kv: {written} }}\n").Parts.Motor.Kv.Value.RpmPerVolt, 1e-9);
        Assert.Equal("190 rpm/V", QuantityText.Write(SpeedConstant.FromRpmPerVolt(190).Si, SpeedConstant.Dimension));
    }

    [Fact]
    public void A_belt_goes_by_its_teeth_or_by_its_length()
    {
        Assert.Equal(57, Read("parts:\n  belt: { profile: HTD 5M, teeth: 57 }\n").Parts.Belt.Teeth.Value);
        Assert.Equal(285, Read("parts:\n  belt: { profile: HTD 5M, length: 285 mm }\n").Parts.Belt.Length.Value.Millimetres, 1e-9);
    }

    [Theory]
    [InlineData("pack: 12S4P")]
    [InlineData("pack: 12s4p")]
    [InlineData("pack: 12S 4P")]
    [InlineData("pack: { cells: 12S4P }")]
    public void A_pack_is_counted_as_packs_are_sold(string line)
    {
        var text = $"boardwright: 1\nparts:\n  {line}\n";
        var pack = BoardFile.ReadText(text, "a.board.yaml").Board!.Parts.Pack;

        Assert.Equal((12, 4), (pack.Series.Value, pack.Parallel.Value));
        Assert.Equal("pack.series", pack.Series.Key);
        Assert.Equal(new Entered("4"), BoardText.Read(text, "pack.parallel"));
        Assert.Equal("XT90", BoardFile.ReadText(BoardText.Change(text, "pack.plug", "XT90").Text, "a.board.yaml").Board!.Parts.Pack.Plug.Value);
        var ten = BoardFile.ReadText(BoardText.Change(text, "pack.series", "10").Text, "a.board.yaml").Board!.Parts.Pack;
        Assert.Equal((10, 4), (ten.Series.Value, ten.Parallel.Value));
    }

    [Fact]
    public void What_stands_by_itself_goes_before_what_is_joined_and_both_go_before_the_shelf()
    {
        var motor = Read("parts:\n  motor: { can_diameter: 64 mm, can: 63 x 74 mm }\n").Parts.Motor;
        Assert.Equal((64, 74), (Math.Round(motor.CanDiameter.Value.Millimetres), Math.Round(motor.CanLength.Value.Millimetres)));

        const string text = "boardwright: 1\nparts:\n  motor: { can: 63 x 74 mm ? }   # as sold\n";
        Assert.Equal(text.Replace("63 x 74 mm ?", "63 mm x 70 mm", StringComparison.Ordinal), BoardText.Change(text, "motor.can_length", "70 mm").Text);
        var measured = BoardFile.ReadText(BoardText.Change(text, "motor.can_length", new Entered("70 mm", null, "measured")).Text, "a.board.yaml").Board!.Parts.Motor;
        Assert.Equal((63, 70), (Math.Round(measured.CanDiameter.Value.Millimetres), Math.Round(measured.CanLength.Value.Millimetres)));
        Assert.Equal((Origin.Guess, Origin.Measured), (measured.CanDiameter.From, measured.CanLength.From));
    }

    [Fact]
    public void A_joined_value_says_how_well_it_is_known()
    {
        var guess = Read("parts:\n  motor: { can: 63 x 74 mm ? }\n  pack: 12S4P ?\n");
        var measured = Read("parts:\n  motor: { can: { value: 63 x 74 mm, give: 0.1 mm, from: measured } }\n").Parts.Motor;

        Assert.Equal((Origin.Guess, Origin.Guess), (guess.Parts.Motor.CanLength.From, guess.Parts.Pack.Series.From));
        Assert.Equal((Origin.Measured, 0.0001), (measured.CanDiameter.From, measured.CanDiameter.Spread));
    }

    [Theory]
    [InlineData("motor: { can: 63 }", "motor.can", "'63' is not diameter x length, which motor.can wants.", "such as 63 x 74 mm.")]
    [InlineData("motor: { can: 63 x 74 kg }", "motor.can", "'63 kg' is a mass; motor.can wants a length.", "such as 63 mm.")]
    [InlineData("motor: { can: [63, 74] }", "motor.can", "A list stands where motor.can wants diameter x length.", "such as 63 x 74 mm.")]
    [InlineData("pack: 12S", "pack", "'12S' stands where pack wants a part.", "as in 12S4P or { series: 12, parallel: 4 }.")]
    [InlineData("pack: { cells: twelve }", "pack.cells", "'twelve' is not cells in series and parallel", "such as 12S4P.")]
    [InlineData("motor: { line_resistance: 56 }", "motor.line_resistance", "'56' has no unit, and motor.line_resistance wants a resistance.", "such as 56 mohm.")]
    public void A_wrong_value_names_file_line_key_and_remedy(string line, string key, string says, string remedy)
    {
        var complaint = BoardFile.ReadText($"boardwright: 1\nparts:\n  {line}\n", "a.board.yaml").Complaints[0];

        Assert.Equal(("a.board.yaml", 3, key), (complaint.File, complaint.Line, complaint.Key));
        Assert.Contains(says, complaint.Says, StringComparison.Ordinal);
        Assert.EndsWith(remedy, complaint.Remedy, StringComparison.Ordinal);
    }

    static Board Read(string text)
    {
        var loaded = BoardFile.ReadText("boardwright: 1\n" + text, "a.board.yaml");
        Assert.Empty(loaded.Complaints);
        return loaded.Board!;
    }

    static IKnown Known(Board board, string key)
    {
        object sheet = board.Parts;
        foreach (var word in key.Split('.'))
            sheet = Entry.ListEntries(sheet.GetType()).Single(entry => entry.Key == word).Read((Sheet)sheet);
        return (IKnown)sheet;
    }
}
