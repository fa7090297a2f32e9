using Boardwright.Builds;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Files.Logs;
using Boardwright.Logs;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

public sealed class BuiltFileTests
{
    const string Text = """
        # The shop's own board.
        boardwright: 1
        serial: TERN-0001     # burnt in under the nose
        board: Tern
        revision: 3
        begun: 2026-04-18
        warranty: { from: 2026-05-10, until: 2028-05-09, covers: all but tyres and belts }

        fitted:
          - { part: motor, number: 1, is: m6374-170, batch: B2604-117, serial: "00213", when: 2026-04-19, who: Ada }

        steps:
          # Done in two evenings.
          - step: deck.holes
            when: 2026-04-18 19:30
            who: Ada
          - { step: belt-1.note, when: 2026-04-19 14:05, who: Ada, value: 61 Hz }   # new belt

        bench:
          - { step: motor-1.resistance, when: 2026-04-20 10:00, who: Bo, value: [56 mΩ, 0.0571 ohm, 56.5 mohm], passed: yes }

        notes: []

        rides:
          - { file: rides/harbour.csv, when: 2026-05-03 17:10, distance: 11.8 km, lasting: 37 min, columns: { time: seconds, decimal: point, columns: [t=time, v=speed km/h] }, rows: 22200, bad_rows: 3 }

        unlogged: { distance: 30 km }

        states:
          - { is: in building, when: 2026-04-18, who: Ada }
        """;

    [Fact]
    public void A_built_board_is_read_as_it_is_written()
    {
        var built = Read(Text);

        Assert.Equal(("TERN-0001", "Tern", 3), (built.Serial.Value, built.Board.Value, built.Revision.Value));
        Assert.Equal("2026-04-18 19:30", built.Steps[0].When.Value.ToString());
        Assert.Equal("2026-04-19", built.Fitted[0].When.Value.ToString());
        Assert.Equal(["56 mΩ", "0.0571 ohm", "56.5 mohm"], built.Bench[0].Value.Value.Items);
        Assert.Equal(41_800, built.Ridden.Metres, 1e-9);
        Assert.Equal(37 * 60, built.RidingTime.Seconds, 1e-9);
        Assert.Equal(TimeForm.Seconds, built.Rides[0].Columns.Time.Value);
        Assert.Equal(BoardState.InBuilding, Assert.Single(built.States).Is.Value);
        Assert.Equal("speed km/h", LoggerFile.WishesOf(built.Rides[0].Columns).Columns["V"]);
    }

    [Fact]
    public void What_is_added_stands_behind_what_was_there_and_nothing_else_changes()
    {
        var when = Moment.Read("2026-05-04 09:15")!.Value;
        var text = Text;
        (string List, Sheet Item, string Written)[] all =
        [
            ("steps", new DoneStep { Step = "belt-2.note", When = when, Who = "Ada", Value = new Texts(["60.5 Hz"]), Remark = "hangs free, at last: good" }, "  - { step: belt-2.note, when: 2026-05-04 09:15, who: Ada, value: 60.5 Hz, remark: \"hangs free, at last: good\" }"),
            ("bench", new DoneStep { Step = "pack.rest", When = when, Who = "Bo", Value = new Texts(["41.3 V", "41.2 V"]), Passed = false }, "  - { step: pack.rest, when: 2026-05-04 09:15, who: Bo, value: [41.3 V, 41.2 V], passed: no }"),
            ("notes", new Note { Says = "two\nlines", File = "photos/a.jpg" }, "  - { says: \"two\\nlines\", file: photos/a.jpg }"),
            ("faults", new BoardFault { Says = "belt 2 jumps", Found = when }, "  - { says: belt 2 jumps, found: 2026-05-04 09:15 }"),
            ("rides", new LoggedRide { File = "rides/b.csv", Distance = Length.FromMetres(11_800), Lasting = Duration.FromSeconds(2220),
                Columns = new() { Time = TimeForm.Clock, Columns = new Texts(["t=time"]) } }, "  - { file: rides/b.csv, distance: 11.8 km, lasting: 37 min, columns: { time: clock, columns: t=time } }"),
        ];
        foreach (var (list, item, _) in all)
        {
            var changed = BuiltText.Add(text, list, item);
            Assert.Null(changed.Refusal);
            text = changed.Text;
        }

        var (before, after) = (Text.Split('\n'), text.Split('\n'));
        var added = all.Select(one => one.Written).ToList();
        Assert.Equal(before.Where(line => line != "notes: []"),
            after.Where(line => !added.Contains(line) && line is not ("notes:" or "faults:")).Take(before.Length - 1));
        Assert.All(added, line => Assert.Contains(line, after));
        var built = Read(text);
        Assert.Equal(["deck.holes", "belt-1.note", "belt-2.note"], built.Steps.Select(step => step.Step.Value));
        Assert.Equal("two\nlines", built.Notes[0].Says.Value);
    }

    [Fact]
    public void One_value_is_changed_where_it_stands()
    {
        var text = BuiltText.Add(Text, "faults", new BoardFault { Says = "belt 2 jumps", Found = Moment.Read("2026-05-03")!.Value }).Text;

        text = BuiltText.Change(text, "faults[1].mended", "2026-05-04").Text;
        text = BuiltText.Change(text, "warranty.until", "2029-05-09").Text;

        Assert.True(Read(text).Faults[0].IsMended);
        Assert.Contains("{ from: 2026-05-10, until: 2029-05-09, covers", text, StringComparison.Ordinal);
        Assert.NotNull(BuiltText.Change(text, "states[1].is", "ready to ride").Refusal);
        Assert.NotNull(BuiltText.Change(text, "warranty.until", "tomorrow").Refusal);
    }

    [Fact]
    public void All_that_is_wrong_is_said_at_once_with_line_and_key()
    {
        const string Bad = """
            boardwright: 1
            serial: -x-
            bord: Tern
            revision: 0
            begun: 18.04.2026
            steps:
              - { step: deck.holes, when: 2026-04-18, value: 12 }
              - { when: 2026-04-18, who: Ada, value: 3 bananas }
            notes:
              - { file: ../secret.jpg }
            rides:
              - { file: rides/a.csv, columns: { columns: [v=velocity of swallow] } }
            states:
              - { is: ready, when: 2026-04-18, who: Ada }
            """;
        var loaded = BuiltFile.ReadText(Bad, "x.built.yaml");

        Assert.Null(loaded.Built);
        Assert.Equal(
            [(2, "serial"), (3, "bord"), (4, "revision"), (5, "begun"), (7, "steps[1].who"), (8, "steps[2].step"), (8, "steps[2].value"), (10, "notes[1].file"), (12, "rides[1].columns.columns"), (14, "states[1].is")],
            loaded.Complaints.Select(complaint => (complaint.Line, complaint.Key)));
        Assert.All(loaded.Complaints, complaint => Assert.EndsWith(".", complaint.Remedy, StringComparison.Ordinal));
    }

    [Fact]
    public void The_mapping_of_a_logger_comes_back_as_it_was_confirmed()
    {
        var log = "t;U = pack;v;note\n0,5;50,1;10,5;a\n1,0;50,0;11,5;b\n1,5;50,2;12,5;c\n"u8.ToArray();
        var wishes = new LogWishes
        {
            Columns = new Dictionary<string, string> { ["v"] = "speed m/s", ["U = pack"] = "pack-voltage V", ["t"] = "time", ["note"] = "none" },
            Time = TimeForm.Seconds
        };
        var mapping = RideLogFile.Read(log, "a.csv", wishes).Mapping!;

        var (columns, complaints) = LoggerFile.Read(LoggerFile.Write(mapping), "a.logger.yaml");
        var again = RideLogFile.Read(log, "a.csv", LoggerFile.WishesOf(columns!));

        Assert.Empty(complaints);
        Assert.Equal(mapping.Columns.Select(column => (column.Header, column.IsTime, column.Channel, column.Unit)),
            again.Mapping!.Columns.Select(column => (column.Header, column.IsTime, column.Channel, column.Unit)));
        Assert.Equal((',', TimeForm.Seconds), (again.Mapping.DecimalMark, again.Mapping.Time));
        Assert.Equal(LoggerFile.FingerprintOf(mapping), LoggerFile.FingerprintOf(again.Mapping));
        Assert.Equal(12, LoggerFile.FingerprintOf(mapping).Length);
    }

    static BuiltBoard Read(string text)
    {
        var loaded = BuiltFile.ReadText(text, "tern-0001.built.yaml");
        Assert.Empty(loaded.Complaints);
        return loaded.Built!;
    }
}
