using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Packs;
using Boardwright.Parts;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The sheet for the carrier: what travels, under which number it is likely to go, and what the builder has still to
/// prove.</summary>
static class CarrierSheet
{
    public static IReadOnlyList<Block> Compose(PaperContext gathering)
    {
        var answer = Shipment.Compute(gathering.Board);
        gathering.Format(answer, _ => null);
        var pack = gathering.Parts.Pack;
        var s = answer.IsKnown ? answer.Value : null;
        string? Say(Func<Shipment, FormattableString?> say) => s is null ? null : say(s) is { } said ? Invariant(said) : null;
        List<Block> blocks =
        [
            new CautionBlock("This sheet says what is likely, not what is allowed. Rules of carriage change every one or two years, differ by carrier, country and mode, and ask for training: check the current edition, and have the carrier or a trained person confirm every line before anything is handed over."),
            new HeadingBlock("What travels"),
            new TableBlock([new("", 4), new("", 6)],
            [
                ["Board", gathering.Order.Name],
                ["Mass with the pack in it", gathering.Figure(Catalogue.BoardMass)],
                ["Packs", "1, lithium ion, rechargeable"],
                ["Cells", Say(x => $"{x.Cells} ({pack.Series.Value} in series, {pack.Parallel.Value} in parallel) of {gathering.Parts.Cell.Title}")],
                ["Energy of a cell", Say(x => $"{x.CellEnergy.WattHours:0.0} Wh{(x.CellEnergy.WattHours > 20 ? ", above 20 Wh" : ", 20 Wh at most")}")],
                ["Energy of the pack", Say(x => $"{x.Energy.WattHours:0} Wh{(x.Energy.WattHours > 100 ? ", above 100 Wh: fully regulated" : ", 100 Wh at most")}")],
                ["Nominal voltage", Say(x => $"{x.Nominal.Volts:0.0} V")],
                ["Mass of the pack", Say(x => x.Mass is { } mass ? (FormattableString)$"{mass:0.00 kg}" : null)],
                ["Serial number of the pack", null],
            ]),
            new HeadingBlock("Likely number"),
            new TableBlock([new("As it is sent", 4), new("Likely number and name", 5), new("State of charge by air", 5.5)],
            [
                ["The whole board, pack built in", "UN 3556, vehicle, lithium ion battery powered; UN 3171 in older editions", Vehicle(s)],
                ["Board and pack in one parcel, apart", "UN 3481, lithium ion batteries packed with equipment", "30 % of rated capacity at most for cells or batteries above 2.7 Wh, since 1 January 2026"],
                ["A pack alone, as a spare", "UN 3480, lithium ion batteries", "30 % of rated capacity at most; cargo aircraft only"],
            ]),
            new ParagraphBlock("State of charge: IATA Dangerous Goods Regulations, 67th edition (2026), with the ICAO Technical Instructions 2025-2026, as reported by " + Reported + ". More charge needs the approval of the States concerned. Numbers: UN Model Regulations, 23rd revised edition (2023), which parted UN 3556 from UN 3171; from memory. CHECK THE CURRENT EDITION.", IsQuiet: true),
        ];
        if (s?.RestAtLimit is { } rest && s.CellRestAtLimit is { } each)
            blocks.Add(new ChecksBlock([new(Invariant($"Charged to at most {Shipment.ChargeLimit.Percent:0} %: at rest, an hour after the last current, about {each.Volts:0.00} V a cell, {rest.Volts:0.0} V the pack (the cell's own rest-voltage table)."), Invariant($"{rest.Volts:0.0} V at most"), "V")]));
        else
            gathering.Format(gathering.Parts.Cell.RestVoltage, _ => $"");
        blocks.Add(new ParagraphBlock("By road, rail and sea the limits are others; many carriers ask for a low charge all the same. In a traveller's baggage lithium batteries above 160 Wh are refused by airlines, and from 100 Wh on they ask first (from memory)."));
        blocks.Add(new HeadingBlock("What the builder must still prove"));
        blocks.Add(new ChecksBlock(
        [
            new("UN 38.3 test summary of the cell's maker for this very cell (UN Manual of Tests and Criteria, part III, 38.3); number and date.", "", "no."),
            new("UN 38.3 test of the pack as it is built: cells that passed do not make a pack that passed. For prototypes and small runs ask the authority which provision holds.", "", "no."),
            new("Cells and pack made under a quality programme as the regulations ask, written down."),
            new("Poles covered, switch off and fixed, pack held fast, nothing that can start by itself."),
            new("Package, marks, labels and declaration as the packing instruction for the number asks; the carrier has accepted lithium batteries of this energy beforehand.", "", "ref."),
            new("No pack that is damaged, swollen, recalled or was ever short: those go under stricter rules, if at all."),
        ]));
        blocks.Add(new SignaturesBlock(["Shipper", "Trained person", "Date"]));
        return blocks;
    }

    static string Reported => Findings.Sources.AirCharge.Text.Split(';')[0].Split(", on the IATA", StringSplitOptions.None)[0];

    static string Vehicle(Shipment? shipment) => shipment is null ? "30 % of rated capacity at most above 100 Wh"
        : shipment.Energy > Shipment.VehicleThreshold
            ? Invariant($"{Shipment.ChargeLimit.Percent:0} % of rated capacity at most, or a gauge that shows 25 % at most, since 1 January 2026 for batteries above {Shipment.VehicleThreshold.WattHours:0} Wh; this pack has {shipment.Energy.WattHours:0} Wh")
            : Invariant($"recommended {Shipment.ChargeLimit.Percent:0} % at most; this pack has {shipment.Energy.WattHours:0} Wh");
}
