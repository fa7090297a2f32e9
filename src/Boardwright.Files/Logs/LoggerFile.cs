using System.Security.Cryptography;
using System.Text;
using Boardwright.Builds;
using Boardwright.Files.Boards;
using Boardwright.Files.Yaml;
using Boardwright.Logs;
using Boardwright.Parts;

namespace Boardwright.Files.Logs;

/// <summary>How the columns of a logger are read, once somebody confirmed it: kept under what its row of names says, and used again for the
/// next log with the same names.</summary>
public static class LoggerFile
{
    /// <summary>What the name of such a file ends in.</summary>
    public const string Ending = ".logger.yaml";

    /// <summary>Tells logs with the same columns from all others: twelve hexadecimal digits made from their names, in order, capitals
    /// aside.</summary>
    public static string FingerprintOf(LogMapping mapping)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        var names = string.Join('\n', mapping.Columns.Select(static column => column.Header.Trim().ToLowerInvariant()));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(names)))[..12];
    }

    /// <summary>What a mapping says, to be kept.</summary>
    public static LoggerColumns ColumnsOf(LogMapping mapping)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        return new()
        {
            Time = mapping.Time,
            Decimal = mapping.DecimalMark == ',' ? DecimalMark.Comma : DecimalMark.Point,
            Columns = new Texts([.. mapping.Columns.Where(static column => column.Header.Length > 0)
                .DistinctBy(static column => column.Header, StringComparer.OrdinalIgnoreCase).Select(static column => $"{column.Header}={WordOf(column)}")]),
        };
    }

    /// <summary>What a column was taken for, as <see cref="LogWishes.Columns"/> takes it: <c>time</c>, <c>none</c>, or a channel and its
    /// unit.</summary>
    public static string WordOf(LogColumn column)
    {
        ArgumentNullException.ThrowIfNull(column);
        return column.IsTime ? "time"
            : column.Channel is not { } channel ? "none"
            : column.Unit is not { } unit ? LogTable.NameOf(channel)
            : unit == LogHeader.Plain ? $"{LogTable.NameOf(channel)} share" : $"{LogTable.NameOf(channel)} {unit.Symbol}";
    }

    /// <summary>What columns are to be read as.</summary>
    public static LogWishes WishesOf(LoggerColumns columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        var wishes = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var column in columns.Columns.IsKnown ? columns.Columns.Value.Items : [])
        {
            // The name of a column may hold the sign itself; what it holds does not.
            var at = column.LastIndexOf('=');
            if (at > 0)
                wishes[column[..at].Trim()] = column[(at + 1)..].Trim();
        }

        return new()
        {
            Time = columns.Time.IsKnown ? columns.Time.Value : null,
            DecimalMark = columns.Decimal.IsKnown ? columns.Decimal.Value == DecimalMark.Comma ? ',' : '.' : null,
            Columns = wishes,
        };
    }

    /// <summary>Every channel as <see cref="LogWishes.Columns"/> takes it, with the units it may have.</summary>
    public static IReadOnlyList<(Channel Channel, string Name, IReadOnlyList<string> Units)> Channels { get; } =
        [.. RideLog.Recordable.Select(static channel => (channel, LogTable.NameOf(channel), LogHeader.UnitsOf(channel)))];

    /// <summary>Why a text does not say what a column holds.</summary>
    /// <returns>The objection, or <c>null</c>.</returns>
    public static Refusal? Objection(string column)
    {
        ArgumentNullException.ThrowIfNull(column);
        var at = column.LastIndexOf('=');
        var words = at > 0 ? column[(at + 1)..].Trim().Split(' ', 2, StringSplitOptions.RemoveEmptyEntries) : [];
        return words.Length > 0 && (words[0] is "time" or "none" || LogTable.ChannelNamed(words[0]) is not null) ? null
            : new($"{QuantityText.Quote(column)} does not say what a column holds.", "Write its name, =, and time, none or a channel with its unit, such as v=speed km/h.");
    }

    /// <summary>The text of a file that keeps a mapping.</summary>
    public static string Write(LogMapping mapping)
    {
        var columns = ColumnsOf(mapping);
        var text = new StringBuilder(FormattableString.Invariant($"boardwright: {Board.Version}\ntime: {Entry.Word(columns.Time.Value)}\ndecimal: {Entry.Word(columns.Decimal.Value)}\ncolumns:\n"));
        foreach (var column in columns.Columns.Value.Items)
            text.Append("  - ").Append(BoardText.Quote(column, inFlow: true)).Append('\n');
        return text.ToString();
    }

    /// <summary>Reads what <see cref="Write"/> wrote, or what somebody made of it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="shown">How complaints name its file.</param>
    public static (LoggerColumns? Columns, IReadOnlyList<Complaint> Complaints) Read(string text, string shown)
    {
        var complaints = new Complaints();
        if (NodeReader.Read(text, shown, "Write its columns into it.", complaints) is MapNode map && BoardFile.HasOurVersion(map, shown, complaints))
        {
            var draft = new SheetDraft(typeof(LoggerColumns), map.At);
            new SheetReader(new ShelfReader(FileTree.OnDisk, complaints), complaints)
                .Fill(draft, typeof(LoggerColumns), map, "", "the file of a logger", [BoardFile.VersionKey]);
            var columns = (LoggerColumns)draft.Build();
            foreach (var column in columns.Columns.IsKnown ? columns.Columns.Value.Items : [])
            {
                if (Objection(column) is { } refusal)
                    complaints.Add(map.Find("columns")!.At, "columns", refusal);
            }

            if (complaints.Count == 0)
                return (columns, []);
        }

        return (null, complaints.Sorted(shown));
    }
}
