using System.Globalization;
using System.Text;
using Boardwright.Packs;
using Boardwright.Parts;

namespace Boardwright.Files.Cells;

/// <summary>Fitted cells as shelf files, and in words.</summary>
static class CellText
{
    /// <summary>Writes a fitted cell as a shelf file: one part of kind cell, with what was measured and a comment on what each table
    /// is.</summary>
    public static string Shelf(CellFit fit)
    {
        var (cell, slow, text) = (fit.Cell, fit.Cell.Polarisation, new StringBuilder());
        var names = string.Join(", ", fit.Replays.Select(r => r.Name));
        text.Append(CultureInfo.InvariantCulture, $"# Fitted to {names}: {Millivolts(fit.RmsVolts)} mV RMS.\n");
        text.Append("# Rest voltage, resistances and time constants belong together: V = rest_voltage - I * (resistance + the answers of R1 and R2).\n");
        text.Append("# Still to be filled in from the maker's sheet: name, mass, voltage_nominal, voltage_full, voltage_empty and the limits.\n");
        text.Append(CultureInfo.InvariantCulture, $"- id: {cell.Id}\n  kind: cell\n");
        text.Append(CultureInfo.InvariantCulture, $"  capacity: {{ value: {cell.Capacity.Value.AmpereHours:0.0000} Ah, from: measured }}    # the most that a measurement took out of the full cell\n");
        text.Append("  rest_voltage:\n");
        foreach (var (charge, volts) in cell.RestVoltage.Value.Points)
            text.Append(CultureInfo.InvariantCulture, $"    {charge.Percent:0.##} %: {volts.Volts:0.0000} V\n");
        text.Append("  # The part that answers at once, at a tenth of a second and less (R0). What a current meets after some seconds is higher by R1, after minutes by R2.\n");
        if (fit.ActivationIsAssumed)
            text.Append(CultureInfo.InvariantCulture, $"  # Measured at {fit.Temperatures[0].Celsius:0} °C; the slope between the columns is assumed, exp({fit.Activations[0]:0} K / T). They end where the cell's case was.\n");
        Table(text, "  ", "resistance", cell.Resistance.Value);
        text.Append("  polarisation:\n");
        Table(text, "    ", "R1", slow.R1.Value);
        text.Append(CultureInfo.InvariantCulture, $"    tau1: {slow.Tau1.Value.Seconds:0.##} s\n");
        Table(text, "    ", "R2", slow.R2.Value);
        text.Append(CultureInfo.InvariantCulture, $"    tau2: {slow.Tau2.Value.Seconds:0.##} s\n");
        if (cell.ChargeTail.IsKnown)
            text.Append(CultureInfo.InvariantCulture, $"  charge_tail: {cell.ChargeTail.Value.Seconds:0.0} s\n");
        return text.Append(CultureInfo.InvariantCulture, $"  source: fitted to {names}\n").ToString();
    }

    /// <summary>A fit in words: what it leaves of each measurement, how the time constants were found, and what to be wary of.</summary>
    public static string Report(CellFit fit)
    {
        var text = new StringBuilder();
        var slow = fit.Cell.Polarisation;
        text.Append(CultureInfo.InvariantCulture, $"{fit.Cell.Id}: {fit.Cell.Capacity.Value.AmpereHours:0.000} Ah, time constants {slow.Tau1.Value.Seconds:0.##} s and {slow.Tau2.Value.Seconds:0.##} s, fitted at {string.Join(", ", fit.Temperatures.Select(t => FormattableString.Invariant($"{t.Celsius:0} °C")))}.\n");
        Rows(text, "Left by the fit", fit.Replays);
        text.Append(CultureInfo.InvariantCulture, $"All samples: {Millivolts(fit.RmsVolts)} mV RMS. Largest: {Signed(fit.Worst.WorstVolts * 1000, 1)} mV in {fit.Worst.Name} at {fit.Worst.WorstSeconds:0} s, {fit.Worst.WorstCharge * 100:0.0} % charge.\n");
        if (fit.RowsLeftOut > 0)
            text.Append(CultureInfo.InvariantCulture, $"{fit.RowsLeftOut} rows are left out, as they follow a charge or a reset of the count.\n");
        foreach (var charge in fit.Charges)
            text.Append(CultureInfo.InvariantCulture, $"{charge.Name}: {charge.Charged.AmpereHours:0.000} Ah in {charge.Duration.Seconds / 60:0.0} min from {charge.Current.Amperes:0.00} A to {charge.EndCurrent.Amperes * 1000:0} mA; tail of {charge.Decay.Seconds:0.0} s.\n");
        if (fit.ActivationIsAssumed)
            text.Append(CultureInfo.InvariantCulture, $"One temperature only: within the few degrees of these measurements the resistance is taken to follow exp({fit.Activations[0]:0} K / T); beyond them it is not known.\n");
        else
            text.Append(CultureInfo.InvariantCulture, $"Slope of ln R over 1/T between the temperatures: {string.Join(", ", fit.Activations.Select(a => a.ToString("0", CultureInfo.InvariantCulture)))} K. The rest voltage is that of the temperature nearest 25 °C.\n");
        if (fit.Held > 0)
            text.Append(CultureInfo.InvariantCulture, $"{fit.Held} of {fit.Resistances} resistances lie at their floor: the measurements do not tell them apart from their neighbours in time.\n");
        if (fit.AtGridEdge)
            text.Append("A time constant lies at the edge of those tried: pulses with longer or shorter rests would tell more.\n");
        return text.ToString();
    }

    /// <summary>Replays in words: how far a model lies from measurements it was not fitted to.</summary>
    public static string Report(string cell, IReadOnlyList<CellReplay> replays)
    {
        var text = new StringBuilder();
        Rows(text, cell, replays);
        return text.ToString();
    }

    static void Rows(StringBuilder text, string title, IReadOnlyList<CellReplay> replays)
    {
        var width = Math.Max(title.Length, replays.Max(r => r.Name.Length));
        text.Append(CultureInfo.InvariantCulture, $"{title.PadRight(width)}     rms  rms >10 %   worst      at    charge    energy  measured   error\n");
        text.Append(CultureInfo.InvariantCulture, $"{"".PadRight(width)}      mV         mV      mV       s         %        Wh        Wh       %\n");
        foreach (var r in replays)
            text.Append(CultureInfo.InvariantCulture, $"{r.Name.PadRight(width)} {r.RmsVolts * 1000,7:0.0} {r.RmsVoltsAboveTenth * 1000,10:0.0} {Signed(r.WorstVolts * 1000, 1),7} {r.WorstSeconds,7:0} {r.WorstCharge * 100,9:0.0} {r.Model.WattHours,9:0.0000} {r.Measured.WattHours,9:0.0000} {Signed(r.EnergyError * 100, 2),7}\n");
    }

    static void Table(StringBuilder text, string margin, string key, ResistanceTable table)
    {
        text.Append(CultureInfo.InvariantCulture, $"{margin}{key}:\n");
        if (table.Temperatures.Count > 0)
            text.Append(CultureInfo.InvariantCulture, $"{margin}  temperatures: [{string.Join(", ", table.Temperatures.Select(t => FormattableString.Invariant($"{t.Celsius:0} °C")))}]\n");
        foreach (var (i, charge) in table.Charges.Index())
            text.Append(CultureInfo.InvariantCulture, $"{margin}  {charge.Percent:0.##} %: [{string.Join(", ", table.Values[i].Select(r => FormattableString.Invariant($"{r.Milliohms:0.000} mohm")))}]\n");
    }

    static string Signed(double value, int decimals) => double.IsNaN(value) ? "-"
        : (Math.Round(value, decimals) + 0.0).ToString(decimals == 1 ? "+0.0;-0.0;0.0" : "+0.00;-0.00;0.00", CultureInfo.InvariantCulture);

    static string Millivolts(double volts) => (volts * 1000).ToString("0.0", CultureInfo.InvariantCulture);
}
