using System.Text;
using Boardwright.Packs;

namespace Boardwright.Files.Cells;

/// <summary>Reads measured cells from tables.</summary>
/// <remarks>
/// Lines that begin with <c>#</c> are comments; then one row of names, each a quantity and its unit joined by an underline; then rows of
/// numbers.
/// <list type="bullet">
/// <item><c>time_s</c>, <c>current_A</c> (positive when it leaves the cell) and <c>voltage_V</c> are needed.</item>
/// <item><c>counter_Ah</c> or <c>discharged_Ah</c>: charge taken out of the full cell; the rows are samples. <c>charged_Ah</c>: charge put
/// in; the rows are of a charge. With neither, the rows are means over the time to the next row, and <c>power_W</c> may give the mean
/// power.</item>
/// <item><c>case_temp_C</c>, or another temperature: of the cell's case.</item>
/// </list>
/// Columns of other names are passed over. Other units of the same quantity are read too: <c>current_mA</c>, <c>voltage_mV</c>,
/// <c>time_min</c>.
/// </remarks>
static class CellMeasurements
{
    const int MostComplaints = 20;

    /// <summary>Reads files.</summary>
    /// <param name="paths">The files, as the user wrote them.</param>
    /// <param name="temperature">Temperature of the cell for files that have none.</param>
    /// <returns>The measurements, and everything that is wrong; no measurement when anything is.</returns>
    public static (IReadOnlyList<CellMeasurement> Measurements, IReadOnlyList<Complaint> Complaints) Read(
        IReadOnlyList<string> paths, Temperature? temperature = null)
    {
        var complaints = new Complaints();
        var measurements = new List<CellMeasurement>();
        foreach (var path in paths)
        {
            var shown = path.Replace('\\', '/');
            if (FileTree.OnDisk.Read(path, shown, complaints) is { } text && Parse(text, shown, temperature, complaints) is { } measurement)
                measurements.Add(measurement);
        }

        return complaints.Count > 0 ? ([], complaints.Sorted("")) : (measurements, []);
    }

    /// <summary>Reads one text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="shown">How complaints name it.</param>
    /// <param name="temperature">Temperature of the cell where the text has none.</param>
    /// <returns>The measurement, or <c>null</c> and everything that is wrong.</returns>
    public static (CellMeasurement? Measurement, IReadOnlyList<Complaint> Complaints) ReadText(
        string text, string shown, Temperature? temperature = null)
    {
        var complaints = new Complaints();
        var measurement = Parse(text, shown, temperature, complaints);
        return (complaints.Count > 0 ? null : measurement, complaints.Sorted(shown));
    }

    static CellMeasurement? Parse(string text, string shown, Temperature? temperature, Complaints complaints)
    {
        var before = complaints.Count;
        Columns? columns = null;
        var readings = new List<CellReading>();
        var line = 0;
        ReadOnlySpan<byte> rest = Encoding.UTF8.GetBytes(text);
        while (!rest.IsEmpty && complaints.Count - before < MostComplaints)
        {
            line++;
            var row = TableDialect.NextLine(ref rest);
            if (row.Trim(" \t"u8).IsEmpty || row[0] == (byte)'#') continue;
            if (columns is null)
            {
                columns = Columns.Parse(new(TableDialect.FindDelimiter(row, rest) ?? ','), row, new SourceLocation(shown, line, 1),
                    temperature, complaints);
                if (columns?.FindDecimalMark(rest, line) is var (where, says)) complaints.Add(
                    new SourceLocation(shown, where ?? line, 1), "", says, TableDialect.OneMark);
                if (columns is null || complaints.Count > before) return null;
                continue;
            }

            if (columns.Read(row, new SourceLocation(shown, line, 1), complaints) is not { } reading) continue;
            if (readings.Count > 0 && reading.Seconds < readings[^1].Seconds)
                complaints.Add(new SourceLocation(shown, line, columns.TimeColumnOf(row)), "time", "Time runs back here.", "Sort the rows by time, or cut the file where a new test begins.");
            readings.Add(reading);
        }

        if (columns is null)
            complaints.Add(new SourceLocation(shown, 1, 1), "", "The file holds no row of names.", "Begin with a row such as time_s,current_A,voltage_V,discharged_Ah,case_temp_C.");
        else if (readings.Count < 2 && complaints.Count == before)
            complaints.Add(new SourceLocation(shown, Math.Max(line, 1), 1), "", "A measurement needs at least two rows of numbers.", "Check that it is the right file.");
        return complaints.Count > before ? null : new CellMeasurement(shown[(shown.LastIndexOf('/') + 1)..], columns!.Kind, readings);
    }

    /// <summary>Which column holds what.</summary>
    sealed class Columns
    {
        readonly record struct ColumnUnit(string Name, Unit Unit);

        readonly ColumnUnit?[] columns;
        readonly double kelvins;
        readonly string[] names;
        TableDialect dialect;

        Columns(TableDialect dialect, ColumnUnit?[] columns, string[] names, double kelvins, CellRecordKind kind) =>
            (this.dialect, this.columns, this.names, this.kelvins, Kind) = (dialect, columns, names, kelvins, kind);

        public CellRecordKind Kind { get; }

        public static Columns? Parse(
            TableDialect dialect, ReadOnlySpan<byte> row, SourceLocation at, Temperature? temperature, Complaints complaints)
        {
            var before = complaints.Count;
            var (words, found) = (new List<string>(), new List<ColumnUnit?>());
            for (var fields = dialect.FieldsOf(row); fields.Next(out var field);)
            {
                var here = at with { Column = PlaceOf(row, fields) };
                var name = Encoding.UTF8.GetString(field);
                words.Add(name);
                found.Add(null);
                var gap = name.LastIndexOf('_');
                var word = gap < 0 ? name : name[..gap];
                if (QuantityOf(word) is not { } quantity) continue;
                // A C alone is a degree here; as a charge it would be a coulomb.
                var symbol = gap < 0 ? "" : name[(gap + 1)..];
                var unit = quantity.Dimension.Find(quantity.Name == "temperature" && symbol is ("C" or "F") ? "°" + symbol : symbol);
                if (unit is null || symbol.Length == 0)
                    complaints.Add(here, name, $"The name does not end in a unit of {quantity.Dimension.Name}.", $"Write it as {quantity.Example}.");
                else if (found.Any(c => c?.Name == quantity.Name))
                    complaints.Add(here, name, $"There are two columns of {word}.", "Take one of them out.");
                else
                    found[^1] = new ColumnUnit(quantity.Name, unit);
            }

            bool Has(string name) => found.Any(c => c?.Name == name);
            foreach (var needed in new[] { "time", "current", "voltage" })
            {
                if (!Has(needed) && complaints.Count == before)
                    complaints.Add(at, needed, $"There is no column of {needed}.", $"Give the row of names one such as {QuantityOf(needed)!.Value.Example}.");
            }

            if (!Has("temperature") && temperature is null && complaints.Count == before)
                complaints.Add(at, "case_temp", "There is no column of temperature.", "Add one such as case_temp_C, or state the temperature with --temperature \"25 °C\".");
            if (Has("discharged") && Has("charged") && complaints.Count == before)
                complaints.Add(at, "charged", "There are columns of charge taken out and of charge put in.", "Keep the one that counts from the beginning of the test.");
            return complaints.Count > before ? null : new Columns(
                dialect, [.. found], [.. words], temperature?.Kelvins ?? double.NaN,
                Has("discharged") ? CellRecordKind.Samples : Has("charged") ? CellRecordKind.Charge : CellRecordKind.Means);
        }

        public (int? Line, string Says)? FindDecimalMark(ReadOnlySpan<byte> rows, int line)
        {
            dialect = dialect.WithDecimalMark(rows, line, i => i < columns.Length && columns[i] is not null, out var objection);
            return objection;
        }

        public int TimeColumnOf(ReadOnlySpan<byte> row)
        {
            var fields = dialect.FieldsOf(row);
            for (var left = Array.FindIndex(columns, c => c?.Name == "time"); left >= 0 && fields.Next(out _); left--)
            {
            }

            return PlaceOf(row, fields);
        }

        static int PlaceOf(ReadOnlySpan<byte> row, RowFields fields) => Encoding.UTF8.GetCharCount(row[..fields.Start]) + 1;

        public CellReading? Read(ReadOnlySpan<byte> row, SourceLocation at, Complaints complaints)
        {
            var (seconds, amperes, volts, watts, coulombs, temperature) =
                (double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
            var fields = dialect.FieldsOf(row);
            for (var i = 0; i < columns.Length; i++)
            {
                if (!fields.Next(out var field))
                {
                    complaints.Add(at with { Column = Encoding.UTF8.GetCharCount(row) + 1 }, names[i], FormattableString.Invariant($"The row has {i} fields, and {columns.Length} are named."),
                        "Complete the row, or take it out.");
                    return null;
                }

                if (columns[i] is { } column)
                {
                    if (!dialect.TryNumber(field, out var written))
                    {
                        complaints.Add(at with { Column = PlaceOf(row, fields) }, names[i], $"'{Encoding.UTF8.GetString(field)}' is not a number.", "Write numbers with a decimal point and nothing else in the field.");
                        return null;
                    }

                    var si = column.Unit.ToSi(written);
                    switch (column.Name)
                    {
                        case "time": seconds = si; break;
                        case "current": amperes = si; break;
                        case "voltage": volts = si; break;
                        case "power": watts = si; break;
                        case "temperature": temperature = si; break;
                        default: coulombs = si; break;
                    }
                }
            }

            // A delimiter at the end of each row is no field.
            if (fields.Next(out var further) && !(further.IsEmpty && fields.IsRestEmpty))
            {
                complaints.Add(at with { Column = PlaceOf(row, fields) }, "", FormattableString.Invariant($"The row has more than the {columns.Length} fields that are named."), "Name the column, or take the field out; numbers have a decimal point, not a comma.");
                return null;
            }

            return new CellReading(seconds, amperes, volts, watts, coulombs, double.IsNaN(temperature) ? kelvins : temperature);
        }

        static (string Name, Dimension Dimension, string Example)? QuantityOf(string word) => word switch
        {
            "time" => ("time", Duration.Dimension, "time_s"),
            "current" => ("current", Current.Dimension, "current_A"),
            "voltage" => ("voltage", Voltage.Dimension, "voltage_V"),
            "power" => ("power", Power.Dimension, "power_W"),
            "counter" or "discharged" => ("discharged", Charge.Dimension, "discharged_Ah"),
            "charged" => ("charged", Charge.Dimension, "charged_Ah"),
            _ when word is "temperature" || word.Split('_').Contains("temp", StringComparer.Ordinal) => ("temperature", Temperature.Dimension, "case_temp_C"),
            _ => null,
        };
    }
}
