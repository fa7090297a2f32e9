using System.Buffers.Text;

namespace Boardwright.Files.Logs;

/// <summary>Numbers and times of day as loggers write them, straight from bytes.</summary>
static class LogNumber
{
    static readonly double[] Tens =
        [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];

    /// <summary>Reads a number whose decimal mark is known; the other mark may part thousands where it stands in threes.</summary>
    public static bool TryRead(ReadOnlySpan<byte> field, byte mark, bool mayGroup, out double value)
    {
        var (at, digits, decimals, isNegative) = (0, 0, 0, false);
        long mantissa = 0;
        value = 0;
        if (at < field.Length && field[at] is (byte)'-' or (byte)'+') isNegative = field[at++] == (byte)'-';
        var start = at;
        for (; at < field.Length && field[at] is >= (byte)'0' and <= (byte)'9'; at++, digits++) mantissa = digits < 18
            ? 10 * mantissa + (field[at] - '0') : mantissa;
        if (at < field.Length && field[at] == mark)
        {
            for (at++; at < field.Length && field[at] is >= (byte)'0' and <= (byte)'9'; at++, digits++, decimals++) mantissa = digits < 18
                ? 10 * mantissa + (field[at] - '0') : mantissa;
        }

        if (at == field.Length && digits is > 0 and <= 15)
        {
            // Both numbers are exact, so their quotient is rounded once, as it should be.
            value = mantissa / Tens[decimals];
            if (isNegative) value = -value;
            return true;
        }

        return at > start && TrySlowly(field, mark, mayGroup, out value);
    }

    static bool TrySlowly(ReadOnlySpan<byte> field, byte mark, bool mayGroup, out double value)
    {
        value = 0;
        if (field.Length > 64) return false;
        Span<byte> plain = stackalloc byte[64];
        var (length, sinceGroup, isGrouped, isPastMark) = (0, -1, false, false);
        foreach (var c in field)
        {
            if (c == mark)
            {
                if (isPastMark || (isGrouped && sinceGroup != 3)) return false;
                isPastMark = true;
                plain[length++] = (byte)'.';
            }
            else if (c is (byte)',' or (byte)'.' or (byte)'\'')
            {
                if (!mayGroup || isPastMark || (isGrouped && sinceGroup != 3)) return false;
                (isGrouped, sinceGroup) = (true, 0);
            }
            else
            {
                if (isGrouped && !isPastMark) sinceGroup++;
                plain[length++] = c;
            }
        }

        if (isGrouped && !isPastMark && sinceGroup != 3) return false;
        var text = plain[..length];
        if (length > 0 && text[0] == (byte)'+') text = text[1..];
        return Utf8Parser.TryParse(text, out value, out var used) && used == text.Length && double.IsFinite(value);
    }

    /// <summary>Reads a time of day, with or without its date: seconds since midnight or since the year 1.</summary>
    public static bool TryClock(ReadOnlySpan<byte> field, out double seconds, out bool hasDate)
    {
        (seconds, hasDate) = (0, false);
        var rest = field;
        long days = 0;
        var split = rest.IndexOfAny((byte)'T', (byte)' ');
        if (split > 0 && rest[..split].IndexOf((byte)':') < 0)
        {
            if (!TryDate(rest[..split], out days)) return false;
            hasDate = true;
            rest = rest[(split + 1)..].TrimStart((byte)' ');
        }

        var offset = 0.0;
        if (rest.Length > 0 && rest[^1] == (byte)'Z') rest = rest[..^1];
        else if (hasDate && rest.LastIndexOfAny((byte)'+', (byte)'-') is > 0 and var sign)
        {
            if (!TryParts(rest[(sign + 1)..], out offset, least: 1)) return false;
            // hh:mm read as two parts is in hours and minutes.
            if (rest[sign] == (byte)'-') offset = -offset;
            rest = rest[..sign];
        }

        if (!TryParts(rest, out var ofDay, least: 3) || ofDay >= 86_401) return false;
        seconds = days * 86_400.0 + ofDay - offset;
        return true;
    }

    /// <summary>hh, hh:mm or hh:mm:ss.f in seconds.</summary>
    static bool TryParts(ReadOnlySpan<byte> text, out double seconds, int least)
    {
        seconds = 0;
        ReadOnlySpan<double> worth = [3600, 60, 1];
        for (var part = 0; part < 3; part++)
        {
            var end = text.IndexOf((byte)':');
            var field = end < 0 ? text : text[..end];
            var fraction = part == 2 ? field.IndexOfAny((byte)'.', (byte)',') : -1;
            var whole = fraction < 0 ? field : field[..fraction];
            if (whole.Length is 0 or > 2 || !TryRead(field, fraction < 0 ? (byte)'.' : field[fraction], mayGroup: false, out var value)
                || value < 0 || (part > 0 && value >= 61))
                return false;
            seconds += value * worth[part];
            if (end < 0) return part + 1 >= least;
            text = text[(end + 1)..];
        }

        return false;
    }

    /// <summary>2026-05-31, 2026/05/31, 20260531 or 31.05.2026; the others do not say which is the month.</summary>
    static bool TryDate(ReadOnlySpan<byte> text, out long days)
    {
        days = 0;
        Span<int> parts = stackalloc int[3];
        var (count, value, digits, firstDigits) = (0, 0, 0, 0);
        byte mark = 0;
        foreach (var c in text)
        {
            if (c is >= (byte)'0' and <= (byte)'9' && digits < 4)
            {
                value = 10 * value + (c - '0');
                digits++;
                continue;
            }

            if (c is not ((byte)'-' or (byte)'/' or (byte)'.') || digits == 0 || count == 2 || (mark != 0 && mark != c)) return false;
            if (count == 0) firstDigits = digits;
            mark = c;
            parts[count++] = value;
            (value, digits) = (0, 0);
        }

        if (count != 2 || digits == 0) return false;
        parts[2] = value;
        var (year, month, day) = firstDigits == 4 ? (parts[0], parts[1], parts[2]) : (parts[2], parts[1], parts[0]);
        if (firstDigits != 4 && (mark != (byte)'.' || digits != 4)) return false;
        if (year is < 1 or > 9998 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month)) return false;
        days = new DateOnly(year, month, day).DayNumber;
        return true;
    }
}
