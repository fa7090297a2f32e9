using System.Globalization;
using System.Runtime.InteropServices;

namespace Boardwright.Files.Boards;

/// <summary>How many cells a pack has, as packs are sold: <c>12S4P</c>.</summary>
/// <param name="Series">Cells in series.</param>
/// <param name="Parallel">Cells in parallel.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CellCount(int Series, int Parallel)
{
    const int MostDigits = 3;

    /// <summary>Reads <c>12S4P</c>, in any capitals and with or without spaces; both numbers are at least one.</summary>
    /// <returns>The count; <c>null</c> where the text is none.</returns>
    public static CellCount? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var bare = string.Concat(text.Where(static c => !char.IsWhiteSpace(c))).ToUpperInvariant();
        var s = bare.IndexOf('S', StringComparison.Ordinal);
        return s > 0 && bare.EndsWith('P') && Number(bare[..s]) is { } series && Number(bare[(s + 1)..^1]) is { } parallel
            ? new CellCount(series, parallel) : null;
    }

    /// <summary>As packs are sold: <c>12S4P</c>.</summary>
    public override string ToString() => FormattableString.Invariant($"{Series}S{Parallel}P");

    static int? Number(string digits) =>
        digits.Length is > 0 and <= MostDigits && int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && number > 0 ? number : null;
}
