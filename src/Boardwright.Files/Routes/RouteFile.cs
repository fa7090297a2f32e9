using System.Globalization;

namespace Boardwright.Files.Routes;

/// <summary>Reads routes: GPX 1.0 and 1.1, and tables.</summary>
/// <remarks>
/// Which of the two a file is, is seen from its first character, not from its name. Everything wrong is reported in one
/// go; nothing is half loaded. Numbers are read with a point whatever the culture.
/// </remarks>
public static class RouteFile
{
    /// <summary>Longest file read, bytes.</summary>
    public const int MostBytes = 64 * 1024 * 1024;
    /// <summary>Most complaints given about one file; the rest is usually the same again.</summary>
    public const int MostComplaints = 20;
    /// <summary>Longest route, km.</summary>
    public const double MostKilometres = 2000;
    /// <summary>Elevations outside these are refused, m: the shore of the Dead Sea and the highest mountain with room to spare.</summary>
    internal const double LowestElevation = -500, HighestElevation = 9000;

    /// <summary>Reads a route from a file on disk.</summary>
    /// <returns>The reading; a file that cannot be opened is a complaint.</returns>
    public static RouteReading Load(string path) => Load(path, FileTree.OnDisk);

    /// <summary>Reads a route from wherever files are kept.</summary>
    /// <returns>The reading; a file that cannot be opened is a complaint.</returns>
    public static RouteReading Load(string path, FileTree files)
    {
        var name = Path.GetFileName(path);
        try
        {
            using var content = files.OpenToRead(path);
            return Read(name, content);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            var says = error is FileNotFoundException or DirectoryNotFoundException ? "There is no such file." : "The file cannot be read.";
            return Refused(new Complaint(new(name, 1, 1), "", says, "Check the path, seen from the folder of the board file, and that you may read the file."));
        }
    }

    /// <summary>Reads a route.</summary>
    /// <param name="file">Name for the complaints, and for a route that has none of its own.</param>
    /// <param name="content">The whole file, at most <see cref="MostBytes"/> long.</param>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    public static RouteReading Read(string file, Stream content)
    {
        using var bytes = FileTree.AtMost(content, MostBytes);
        if (bytes is null)
            return TooLong(file);
        return LooksLikeMarkup(bytes.GetBuffer().AsSpan(0, (int)bytes.Length))
            ? new GpxRoute(file, new GpxScan(file, bytes)).Read()
            : new RouteTable(file).Read(bytes);
    }

    internal static RouteReading TooLong(string file) =>
        Refused(new Complaint(new(file, 1, 1), "", string.Create(CultureInfo.InvariantCulture, $"The file is longer than {MostBytes / (1024 * 1024)} MiB."), "Cut the recording to the part that is ridden, or thin its points."));

    internal static RouteReading Refused(params IReadOnlyList<Complaint> complaints) => new() { Complaints = complaints };

    /// <summary>A finite number written with a point; no thousands separators.</summary>
    internal static bool TryNumber(string text, out double number) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);

    /// <summary>What to do about a text that is no number.</summary>
    internal static string NumberRemedy(string text) =>
        text.Contains(',', StringComparison.Ordinal) ? "Write numbers with a point, as 12.5, not with a comma." : "Write a plain number, as 12.5.";

    /// <summary>A text out of a file as it may stand in a sentence: in quotes, short, and without control characters.</summary>
    internal static string Quoted(string text)
    {
        const int Most = 40;
        var shown = string.Concat(text.Take(Most).Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
        return text.Length > Most ? $"'{shown}…'" : $"'{shown}'";
    }

    /// <summary>The name without folder and ending.</summary>
    internal static string Title(string file)
    {
        var title = Path.GetFileNameWithoutExtension(file);
        return title.Length == 0 ? "route" : title;
    }

    // Byte order marks, and the zero bytes of UTF-16, are passed over like blanks.
    static bool LooksLikeMarkup(ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> passedOver = [(byte)' ', (byte)'\t', (byte)'\r', (byte)'\n', 0, 0xEF, 0xBB, 0xBF, 0xFE, 0xFF];
        var first = bytes.IndexOfAnyExcept(passedOver);
        return first >= 0 && bytes[first] == (byte)'<';
    }
}
