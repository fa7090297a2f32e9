using System.Buffers;
using System.Text;
using Boardwright.Files.Logs;
using Boardwright.Files.Routes;

namespace Boardwright.Files;

/// <summary>How a table is written: what parts its fields, and what its decimal mark is.</summary>
/// <param name="Delimiter">What parts the fields.</param>
/// <param name="DecimalMark">Point or comma.</param>
/// <param name="MayGroup">Whether the other of the two may part thousands.</param>
readonly record struct TableDialect(char Delimiter, char DecimalMark = '.', bool MayGroup = false)
{
    /// <summary>What to do where the decimal mark is not clear.</summary>
    public const string OneMark = "Write all numbers with a point, as 12.5, or all with a comma, as 12,5.";

    public RowFields FieldsOf(ReadOnlySpan<byte> row) => new(row, (byte)Delimiter);

    public bool TryNumber(ReadOnlySpan<byte> field, out double value) => LogNumber.TryRead(field, (byte)DecimalMark, MayGroup, out value);

    /// <summary>The same with the decimal mark that the numbers prove.</summary>
    /// <param name="rows">What follows the row of names.</param>
    /// <param name="line">The line of the row of names.</param>
    /// <param name="counts">Whether a column is one of numbers.</param>
    /// <param name="objection">What keeps the mark from being known, and the line if one number does; <c>null</c> where it is
    /// known.</param>
    public TableDialect WithDecimalMark(ReadOnlySpan<byte> rows, int line, Predicate<int> counts, out (int? Line, string Says)? objection)
    {
        objection = null;
        // Where a comma cannot stand inside a number, a point can only be a decimal point.
        if (!rows.Contains(Delimiter == ',' ? (byte)'"' : (byte)','))
            return this;
        var evidence = new DecimalMarkEvidence();
        while (!rows.IsEmpty)
        {
            line++;
            var row = NextLine(ref rows);
            if (row.IsEmpty || row[0] == (byte)'#') continue;
            var fields = FieldsOf(row);
            for (var column = 0; fields.Next(out var field); column++)
            {
                if (counts(column)) evidence.Add(field, line);
            }
        }

        objection = evidence.Objection;
        return objection is null ? this with { DecimalMark = evidence.Mark, MayGroup = true } : this;
    }

    /// <summary>The next line of a text, without its end.</summary>
    public static ReadOnlySpan<byte> NextLine(scoped ref ReadOnlySpan<byte> rest)
    {
        var end = rest.IndexOf((byte)'\n');
        var line = end < 0 ? rest : rest[..end];
        rest = end < 0 ? [] : rest[(end + 1)..];
        return line.Length > 0 && line[^1] == (byte)'\r' ? line[..^1] : line;
    }

    /// <summary>The mark that parts the names, and the following rows into as many fields.</summary>
    public static char? FindDelimiter(ReadOnlySpan<byte> names, ReadOnlySpan<byte> rows)
    {
        (char Mark, double Share)? best = null;
        foreach (var candidate in "\t;|,")
        {
            var count = Count(names, (byte)candidate);
            if (count == 0) continue;
            var (tried, alike) = (0, 0);
            for (var left = rows; tried < 50 && !left.IsEmpty;)
            {
                var row = NextLine(ref left);
                if (row.IsEmpty) continue;
                tried++;
                if (Count(row, (byte)candidate) == count) alike++;
            }

            var share = tried == 0 ? 1 : (double)alike / tried;
            if (best is null || share > best.Value.Share) best = (candidate, share);
        }

        return best?.Mark;
    }

    static int Count(ReadOnlySpan<byte> row, byte candidate)
    {
        var (count, isQuoted) = (0, false);
        foreach (var c in row)
        {
            if (c == (byte)'"') isQuoted = !isQuoted;
            else if (c == candidate && !isQuoted) count++;
        }

        return count;
    }
}

/// <summary>The fields of a row one after the other, without their quotes and the blanks about them.</summary>
ref struct RowFields(ReadOnlySpan<byte> row, byte delimiter)
{
    readonly int length = row.Length;
    ReadOnlySpan<byte> rest = row;
    bool isLast;

    /// <summary>Whether nothing stands behind the field that was given last.</summary>
    public readonly bool IsRestEmpty => rest.IsEmpty;
    /// <summary>How many bytes stand before the field that was given last.</summary>
    public int Start { get; private set; }

    public bool Next(out ReadOnlySpan<byte> field)
    {
        field = [];
        if (rest.IsEmpty && !isLast) return false;
        while (!rest.IsEmpty && rest[0] is (byte)' ' or (byte)'\t' && rest[0] != delimiter) rest = rest[1..];
        Start = length - rest.Length;
        int end;
        if (!rest.IsEmpty && rest[0] == (byte)'"' && rest[1..].IndexOf((byte)'"') is >= 0 and var close)
        {
            field = rest.Slice(1, close);
            var after = rest[(close + 2)..].IndexOf(delimiter);
            end = after < 0 ? -1 : close + 2 + after;
        }
        else
        {
            end = rest.IndexOf(delimiter);
            field = end < 0 ? rest : rest[..end];
        }

        // A delimiter at the very end has one more, empty, field behind it.
        isLast = end >= 0 && end == rest.Length - 1;
        rest = end < 0 ? [] : rest[(end + 1)..];
        if (!field.IsEmpty && (field[0] <= (byte)' ' || field[^1] <= (byte)' ')) field = field.Trim(" \t"u8);
        return true;
    }
}

/// <summary>Point or comma, by what the numbers of a table themselves prove.</summary>
sealed class DecimalMarkEvidence
{
    static readonly SearchValues<byte> Figures = SearchValues.Create("0123456789.,"u8);

    int commas;
    int points;
    (int Line, string Text)? doubtful;

    /// <summary>Where the numbers leave no choice, or none is needed: the mark.</summary>
    public char Mark => commas > 0 ? ',' : '.';

    /// <summary>What keeps the mark from being known, and the line; <c>null</c> where it is known.</summary>
    public (int? Line, string Says)? Objection =>
        commas > 0 && points > 0
            ? (null, FormattableString.Invariant($"{commas} numbers have a decimal comma and {points} a decimal point."))
        : commas == 0 && points == 0 && doubtful is var (line, text)
            ? (line, $"{RouteFile.Quoted(text)} may mean {text.Replace(',', '.')} or "
                + $"{text.Replace(",", "", StringComparison.Ordinal)}, and no number of the file tells which.")
        : null;

    public void Add(ReadOnlySpan<byte> field, int line)
    {
        var sign = field.IndexOfAny((byte)',', (byte)'.') < 0 ? Proof.None : Judge(field);
        if (sign == Proof.Comma) commas++;
        else if (sign == Proof.Point) points++;
        else if (sign == Proof.Doubt) doubtful ??= (line, Encoding.UTF8.GetString(field));
    }

    enum Proof
    {
        None,
        Comma,
        Point,
        Doubt,
    }

    static Proof Judge(ReadOnlySpan<byte> field)
    {
        if (field[0] is (byte)'-' or (byte)'+') field = field[1..];
        if (field.IndexOfAnyExcept(Figures) >= 0) return Proof.None;
        var (commas, points) = (field.Count((byte)','), field.Count((byte)'.'));
        if (commas > 0 && points > 0)
            return field.LastIndexOf((byte)',') > field.LastIndexOf((byte)'.') ? Proof.Comma : Proof.Point;
        if (commas + points > 1)
            return commas > 0 ? Proof.Point : Proof.Comma;
        var at = field.IndexOfAny((byte)',', (byte)'.');
        // Three digits after the mark, and one to three before it of which the first is no zero: it may part thousands.
        var mayPart = field.Length - at - 1 == 3 && at is >= 1 and <= 3 && field[0] != (byte)'0';
        if (mayPart) return commas > 0 ? Proof.Doubt : Proof.None;
        return commas > 0 ? Proof.Comma : Proof.Point;
    }
}
