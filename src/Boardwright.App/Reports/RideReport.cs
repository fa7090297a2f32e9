using System.Globalization;
using Boardwright.Files.Routes;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Spreads;

namespace Boardwright.App.Reports;

/// <summary>The report on a ride that a person reads: what was ridden, the totals, where the energy went, how hot it got, what to measure
/// next.</summary>
static class RideReport
{
    const int Bar = 28;

    // What a rider asks first; peaks and root mean squares are for those who choose wires and fuses.
    static readonly IReadOnlyList<FigureKind> Totals =
    [
        RideFigures.Distance, RideFigures.Time, RideFigures.Moving, RideFigures.Energy, RideFigures.Returned, RideFigures.Consumption,
            RideFigures.ChargeLeft,
        RideFigures.LowestCell, RideFigures.PeakPhase, RideFigures.RmsPhase, RideFigures.PeakPack, RideFigures.RmsPack,
            RideFigures.PeakRegen,
    ];

    static readonly IReadOnlyList<FigureKind> Heat = [RideFigures.Winding, RideFigures.Case, RideFigures.Controller, RideFigures.Cells];

    // The rest turns on the same entries.
    static readonly IReadOnlyList<FigureKind> Explained =
        [RideFigures.Distance, RideFigures.Consumption, RideFigures.ChargeLeft, RideFigures.Winding, RideFigures.Controller,
        RideFigures.Cells];

    /// <summary>Writes a report.</summary>
    /// <param name="paper">Where to.</param>
    /// <param name="board">The board.</param>
    /// <param name="ride">The ride.</param>
    /// <param name="spread">How well its figures are known; <c>null</c> where that was not asked for.</param>
    /// <param name="routeNotes">What the reader of the route noticed.</param>
    /// <param name="units">The reader's units.</param>
    public static void Write(
        TerminalText paper, Board board, Ride ride, RideSpread? spread, IReadOnlyList<RouteNote> routeNotes, UnitSystem units)
    {
        paper.Write(0, board.Name.Or("A board without a name"), TerminalStyle.Heading);
        paper.Write(0, BoardSummary.Describe(board));
        paper.Gap();
        paper.Write(0, Ridden(ride, units));
        foreach (var note in routeNotes)
            paper.Write(2, note.Says, TerminalStyle.Quiet);
        Figures(paper, "The ride", Totals, ride, spread, units);
        Energies(paper, ride);
        Figures(paper, "Hottest", Heat, ride, spread, units);
        if (ride.Notes.Count > 0)
        {
            paper.Gap();
            foreach (var note in ride.Notes)
                paper.Write(2, note.In(units), TerminalStyle.Plain, "-");
        }

        Measurements(paper, spread);
        paper.Gap();
        foreach (var caution in Cautions.All)
            paper.Write(0, caution, TerminalStyle.Quiet);
    }

    /// <summary>What was ridden and how it ended, in a sentence.</summary>
    public static string Ridden(Ride ride, UnitSystem units)
    {
        FormattableString how = ride.End switch
        {
            RideEnd.EndOfRoute => $"Ridden: {ride.Road}, {ride.Route:0.0 km}, to its end.",
            RideEnd.Reserve when ride.Laps > 0 => $"Ridden: {ride.Road}, {ride.Route:0.0 km}, {ride.Laps} times and a part of it, until the reserve was reached.",
            RideEnd.Reserve => $"Ridden: {ride.Road}, until the reserve was reached.",
            RideEnd.PowerCut => $"Ridden: {ride.Road}, until power was cut.",
            RideEnd.CannotGoOn => $"Ridden: {ride.Road}, until the board could not go on.",
            _ => $"Ridden: {ride.Road}, until the ride was broken off.",
        };
        return how.ToString(units);
    }

    static void Figures(TerminalText paper, string heading, IReadOnlyList<FigureKind> kinds, Ride ride, RideSpread? spread,
        UnitSystem units)
    {
        paper.Gap();
        paper.Write(0, heading, TerminalStyle.Heading);
        var label = 4 + kinds.Max(k => TerminalText.Cells(k.Title));
        foreach (var kind in kinds)
        {
            if (RideFigures.ValueOf(kind, ride) is not { } value)
                continue;
            var hottest = RideFigures.HottestOf(kind, ride);
            var interval = spread?.Intervals.GetValueOrDefault(kind.Id)
                ?? (hottest is { IsBand: true } ? new Interval(hottest.Low.Celsius, hottest.High.Celsius, []) : null);
            FormattableString at = $", at {(hottest?.At ?? default):0.0 km}";
            paper.Write(label, FigureText.Format(units, value, kind.Unit, interval) + (hottest is null ? "" : at.ToString(units)),
                TerminalStyle.Plain, kind.Title, TerminalStyle.Plain, 2);
            if (interval is { MattersMost.Count: > 0 } && Explained.Contains(kind))
                paper.Write(4, $"Turns most on {string.Join(" and ", interval.MattersMost)}.", TerminalStyle.Quiet);
        }
    }

    static void Energies(TerminalText paper, Ride ride)
    {
        var shares = EnergyShare.Split(ride.Energy).Where(s => Math.Abs(s.Energy.WattHours) >= 0.005).ToList();
        var whole = shares.Sum(s => Math.Max(0, s.Energy.WattHours));
        if (whole <= 0)
            return;
        paper.Gap();
        paper.Write(0, "Where the energy went", TerminalStyle.Heading);
        var label = 4 + shares.Max(s => TerminalText.Cells(s.Title));
        foreach (var share in shares)
        {
            var part = share.Energy.WattHours / whole;
            var bar = new string('=', (int)Math.Round(Bar * Math.Abs(part)));
            var numbers = string.Create(CultureInfo.InvariantCulture, $"{100 * part,5:0.0} % {share.Energy.WattHours,8:0.00} Wh");
            paper.Write(label + TerminalText.Cells(numbers) + 2, bar, TerminalStyle.Quiet,
                TerminalText.Padded(share.Title, label - 2) + numbers, TerminalStyle.Plain, 2);
        }

        paper.Write(2, string.Create(CultureInfo.InvariantCulture, $"Given up inside the cells: {ride.Energy.FromCells / 3600:0.00} Wh; not accounted for: {100 * ride.Energy.Unaccounted:0.0000} %."), TerminalStyle.Quiet);
    }

    static void Measurements(TerminalText paper, RideSpread? spread)
    {
        if (spread is not { MeasureNext.Count: > 0 })
            return;
        Report.WriteMeasurements(paper, spread.MeasureNext, RideFigures.All);
        paper.Gap();
        paper.Write(0, "A range in brackets holds nine times out of ten when the values of the file are as uncertain as they are said to be.", TerminalStyle.Quiet);
    }
}
