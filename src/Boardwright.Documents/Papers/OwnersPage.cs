using Boardwright.Examinations;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The owner's page: care, charging, cautions and local law, in the words of somebody who rides.</summary>
static class OwnersPage
{
    public static IReadOnlyList<Block> Compose(PaperContext gathering)
    {
        var (parts, brief, examination) = (gathering.Parts, gathering.Board.Brief, gathering.Examination);
        List<Block> blocks = [];
        if (gathering.Order.BoardAddress is { } address)
            blocks.Add(new CodeBlock(address, "This page, kept up to date."));
        blocks.AddRange(
        [
            new CautionBlock(PaperCautions.Brakes),
            new HeadingBlock("Before each ride"),
            new PointsBlock(
            [
                "Lift the driven wheels, give a little throttle, switch the remote off: the wheels must let go. If they do not, do not ride.",
                "Wheels tight and free, belts or gears clear of stones, no cable loose, nothing rattles.",
                "Remote and board charged; the last third of the charge is for coming home.",
                "Helmet, gloves, shoes with flat soles; lights and clothes in which you are seen.",
            ]),
            new HeadingBlock("Riding"),
            new PointsBlock([.. Riding(gathering)]),
            new HeadingBlock("Charging"),
            new CautionBlock(PaperCautions.Charger),
            new PointsBlock([.. Charging(gathering)]),
            new HeadingBlock("Care"),
            new PointsBlock([.. Care(gathering)]),
            new CautionBlock("A pack that was dropped hard, wetted, crushed, is swollen, warm at rest or smells: do not charge it, do not ride, take it into the open, call the builder. A burning pack: get away, call the fire brigade, say that lithium cells burn."),
            new HeadingBlock("Law"),
            new ParagraphBlock(PaperCautions.Law + (brief.SpeedLimit.IsKnown ? gathering.Say($" The builder found {brief.SpeedLimit.Value:0.# km/h} when this board was designed.") : "")),
            new HeadingBlock("This board"),
            new TableBlock([new("", 4), new("", 6)],
            [
                ["Made for a rider with clothes and bag of", examination.LoadOnDeck.IsKnown ? gathering.Say($"{examination.LoadOnDeck.Value:0 kg}; ask before anybody heavier rides it") : gathering.Format(brief.RiderMass, m => $"{m:0 kg}")],
                ["Weighs", gathering.Figure(Catalogue.BoardMass)],
                ["Pack", Invariant($"{Or(gathering.Figure(Catalogue.PackEnergy, "0"))}, full at {Or(gathering.Format(examination.Window, w => $"{w.Full.Volts:0.0} V"))}")],
                ["Serial number, date, builder's telephone", null],
            ]),
        ]);
        return blocks;
    }

    static IEnumerable<string> Riding(PaperContext gathering)
    {
        if (gathering.Figure(Catalogue.BrakeDistance, "0") is { } stop && gathering.Board.Brief.CruiseSpeed.IsKnown)
            yield return gathering.Say($"From {gathering.Board.Brief.CruiseSpeed.Value:0 km/h} on level, dry ground the electric brake alone is computed to stop you in {stop}, one second of reaction counted in. On wet ground, downhill or with more to carry it takes longer: try where there is room.");
        if (gathering.Format(gathering.Examination.BrakeNote, note => $"{note}") is { } note)
            yield return note;
        yield return "Going wet: belts, bearings and cells last longer without. The box has no rating against water unless the builder says that this one was tested; dry it, and never use a jet.";
        yield return "Fading power is the pack's word that it is nearly empty: ride home gently, do not force it.";
        if (gathering.Examination.ClimbHeat is { IsKnown: true, Value: { TimeToLimit: { } minutes } }
            && gathering.Board.Brief.ClimbWanted.IsKnown)
            yield return Invariant($"Motors get hot on long climbs: on {gathering.Board.Brief.ClimbWanted.Value.Percent:0.#} % they are computed to reach their limit after about {minutes.Minutes:0} min. Let them cool.");
    }

    static IEnumerable<string> Charging(PaperContext gathering)
    {
        var (charger, cell) = (gathering.Parts.Charger, gathering.Parts.Cell);
        if (charger.IsChosen)
            yield return Invariant($"Only with the charger that came with it: {charger.Title}, {Or(gathering.Format(charger.Voltage, v => $"{v.Volts:0.0} V"))}, {Or(gathering.Format(charger.Current, a => $"{a.Amperes:0.#} A"))}. A charger of another voltage can set the pack on fire.");
        if (gathering.Figure(Catalogue.ChargeFull, "0.0") is { } full && gathering.Figure(Catalogue.Charge80, "0.0") is { } most)
            yield return Invariant($"From empty it takes {full}, to four fifths {most}. The last part is slow: where it need not be full, stop at four fifths, the cells live longer.");
        if (cell.ChargeTemperatureMin.IsKnown && cell.ChargeTemperatureMax.IsKnown)
            yield return gathering.Say($"Between {cell.ChargeTemperatureMin.Value:0 °C} and {cell.ChargeTemperatureMax.Value:0 °C} only. Let a cold board come to room temperature, a hot one cool down first.");
        yield return "Do not start downhill with a full pack: it takes no braking current.";
        if (cell.CycleLife.IsKnown)
            yield return Invariant($"The cells' maker states {cell.CycleLife.Value} full charges; half charges count half.");
    }

    static IEnumerable<string> Care(PaperContext gathering)
    {
        var belts = gathering.Examination.IsBelt;
        if (belts && gathering.Examination.BeltLoad is { IsKnown: true, Value.Frequency: var note })
            yield return Invariant($"Every 200 km or month: belts without cracks, their note at {BuildSheet.NoteRange(note.Hertz)}.");
        else if (gathering.Examination.IsGear)
            yield return "Every 200 km or month: gears without new noise, oil or grease as their maker states.";
        yield return "Every 200 km or month: axle nuts, kingpins, motor and box bolts; bearings turn freely; gasket whole.";
        if (gathering.Parts.Cell.RestVoltage.IsKnown && gathering.Parts.Pack.Series.IsKnown)
            yield return Invariant($"Winter: at about half charge ({gathering.Parts.Cell.RestVoltage.Value.At(Fraction.FromPercent(50)).Volts * gathering.Parts.Pack.Series.Value:0.0} V at rest), cool and dry, away from what burns; look at it every two months.");
        else
            yield return "Winter: at about half charge, cool and dry, away from what burns; look at it every two months.";
        yield return "Do not open the pack or the box's wiring. Worn-out packs go to the collection for batteries, poles taped.";
    }
}
