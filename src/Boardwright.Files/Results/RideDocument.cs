using System.Globalization;
using System.Text;
using System.Text.Json;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Spreads;

namespace Boardwright.Files.Results;

/// <summary>A ride for other programs: a JSON document, or its trace as comma-separated values. Always in metric units, and the same bytes
/// for the same ride.</summary>
public static class RideDocument
{
    static readonly (string Name, Func<RideMoment, double> Of)[] Columns =
    [
        ("time_s", m => m.State.Seconds),
        ("distance_m", m => m.State.Metres),
        ("speed_km_h", m => 3.6 * m.State.Speed),
        ("grade_%", m => 100 * m.Grade),
        ("force_N", m => m.Force),
        ("foot_brake_N", m => m.FootBrake),
        ("phase_current_A", m => m.PhaseCurrent),
        ("pack_current_A", m => m.PackCurrent),
        ("bus_V", m => m.BusVolts),
        ("bus_power_W", m => m.PackCurrent * m.BusVolts),
        ("cell_V", m => m.CellVolts),
        ("charge_%", m => 100 * m.State.Charge),
        ("winding_C", m => m.State.Winding - 273.15),
        ("case_C", m => m.State.Case - 273.15),
        ("controller_C", m => m.State.Controller - 273.15),
        ("cells_C", m => m.State.Cells - 273.15),
    ];

    /// <summary>Writes a ride.</summary>
    /// <param name="board">The board.</param>
    /// <param name="ride">The ride.</param>
    /// <param name="spread">How well its figures are known; <c>null</c> where that was not asked for.</param>
    public static string Write(Board board, Ride ride, RideSpread? spread = null) => ResultDocument.Document(json =>
    {
        json.WriteString("board", board.Name.Or(""));
        json.WriteString("road", ride.Road);
        json.WriteString("end", Entry.Word(ride.End));
        json.WriteString("held_back", ride.HeldBack == RideLimit.Nothing ? null : Entry.Word(ride.HeldBack));
        json.WriteStartArray("results");
        foreach (var kind in RideFigures.All)
        {
            var interval = spread?.Intervals.GetValueOrDefault(kind.Id);
            var band = RideFigures.HottestOf(kind, ride) is { IsBand: true } hottest ? hottest : null;
            json.WriteStartObject();
            json.WriteString("id", kind.Id);
            ResultDocument.Number(json, "value", RideFigures.ValueOf(kind, ride));
            json.WriteString("unit", kind.Unit);
            ResultDocument.Number(json, "low", interval?.Low ?? band?.Low.Celsius);
            ResultDocument.Number(json, "high", interval?.High ?? band?.High.Celsius);
            if (RideFigures.HottestOf(kind, ride) is { } where)
                ResultDocument.Number(json, "at_km", where.At.Kilometres);
            ResultDocument.Texts(json, "matters_most", interval?.MattersMost ?? []);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartObject("energy_Wh");
        foreach (var share in EnergyShare.Split(ride.Energy))
            json.WriteNumber(share.Id, share.Energy.WattHours);
        json.WriteNumber("from_cells", ride.Energy.FromCells / 3600);
        json.WriteNumber("unaccounted", (ride.Energy.FromCells - ride.Energy.Used) / 3600);
        json.WriteEndObject();
        json.WriteStartObject("held_back_min");
        foreach (var (what, time) in ride.HeldBackFor)
            json.WriteNumber(Entry.Word(what), time.Minutes);
        json.WriteEndObject();
        ResultDocument.Texts(json, "notes", [.. ride.Notes.Select(n => n.In(UnitSystem.Metric))]);
        ResultDocument.MeasureNext(json, spread?.MeasureNext ?? []);
        if (ride.Trace.Count > 0)
            Trace(json, ride.Trace);
    });

    /// <summary>Writes the trace of a ride: a line of names, then a line for each moment kept.</summary>
    public static string WriteTable(Ride ride)
    {
        var text = new StringBuilder(string.Join(',', Columns.Select(c => c.Name))).Append(",held_back\n");
        foreach (var moment in ride.Trace)
        {
            foreach (var (_, of) in Columns)
                text.Append(of(moment).ToString("G7", CultureInfo.InvariantCulture)).Append(',');
            text.Append(moment.HeldBack == RideLimit.Nothing ? "" : Entry.Word(moment.HeldBack)).Append('\n');
        }

        return text.ToString();
    }

    static void Trace(Utf8JsonWriter json, IReadOnlyList<RideMoment> trace)
    {
        json.WriteStartObject("trace");
        foreach (var (name, of) in Columns)
        {
            json.WriteStartArray(name);
            foreach (var moment in trace)
                json.WriteNumberValue(of(moment));
            json.WriteEndArray();
        }

        ResultDocument.Texts(json, "held_back", [.. trace.Select(m => m.HeldBack == RideLimit.Nothing ? "" : Entry.Word(m.HeldBack))]);
        json.WriteEndObject();
    }
}
