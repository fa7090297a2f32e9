using System.Buffers.Binary;

namespace Boardwright.Documents.Pdf;

/// <summary>How wide the signs of a TrueType face are, and which of them it has.</summary>
sealed class FontFile
{
    readonly Dictionary<int, ushort> glyphs = [];
    readonly ushort[] widths;
    readonly double unitsPerEm;

    FontFile(byte[] bytes)
    {
        Bytes = bytes;
        var tables = Tables(bytes);
        unitsPerEm = Short(tables["head"] + 18);
        widths = new ushort[Short(tables["hhea"] + 34)];
        for (var i = 0; i < widths.Length; i++)
            widths[i] = Short(tables["hmtx"] + 4 * i);
        ReadSigns(tables["cmap"]);
    }

    /// <summary>The upright face.</summary>
    public static FontFile Regular { get; } = Embedded("Inter-Regular.ttf");
    /// <summary>The bold face.</summary>
    public static FontFile Bold { get; } = Embedded("Inter-Bold.ttf");
    /// <summary>The file.</summary>
    public byte[] Bytes { get; }
    /// <summary>Whether it has a sign.</summary>
    public bool Has(int sign) => glyphs.ContainsKey(sign);

    /// <summary>Width of a text.</summary>
    public double WidthOf(string text, double size)
    {
        var sum = 0L;
        foreach (var rune in text.EnumerateRunes())
        {
            var glyph = glyphs.TryGetValue(rune.Value, out var found) ? found : 0;
            sum += widths[Math.Min(glyph, widths.Length - 1)];
        }

        return sum * size / unitsPerEm;
    }

    static FontFile Embedded(string name)
    {
        using var stream = typeof(FontFile).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"The face {name} was not built in.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new FontFile(bytes);
    }

    static Dictionary<string, int> Tables(byte[] bytes)
    {
        var tables = new Dictionary<string, int>(StringComparer.Ordinal);
        var count = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(4));
        for (var i = 0; i < count; i++)
        {
            var record = bytes.AsSpan(12 + 16 * i, 16);
            tables[System.Text.Encoding.ASCII.GetString(record[..4])] = (int)BinaryPrimitives.ReadUInt32BigEndian(record[8..]);
        }

        return tables;
    }

    void ReadSigns(int table)
    {
        var count = Short(table + 2);
        for (var i = 0; i < count; i++)
        {
            var place = table + (int)Long(table + 4 + 8 * i + 4);
            switch (Short(place))
            {
                case 4:
                    ReadSegments(place);
                    break;
                case 12:
                    ReadGroups(place);
                    break;
            }
        }
    }

    // Format 4: segments of signs of the basic plane.
    void ReadSegments(int place)
    {
        var twice = Short(place + 6);
        var (ends, starts, deltas, offsets) = (place + 14, place + 16 + twice, place + 16 + 2 * twice, place + 16 + 3 * twice);
        for (var s = 0; s < twice; s += 2)
        {
            var (start, end, delta, offset) = (Short(starts + s), Short(ends + s), Short(deltas + s), Short(offsets + s));
            for (int sign = start; sign <= end && sign != 0xFFFF; sign++)
            {
                var glyph = offset == 0 ? (sign + delta) & 0xFFFF : Short(offsets + s + offset + 2 * (sign - start));
                if (offset != 0 && glyph != 0)
                    glyph = (glyph + delta) & 0xFFFF;
                if (glyph != 0)
                    glyphs.TryAdd(sign, (ushort)glyph);
            }
        }
    }

    // Format 12: groups of signs of all planes.
    void ReadGroups(int place)
    {
        var count = (int)Long(place + 12);
        for (var g = 0; g < count; g++)
        {
            var group = place + 16 + 12 * g;
            var (start, end, glyph) = (Long(group), Long(group + 4), Long(group + 8));
            for (var sign = start; sign <= end; sign++)
                glyphs.TryAdd((int)sign, (ushort)(glyph + sign - start));
        }
    }

    ushort Short(int place) => BinaryPrimitives.ReadUInt16BigEndian(Bytes.AsSpan(place));

    uint Long(int place) => BinaryPrimitives.ReadUInt32BigEndian(Bytes.AsSpan(place));
}
