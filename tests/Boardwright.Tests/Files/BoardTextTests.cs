using Boardwright.Files.Boards;
using Boardwright.Parts;
using CsCheck;

namespace Boardwright.Tests.Files;

public sealed class BoardTextTests
{
    const string Small = """
        boardwright: 1   # first
        name: 'Tern'
        brief: { rider_mass: 80 kg, }   # rider
        parts:
          deck: marram-96    # the deck
          wheels: { use: cobble-100, count: 4 }
          motor:
            kv: { value: 170 rpm/V, give: 5 % }
            # not measured yet
            note: |
              two
              lines
          pack: { series: 12, protection: bms }
          cell: c21700
          box: {}
          remote:
        wiring:
          - from: pack
            to: controller   # short
          - { from: controller, to: motors }
        limits:   # none yet

        """;

    [Theory]
    [InlineData("pack", "layout:\n  pack: { x: 12 mm, y: 0 mm, turn: 90 deg }\n")]
    [InlineData("gland 2", "layout:\n  gland 2: { wall: rear, along: -40 mm }\n")]
    public void A_thing_gets_its_place_in_one_line(string name, string expected)
    {
        (string, string)[] entries = name == "pack" ? [("x", "12 mm"), ("y", "0 mm"), ("turn", "90 deg")] : [("wall", "rear"), ("along", "-40 mm")];
        var changed = BoardText.Place(Small, name, entries);

        Assert.Null(changed.Refusal);
        Assert.Equal(Small.TrimEnd() + "\n" + expected.TrimEnd(), changed.Text.TrimEnd());
    }

    [Fact]
    public void A_thing_is_moved_without_touching_what_stands_beside_it()
    {
        var text = Small + """
            layout:   # as it was drilled
              pack: { x: 12 mm, turn: 0 deg }   # against the front
              # the left one is for the left motor
              gland 1:
                wall: rear   # the only one
                along: 30 mm
            """;
        var pack = BoardText.Place(text, "pack", [("x", "10 mm"), ("y", "-2 mm"), ("turn", "180 deg")]);
        var gland = BoardText.Place(pack.Text, "gland 1", [("wall", "left"), ("along", "30 mm")]);
        var floor = BoardText.Place(gland.Text, "gland 1", [("x", "1 mm")]);

        Assert.Equal(text.Replace("x: 12 mm, turn: 0 deg }", "x: 10 mm, turn: 180 deg, y: -2 mm }", StringComparison.Ordinal), pack.Text);
        Assert.Equal(pack.Text.Replace("wall: rear ", "wall: left ", StringComparison.Ordinal), gland.Text);
        Assert.Contains("gland 1:\n    x: 1 mm", floor.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("along", floor.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("name", "Ling", "name: 'Tern'", "name: Ling")]
    [InlineData("name", "a: b", "name: 'Tern'", "name: \"a: b\"")]
    [InlineData("name", "say \"yes\"\\", "name: 'Tern'", "name: say \"yes\"\\")]
    [InlineData("name", "# \"no\"", "name: 'Tern'", "name: \"# \\\"no\\\"\"")]
    [InlineData("brief.rider_mass", "82 kg", "rider_mass: 80 kg", "rider_mass: 82 kg")]
    [InlineData("brief.gear_mass", "5 kg", "rider_mass: 80 kg, }", "rider_mass: 80 kg, gear_mass: 5 kg }")]
    [InlineData("wheels.count", "3", "count: 4", "count: 3")]
    [InlineData("wheels.mass", "260 g", "count: 4 }", "count: 4, mass: 260 g }")]
    [InlineData("wheels", "cobble-90", "use: cobble-100", "use: cobble-90")]
    [InlineData("motor.kv", "190 rpm/V", "value: 170 rpm/V", "value: 190 rpm/V")]
    [InlineData("motor.note", "one line", "note: |\n      two\n      lines", "note: one line")]
    [InlineData("motor.pole_pairs", "7", "      lines\n", "      lines\n    pole_pairs: 7\n")]
    [InlineData("deck", "marram-80", "deck: marram-96 ", "deck: marram-80 ")]
    [InlineData("deck.mass", "2.1 kg", "deck: marram-96 ", "deck: { use: marram-96, mass: 2.1 kg } ")]
    [InlineData("deck.note", "a, b", "deck: marram-96 ", "deck: { use: marram-96, note: \"a, b\" } ")]
    [InlineData("cell.polarisation.R1", "12 mohm", "cell: c21700", "cell: { use: c21700, polarisation: { R1: 12 mohm } }")]
    [InlineData("pack.protection.series", "12", "protection: bms", "protection: { use: bms, series: 12 }")]
    [InlineData("pack.parallel", "4", "protection: bms }", "protection: bms, parallel: 4 }")]
    [InlineData("box.wall", "3 mm", "box: {}", "box: { wall: 3 mm }")]
    [InlineData("remote", "palm-2g4", "remote:\n", "remote: palm-2g4\n")]
    [InlineData("remote.port", "pulse 3-pin", "remote:\n", "remote:\n    port: pulse 3-pin\n")]
    [InlineData("charger", "ch-12s", "remote:\n", "remote:\n  charger: ch-12s\n")]
    [InlineData("charger.voltage", "50.4 V", "remote:\n", "remote:\n  charger:\n    voltage: 50.4 V\n")]
    [InlineData("deck.note", "?", "deck: marram-96 ", "deck: { use: marram-96, note: \"?\" } ")]
    [InlineData("wiring[1].to", "charger", "to: controller ", "to: charger ")]
    [InlineData("wiring[1].gauge", "AWG 10", "# short\n", "# short\n    gauge: AWG 10\n")]
    [InlineData("wiring[2].gauge", "AWG 12", "to: motors }", "to: motors, gauge: AWG 12 }")]
    [InlineData("limits.phase_current", "60 A", "limits:   # none yet\n", "limits:   # none yet\n  phase_current: 60 A\n")]
    [InlineData("money.overhead", "12 %", "limits:   # none yet\n", "limits:   # none yet\nmoney:\n  overhead: 12 %\n")]
    [InlineData("fixings.box.count", "6", "limits:   # none yet\n", "limits:   # none yet\nfixings:\n  box:\n    count: 6\n")]
    public void One_value_changes_and_nothing_else(string key, string value, string from, string to)
    {
        Assert.Equal(1, Small.Split(from).Length - 1);
        Changes(Small);
        Changes("\uFEFF" + Small);
        if (!from.Contains('|'))
            Changes(Small.Replace("\n", "\r\n", StringComparison.Ordinal), "\r\n");

        void Changes(string text, string line = "\n")
        {
            var changed = BoardText.Change(text, key, value);
            Assert.Null(changed.Refusal);
            Assert.Equal(text.Replace(
                from.Replace("\n", line, StringComparison.Ordinal), to.Replace("\n", line, StringComparison.Ordinal), StringComparison.Ordinal),
                changed.Text);
        }
    }

    [Theory]
    [InlineData("motr.kv", "3", "not a key")]
    [InlineData("motor.colour", "red", "not a key")]
    [InlineData("limits", "3", "not a key")]
    [InlineData("pack", "3", "not a key")]
    [InlineData("wiring", "3", "not a key")]
    [InlineData("wiring[0].to", "x", "not a key")]
    [InlineData("wiring[x].to", "x", "not a key")]
    [InlineData("wiring[3].to", "x", "no such item")]
    [InlineData("fittings[1].thread", "M12", "no such item")]
    [InlineData("motor", "m6374", "several entries")]
    [InlineData("name", "", "Nothing is written")]
    [InlineData("name", "a\0b", "cannot be printed")]
    public void What_is_not_one_value_is_refused(string key, string value, string says)
    {
        var changed = BoardText.Change(Small, key, value);
        Assert.Equal(Small, changed.Text);
        Assert.Contains(says, changed.Refusal!.Says, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_that_is_not_in_order_is_left_alone()
    {
        var changed = BoardText.Change("a: [", "name", "Tern");
        Assert.Equal("a: [", changed.Text);
        Assert.NotNull(changed.Refusal);
    }

    [Fact]
    public void A_line_without_an_end_gets_a_neighbour() =>
        Assert.Equal("boardwright: 1\nname: Tern", BoardText.Change("boardwright: 1", "name", "Tern").Text);

    [Fact]
    public void Any_text_lands_as_it_was_written() =>
        Gen.Select(Gen.String[Gen.OneOf(
        "#: ,[]{}'\"\\&*!|>%@`-?ab1\n\té😀".EnumerateRunes().Select(rune => rune.ToString()).Where(text => text.Length == 1).Select(text => text[0]).ToArray()), 1, 12],
        Gen.Bool).Sample((value, first) =>
        {
            if (string.IsNullOrWhiteSpace(value) || value.Contains('\t'))
                return true;
            var changed = BoardText.Change(Starter.Text("Tern"), first ? "name" : "remote.note", value);
            var board = BoardFile.ReadText(changed.Text, "tern.board.yaml").Board!;
            return (first ? board.Name.Value : board.Parts.Remote.Note.Value) == value;
        });

    /// <summary>Every quantity of the starter board can be set, read back, and set to what it was.</summary>
    [Fact]
    public void Every_value_can_be_changed_and_changed_back()
    {
        var text = Starter.Text("Tern");
        foreach (var place in BoardFile.ReadText(text, "tern.board.yaml").Places.Keys.Where(key => key.Contains('.')))
        {
            var changed = BoardText.Change(text, place, "1 mm");
            if (changed.Refusal is null)
                Assert.Equal(text.Split('\n').Length, changed.Text.Split('\n').Length);
        }

        var there = BoardText.Change(text, "limits.pack_current", "41 A").Text;
        Assert.Equal(41, BoardFile.ReadText(there, "tern.board.yaml").Board!.Limits.PackCurrent.Value.Amperes);
        Assert.Equal(there, BoardText.Change(BoardText.Change(there, "limits.pack_current", "42 A").Text, "limits.pack_current", "41 A").Text);
    }

    [Theory]
    [InlineData("brief.rider_mass", "82 kg", "2 kg", "measured", "rider_mass: 80 kg", "rider_mass: { value: 82 kg, give: 2 kg, from: measured }")]
    [InlineData("motor.kv", "168 rpm/V", null, "measured", "{ value: 170 rpm/V, give: 5 % }", "{ value: 168 rpm/V, from: measured }")]
    [InlineData("motor.kv", "168 rpm/V", null, null, "{ value: 170 rpm/V, give: 5 % }", "168 rpm/V")]
    [InlineData("cell.capacity", "5 Ah", "1 %", null, "cell: c21700", "cell: { use: c21700, capacity: { value: 5 Ah, give: 1 % } }")]
    public void A_value_is_stated_with_its_origin_and_spread(
        string key, string value, string? give, string? from, string before, string after)
    {
        var changed = BoardText.Change(Small, key, new Entered(value, give, from));

        Assert.Null(changed.Refusal);
        Assert.Equal(Small.Replace(before, after, StringComparison.Ordinal), changed.Text);
        Assert.Equal(new Entered(value, give, from), BoardText.Read(changed.Text, key));
    }

    [Theory]
    [InlineData("wheels.count", "{ use: cobble-100, count: 4 }", "{ use: cobble-100 }")]
    [InlineData("pack.series", "{ series: 12, protection: bms }", "{ protection: bms }")]
    [InlineData("deck", "  deck: marram-96    # the deck\n", "")]
    [InlineData("motor.kv", "    kv: { value: 170 rpm/V, give: 5 % }\n", "")]
    [InlineData("motor.phase_resistance", "", "")]
    public void A_value_is_taken_out_and_nothing_else(string key, string before, string after)
    {
        var changed = BoardText.Remove(Small, key);

        Assert.Null(changed.Refusal);
        Assert.Equal(before.Length == 0 ? Small : Small.Replace(before, after, StringComparison.Ordinal), changed.Text);
        Assert.Null(BoardText.Read(changed.Text, key));
    }

    [Fact]
    public void What_stands_where_an_item_of_a_list_begins_is_not_cut_with_its_dash()
    {
        var changed = BoardText.Remove(Small, "wiring[1].from");

        Assert.NotNull(changed.Refusal);
        Assert.Equal(Small, changed.Text);
        Assert.Equal(Small.Replace("{ from: controller, to: motors }", "{ to: motors }", StringComparison.Ordinal), BoardText.Remove(Small, "wiring[2].from").Text);
    }

    [Fact]
    public void A_comment_beside_the_comma_of_what_is_taken_out_stays()
    {
        const string Text = "brief: {\n  rider_mass: 80 kg, # with boots\n  gear_mass: 5 kg }\n";

        Assert.Equal("brief: {\n   # with boots\n  gear_mass: 5 kg }\n", BoardText.Remove(Text, "brief.rider_mass").Text);
    }

    [Fact]
    public void An_item_is_added_behind_a_list_in_brackets_and_not_into_its_last_item() =>
        Assert.Equal("rides: [{ file: a.csv }, { file: b.csv }]\n", BoardText.Append("rides: [{ file: a.csv }]\n", "rides", "{ file: b.csv }").Text);
}
