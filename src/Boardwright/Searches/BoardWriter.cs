using System.Globalization;
using Boardwright.Parts;
using Boardwright.Wiring;

namespace Boardwright.Searches;

/// <summary>A found board as it is written in a file, so that reading it gives the same numbers.</summary>
static class BoardWriter
{
    /// <summary>Keys and values besides those of the request's board.</summary>
    public static IReadOnlyList<(string Key, string Text)> Entries(CandidateParts offers, ReadOnlySpan<int> pick, Board board)
    {
        var (asked, parts) = (offers.Request.Board, board.Parts);
        var entries = new List<(string, string)>(offers.Assumptions.Select(a => (a.Key, a.Text)));

        void Put(string key, bool isOpen, string text)
        {
            if (isOpen && text.Length > 0)
                entries.Add((key, text));
        }

        void Set<T>(Known<T> before, Known<T> now, string unit)
            where T : struct, IQuantity<T>
        {
            if (!before.IsKnown && now.IsKnown)
                entries.Add((now.Key, Number(now.Value, unit)));
        }

        var chosen = asked.Parts;
        Put("deck", !chosen.Deck.IsChosen, parts.Deck.Id);
        Put("front_truck", !chosen.FrontTruck.IsChosen, parts.FrontTruck.Id);
        Put("rear_truck", !chosen.RearTruck.IsChosen, parts.RearTruck.Id);
        Put("wheels", !chosen.Wheels.IsChosen, parts.Wheels.Id);
        Put("drive.kind", !chosen.Drive.Kind.IsKnown, Entry.Word(parts.Drive.Kind.Value));
        Put("drive.motors", !chosen.Drive.Motors.IsKnown, parts.Drive.Motors.Value.ToString(CultureInfo.InvariantCulture));
        Put("drive.placement", !chosen.Drive.Placement.IsKnown && parts.Drive.Placement.IsKnown, Entry.Word(parts.Drive.Placement.Or(default)));
        Set(chosen.Drive.MountAngle, parts.Drive.MountAngle, "deg");
        Put("mount", !chosen.Mount.IsChosen, parts.Mount.Id);
        Put("motor", !chosen.Motor.IsChosen, parts.Motor.Id);
        Put("motor_pulley", !chosen.MotorPulley.IsChosen, parts.MotorPulley.Id);
        Put("wheel_pulley", !chosen.WheelPulley.IsChosen, parts.WheelPulley.Id);
        Put("belt", !chosen.Belt.IsChosen, parts.Belt.Id);
        Put("gearbox", !chosen.Gearbox.IsChosen, parts.Gearbox.Id);
        Put("controller", !chosen.Controller.IsChosen, parts.Controller.Id);
        Put("cell", !chosen.Cell.IsChosen, parts.Cell.Id);
        Put("pack.series", !chosen.Pack.Series.IsKnown, parts.Pack.Series.Value.ToString(CultureInfo.InvariantCulture));
        Put("pack.parallel", !chosen.Pack.Parallel.IsKnown, parts.Pack.Parallel.Value.ToString(CultureInfo.InvariantCulture));
        Put("pack.protection", !chosen.Pack.Protection.IsChosen, parts.Pack.Protection.Id);
        Put("pack.plug", !chosen.Pack.Plug.IsKnown, parts.Pack.Plug.Or(""));
        Set(chosen.Pack.MassExtra, parts.Pack.MassExtra, "g");
        Set(chosen.Pack.Links, parts.Pack.Links, "mohm");
        Set(chosen.Pack.Length, parts.Pack.Length, "mm");
        Set(chosen.Pack.Width, parts.Pack.Width, "mm");
        Set(chosen.Pack.Height, parts.Pack.Height, "mm");
        Put("charger", !chosen.Charger.IsChosen, parts.Charger.Id);
        Put("remote", !chosen.Remote.IsChosen, parts.Remote.Id);
        Put("box", !chosen.Box.IsChosen, parts.Box.Id);
        Put("fuse", !chosen.Fuse.IsChosen, parts.Fuse.Id);
        Set(asked.Limits.PhaseCurrent, board.Limits.PhaseCurrent, "A");
        Set(asked.Limits.BrakePhaseCurrent, board.Limits.BrakePhaseCurrent, "A");
        Set(asked.Limits.PackCurrent, board.Limits.PackCurrent, "A");
        Set(asked.Limits.RegenCurrent, board.Limits.RegenCurrent, "A");
        Set(asked.Limits.TaperStart, board.Limits.TaperStart, "V");
        Set(asked.Limits.TaperEnd, board.Limits.TaperEnd, "V");
        return entries;
    }

    /// <summary>Runs of wire as items of a list.</summary>
    public static IReadOnlyList<string> Wires(Board board) =>
    [
        .. board.Wiring.Select(run =>
        {
            var plug = run.Plug.IsKnown ? $", plug: {run.Plug.Value}" : "";
            return $"{{ from: {run.From.Value}, to: {run.To.Value}, gauge: {WireGauge.Nearest(run.Gauge.Value).Name}, length: {Number(run.Length.Value, "mm")}{plug} }}";
        }),
    ];

    /// <summary>A value with the fewest digits that are read as the same number.</summary>
    static string Number<T>(T value, string symbol)
        where T : struct, IQuantity<T>
    {
        var unit = T.Dimension.Find(symbol)!;
        var written = unit.FromSi(value.Si);
        for (var digits = 1; digits < 17; digits++)
        {
            var text = written.ToString($"G{digits}", CultureInfo.InvariantCulture);
            if (!text.Contains('E', StringComparison.Ordinal) && unit.ToSi(double.Parse(text, CultureInfo.InvariantCulture)) == value.Si)
                return $"{text} {symbol}";
        }

        return $"{written.ToString("R", CultureInfo.InvariantCulture)} {symbol}";
    }
}
