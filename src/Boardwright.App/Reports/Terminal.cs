using System.Text;

namespace Boardwright.App.Reports;

/// <summary>What the commands write to, and what it can show.</summary>
/// <param name="Out">Takes what was asked for.</param>
/// <param name="Error">Takes complaints.</param>
public sealed record Terminal(TextWriter Out, TextWriter Error)
{
    /// <summary>Where answers to questions come from.</summary>
    public TextReader In { get; init; } = TextReader.Null;
    /// <summary>Columns of a line; 80 wherever the output is not a screen.</summary>
    public int Width { get; init; } = 80;
    /// <summary>Whether colour and dim text may be used.</summary>
    public bool IsStyled { get; init; }
    /// <summary>Whether somebody is there to answer a question.</summary>
    public bool IsInteractive { get; init; }
    /// <summary>Whether an unexpected problem is shown in full.</summary>
    public bool ShowsTraces { get; init; }

    /// <summary>The terminal of this process.</summary>
    public static Terminal OfProcess()
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var isScreen = !Console.IsOutputRedirected;
        return new(Console.Out, Console.Error)
        {
            // Lines longer than about 100 letters are hard to follow with the eye.
            Width = isScreen ? Math.Clamp(Columns(), 30, 100) : 80,
            IsStyled = isScreen && Environment.GetEnvironmentVariable("TERM") != "dumb"
                && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
            In = Console.In,
            IsInteractive = isScreen && !Console.IsInputRedirected,
            ShowsTraces = Environment.GetEnvironmentVariable("BOARDWRIGHT_TRACE") == "1",
        };
    }

    // Some terminals report no width at all.
    static int Columns() => Console.WindowWidth is var width and > 0 ? width : 80;
}
