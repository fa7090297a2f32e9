using Boardwright.Analyses;
using Boardwright.Findings;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Traction;

namespace Boardwright.Rules;

/// <summary>What cells, protection and charger must satisfy.</summary>
static class PackRules
{
    static readonly Voltage ChargerTolerance = Voltage.FromVolts(0.3);

    /// <summary>The protection watches every cell in series.</summary>
    public static Rule<BoardAnalysis> ProtectionWatchesEveryCell { get; } = new(
        "pack.protection_series", "pack.protection", "The protection is made for the pack's number of cells in series.",
        "A protection for another number leaves cells unwatched, or cuts off at the wrong voltage.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var pack = e.Board.Parts.Pack;
            var series = needs.Read(pack.Series);
            if (!pack.Protection.IsChosen)
            {
                return needs.Unmet ? null :
                    [ProtectionWatchesEveryCell!.Found(Level.Stop, $"No protection watches the {series} groups of cells.", $"Fit a protection for {series} cells in series that carries the pack current.")];
            }

            var watched = needs.Read(pack.Protection.Series);
            if (needs.Unmet)
                return null;
            return watched == series
                ? [ProtectionWatchesEveryCell!.Found(Level.Fine, $"Made for {watched} in series, like the pack.", value: Amount.Plain(watched), limit: Amount.Plain(series))]
                : [ProtectionWatchesEveryCell!.Found(Level.Stop, $"The protection is made for {watched} cells in series, the pack has {series}.", $"Take a protection for {series} in series.", Amount.Plain(watched), Amount.Plain(series))];
        });

    /// <summary>The charger ends at the pack's full voltage.</summary>
    public static Rule<BoardAnalysis> ChargerMatches { get; } = new(
        "charge.voltage", "charger.voltage", "The charger ends at the pack's full voltage, not above it.",
        "End voltage against S · full voltage of a cell. Above it cells are overcharged, which can set them on fire; below it the pack is never full.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            if (!e.Board.Parts.Charger.IsChosen)
                return null;
            var charger = needs.Read(e.Board.Parts.Charger.Voltage);
            var window = needs.Read(e.Window);
            if (needs.Unmet)
                return null;
            var over = charger - window.Full;
            var (value, limit) = (Amount.Create(charger, "V"), Amount.Create(window.Full, "V"));
            var perCell = window.Full / window.Series;
            var made = (int)Math.Round(charger / perCell);
            if (over > ChargerTolerance)
                return [ChargerMatches!.Found(Level.Stop, $"The charger ends at {charger:0.0 V}, {over:0.0 V} above a full pack of {window.Series} in series: it is made for about {made}.", $"Take a charger for {window.Series} in series, {window.Full:0.0 V}. Never charge this pack with this one.", value, limit)];
            return over < -ChargerTolerance * 4
                ? [ChargerMatches!.Found(Level.Fix, $"The charger ends at {charger:0.0 V}, {-over:0.0 V} below a full pack of {window.Series} in series: {charger / window.Series:0.00 V} per cell.", $"Take a charger for {window.Series} in series, {window.Full:0.0 V}.", value, limit)]
                : [ChargerMatches!.Found(Level.Fine, $"Ends at {charger:0.0 V} for a pack of {window.Full:0.0 V}.", value: value, limit: limit)];
        });

    /// <summary>The charge current is within what cells and protection take.</summary>
    public static Rule<BoardAnalysis> ChargeCurrentFits { get; } = new(
        "charge.current", "charger.current", "The charge current is within what cells and protection take.",
        "Charger against cells · parallel and the protection's charge current; at the brief's temperature the cells must also be allowed to charge.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!parts.Charger.IsChosen)
                return null;
            var current = needs.Read(parts.Charger.Current);
            var capacity = needs.Read(PackModel.CapacityOf(e.Board));
            var cells = needs.Read(parts.Cell.ChargeCurrent) * needs.Read(parts.Pack.Parallel);
            if (needs.Unmet)
                return null;
            var most = parts.Pack.Protection.ChargeCurrent.IsKnown && parts.Pack.Protection.ChargeCurrent.Value < cells
                ? parts.Pack.Protection.ChargeCurrent.Value : cells;
            var (value, limit) = (Amount.Create(current, "A"), Amount.Create(most, "A"));
            var rate = current.Amperes / capacity.AmpereHours;
            return current <= most
                ? [ChargeCurrentFits!.Found(Level.Fine, $"{current:0.0 A} into {capacity:0.0 Ah}, {rate:0.00} of its capacity an hour; {most:0.0 A} are allowed.", value: value, limit: limit)]
                : [ChargeCurrentFits!.Found(Level.Fix, $"The charger gives {current:0.0 A}; {(most < cells ? "the protection takes" : "the cells take")} {most:0.0 A}.", $"Take a charger of at most {most:0.0 A}.", value, limit)];
        });

    /// <summary>Power fades before the cells or the protection cut it.</summary>
    public static Rule<BoardAnalysis> TaperBeforeCut { get; } = new(
        "limits.taper", "limits.taper_end", "Power fades to none before the cells are empty and before the protection cuts off.",
        "taper_start > taper_end; taper_end at least the cells' least voltage, and 0.1 V above the protection's cut, so that a rider feels it coming instead of being thrown.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var (limits, parts) = (e.Board.Limits, e.Board.Parts);
            var start = needs.Read(limits.TaperStart);
            var end = needs.Read(limits.TaperEnd);
            var empty = needs.Read(parts.Cell.VoltageEmpty);
            if (parts.Pack.Protection.IsChosen)
                needs.Read(parts.Pack.Protection.VoltageCut);
            if (needs.Unmet)
                return null;
            if (start <= end)
                return [TaperBeforeCut!.Found(
                    Level.Stop, $"Power is to fade from {start:0.00 V} to {end:0.00 V} per cell: the start must lie above the end.", $"Set the start to about {end + Voltage.FromVolts(0.3):0.0 V}.", Amount.Create(start, "V"), Amount.Create(end, "V"), "limits.taper_start", new Change("limits.taper_start", $"{end.Volts + 0.3:0.0} V"))];
            var cut = parts.Pack.Protection.VoltageCut;
            var floor = cut.IsKnown && cut.Value + Voltage.FromVolts(0.1) > empty ? cut.Value + Voltage.FromVolts(0.1) : empty;
            var (value, limit) = (Amount.Create(end, "V"), Amount.Create(floor, "V"));
            FormattableString aboveCut = cut.IsKnown ? (FormattableString)$" and {end - cut.Value:0.00 V} above the protection's cut" : $"";
            FormattableString tooLow = floor > empty ? (FormattableString)$"but the protection cuts off at {cut.Or(empty):0.00 V}: it will throw the rider"
                : $"below the cells' least voltage of {empty:0.00 V}";
            return end >= floor
                ? [TaperBeforeCut!.Found(
                Level.Fine, $"Power is gone at {end:0.00 V} per cell, {end - empty:0.00 V} above empty{aboveCut}.", value: value, limit: limit)]
                : [TaperBeforeCut!.Found(
                Level.Stop, $"Power is to end at {end:0.00 V} per cell, {tooLow}.",
                    $"Set the end to at least {floor:0.00 V} per cell.", value, limit, mend: new Change("limits.taper_end", $"{floor.Volts:0.00} V"))];
        });

    /// <summary>Power does not fade while much charge is left.</summary>
    public static Rule<BoardAnalysis> TaperStartsLate { get; } = new(
        "limits.taper_start", "limits.taper_start", "At cruise power does not begin to fade while more than a quarter of the charge above the reserve is left.",
        "The charge at which the loaded cell voltage at cruise reaches taper_start, against the reserve plus a quarter of what lies above it.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var start = needs.Read(e.Board.Limits.TaperStart);
            var run = needs.Read(e.Demand);
            var cruise = needs.Read(e.Cruise);
            var reserve = needs.Read(e.Board.Brief.Reserve);
            if (needs.Unmet || cruise.Steady is not { } steady)
                return null;
            var watts = steady.AtHalf.Bus.Watts;
            double Loaded(double charge) => (Traction.Propulsion.BusUnder(watts, run.SupplyAt(charge))?.Volts ?? 0) / run.Pack.Series;
            var fades = Numerics.RootFinding.FirstFall(c => Loaded(c) - start.Volts, 1, 0, 1.0 / 64) ?? (Loaded(1) <= start.Volts ? 1 : 0);
            var most = reserve.Value + 0.25 * (1 - reserve.Value);
            var (value, limit) = (new Amount(100 * fades, "%"), new Amount(100 * most, "%"));
            var better = Voltage.FromVolts(Math.Floor(Loaded(most) * 20) / 20);
            return fades <= most
                ? [TaperStartsLate!.Found(Level.Fine, $"At cruise power begins to fade with {Fraction.FromValue(fades):0 %} of the charge left.", value: value, limit: limit)]
                : better <= e.Board.Limits.TaperEnd.Or(e.Board.Parts.Cell.VoltageEmpty.Or(default))
                ? [TaperStartsLate!.Found(Level.Fix, $"At cruise power begins to fade with {Fraction.FromValue(fades):0 %} of the charge still left.", $"No start above the taper's end mends it: more cells in parallel, cells of lower resistance, or a slower cruise.", value, limit)]
                : [TaperStartsLate!.Found(Level.Fix, $"At cruise power begins to fade with {Fraction.FromValue(fades):0 %} of the charge still left.", $"Set taper_start to {better:0.00 V} per cell: it then fades from {Fraction.FromValue(most):0 %} on.", value, limit, mend: new Change("limits.taper_start", $"{better.Volts:0.00} V"))];
        });

    /// <summary>The tables reach the states they are asked for.</summary>
    public static Rule<BoardAnalysis> TablesReach { get; } = new(
        "pack.tables_reach", "cell.resistance", "The cell's tables reach from the reserve to full and to the brief's temperature.",
        "Beyond its ends a table holds its last value, which says nothing about the cell.",
        Sources.MakersSheet,
        (e, needs) =>
        {
            var cell = e.Board.Parts.Cell;
            var rest = needs.Read(cell.RestVoltage);
            var resistance = needs.Read(cell.Resistance);
            var temperature = needs.Read(e.Board.Brief.Temperature);
            var reserve = needs.Read(e.Board.Brief.Reserve);
            if (needs.Unmet)
                return null;
            var full = Fraction.FromPercent(100);
            var short1 = !rest.Covers(reserve) || !rest.Covers(full);
            var short2 = !resistance.Covers(reserve, temperature) || !resistance.Covers(full, temperature);
            if (!short1 && !short2)
                return [TablesReach!.Found(Level.Fine, $"From {reserve:0 %} to 100 % at {temperature:0 °C}.")];
            return
            [
                TablesReach!.Found(Level.Measure, $"The cell's {(short1 ? "rest voltage" : "resistance")} is not known everywhere between {reserve:0 %} and 100 % at {temperature:0 °C}; its last value was used.",
                    $"Measure it there, or take the figures that rest on it as a guess.", where: short1 ? cell.RestVoltage.Key : cell.Resistance.Key),
            ];
        });

    /// <summary>Cautions for lithium packs.</summary>
    public static Rule<BoardAnalysis> LithiumCautions { get; } = new(
        "pack.caution", "pack", "Who builds, charges and ships this pack knows the cautions for lithium-ion cells.",
        "No figure here replaces a test of the pack: one that was built by hand has passed none.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var energy = needs.Read(e.Energy);
            return needs.Unmet ? null :
                [LithiumCautions!.Found(Level.Fine, $"{energy.Cells} cells, {energy.Energy:0 Wh}. Build, charge and ship it by the law of the place and with qualified people: fuse at the pack, insulate every group, charge on a surface that does not burn and never unwatched, never a swollen, wet or deep-cold pack. Above 100 Wh no passenger may take it on an aircraft without the operator's leave, above 160 Wh none at all; check the current rules.", value: Amount.Create(energy.Energy, "Wh"))];
        });

    /// <summary>Every rule about packs and charging.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [ProtectionWatchesEveryCell, ChargerMatches, ChargeCurrentFits, TaperBeforeCut, TaperStartsLate, TablesReach, LithiumCautions];
}
