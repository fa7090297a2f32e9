using Boardwright.Documents.Charts;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Traction;

namespace Boardwright.Documents.Pictures;

/// <summary>One place where energy goes.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Si">Its amount in the SI unit of whatever is shown; negative where energy comes back.</param>
/// <param name="Kind">0 for the road, 1 for the drive, 2 for pack and wires.</param>
sealed record EnergyPart(string Name, double Si, int Kind);

/// <summary>Where energy goes: bars that add up.</summary>
static class EnergyPicture
{
    /// <summary>Of a board's cruise on the level at half charge.</summary>
    public static Answer<Chart> Draw(Examination examination) => Answer<Chart>.Ask("", needs =>
    {
        var run = needs.Read(examination.Demand);
        var cruise = needs.Read(examination.Cruise);
        if (needs.Unmet || cruise.Steady is not { } steady)
            return null;
        var speed = steady.AtHalf.Speed;
        var split = PowerSplit.Compute(run, steady.AtHalf, 0, 0.5);
        var parts = new EnergyPart[]
        {
            new("air", split.Air / speed, 0),
            new("rolling", split.Rolling / speed, 0),
            new(examination.IsGear ? "gears" : examination.IsBelt ? "belts" : "wheels", split.Gearing / speed, 1),
            new("motor drag", split.Drag / speed, 1),
            new("motor copper", split.Copper / speed, 1),
            new("controllers", split.Controllers / speed, 1),
            new("wiring", split.Wiring / speed, 2),
            new("links in the pack", split.Links / speed, 2),
            new("cells", split.Cells / speed, 2),
        };
        var consumption = EnergyPerDistance.FromJoulesPerMetre(split.AtTerminals / speed);
        return Bars<EnergyPerDistance>(
            "energy",
            BoardPictures.Title(examination, "where the energy of the cruise goes"),
            Axis.For<EnergyPerDistance>("energy for the distance", "Wh/km"),
            [.. parts.Where(p => p.Si != 0)],
            "out of the charge",
            new($"At {Speed.FromMetresPerSecond(speed)} on the level at half charge. {consumption:0.00 Wh/km} leave the cells at their terminals, which is what the consumption counts; the last bar warms the cells themselves."));
    });

    /// <summary>Of a whole ride.</summary>
    /// <param name="board">The board.</param>
    /// <param name="ride">The ride.</param>
    /// <returns>The chart, or <c>null</c> when the ride took no energy.</returns>
    public static Chart? Draw(Board board, Ride ride)
    {
        var shares = EnergyShare.Split(ride.Energy).Where(s => Math.Abs(s.Energy.WattHours) >= 0.005)
            .Select(s => new EnergyPart(s.Title, s.Energy.Joules, s.Id switch
            {
                "air" or "rolling" or "grade" or "motion" or "foot_brake" => 0,
                "wiring" or "links" or "cells" or "polarisation" => 2,
                _ => 1,
            })).ToArray();
        return shares.Length == 0 ? null : Bars<Energy>(
            "ride-energy",
            BoardPictures.Title(board, $"where the energy went, {ride.Road}"),
            Axis.For<Energy>("energy", "Wh"),
            shares,
            "out of the charge",
            Phrase.Join(
                new($"{ride.Distance:0.0 km} in {ride.Time:0.0 min}."),
                new($"{Energy.FromJoules(ride.Energy.Delivered):0.0 Wh} left the cells at their terminals, and the brake returned {Energy.FromJoules(ride.Energy.Returned):0.0 Wh}; the last bars warm the cells themselves.")));
    }

    /// <summary>Bars for any list of parts, such as those of a whole ride.</summary>
    /// <typeparam name="T">What is shown: energy, energy for a distance, power.</typeparam>
    /// <param name="name">Name of the chart.</param>
    /// <param name="title">Its title.</param>
    /// <param name="axis">The axis across.</param>
    /// <param name="parts">The parts, from the top down.</param>
    /// <param name="sum">Name of the sum.</param>
    /// <param name="says">What is to be seen.</param>
    public static Chart Bars<T>(string name, string title, Axis axis, IReadOnlyList<EnergyPart> parts, string sum, Phrase says)
        where T : struct, IQuantity<T>
    {
        var whole = parts.Sum(p => p.Si);
        var finest = axis.UnitIn(UnitSystem.Metric).FromSi(Math.Abs(whole)) switch { < 20 => 2, < 200 => 1, _ => 0 };
        // A part of less than a hundredth would be written as nothing.
        string Digits(double si) =>
            (Math.Abs(si) < 0.01 * whole ? Math.Min(2, finest + 1) : finest) switch { 0 => "0 ", 1 => "0.0 ", _ => "0.00 " } + axis.Unit;
        var bars = new List<Bar>();
        var reached = 0.0;
        foreach (var part in parts)
        {
            bars.Add(new Bar(part.Name, reached, reached + part.Si, new Phrase(Amount(part.Si)), part.Kind));
            reached += part.Si;
        }

        bars.Add(new Bar(sum, 0, whole, new Phrase(FormattableString("{0:" + Digits(whole) + "}", T.FromSi(whole))), IsSum: true));
        return new Chart { Name = name, Title = title, Says = says, Across = axis with { From = 0 }, Panels = [new BarPanel(bars)] };

        FormattableString Amount(double si) => whole > 0
            ? FormattableString("{0:" + Digits(si) + "}, {1:0.0} %", T.FromSi(si), 100 * si / whole)
            : FormattableString("{0:" + Digits(si) + "}", T.FromSi(si));
    }

    static FormattableString FormattableString(string format, params object[] arguments) =>
        System.Runtime.CompilerServices.FormattableStringFactory.Create(format, arguments);
}
