using System.Text;
using Spectre.Console;

namespace Boardwright.App.Reports;

/// <summary>What a piece of text is for; decides how it looks where the terminal shows styles.</summary>
enum TerminalStyle
{
    /// <summary>Plain text.</summary>
    Plain,
    /// <summary>A heading.</summary>
    Heading,
    /// <summary>Something that steps back: sources, explanations.</summary>
    Quiet,
    /// <summary>The word for a level.</summary>
    Stop,

    /// <inheritdoc cref="Stop"/>
    Fix,

    /// <inheritdoc cref="Stop"/>
    Measure,

    /// <inheritdoc cref="Stop"/>
    Fine,
}

/// <summary>Writes text in lines that fit a width. Styles only repeat what the words say, so nothing is lost without them.</summary>
sealed class TerminalText
{
    readonly TextWriter writer;
    readonly IAnsiConsole? console;

    public TerminalText(TextWriter writer, int width, bool isStyled)
    {
        (this.writer, Width) = (writer, width);
        // The styling library is not even loaded for pipes and files.
        console = isStyled ? Styled(writer) : null;
    }

    public TerminalText(Terminal terminal)
        : this(terminal.Out, terminal.Width, terminal.IsStyled)
    {
    }

    /// <summary>Columns of a line.</summary>
    public int Width { get; }
    /// <summary>An empty line.</summary>
    public void Gap() => writer.Write('\n');

    /// <summary>Text from an indent on; a lead stands before it on the first line.</summary>
    public void Write(int indent, string text, TerminalStyle ink = TerminalStyle.Plain, string lead = "",
        TerminalStyle leadInk = TerminalStyle.Plain, int leadIndent = 0)
    {
        var isFirst = true;
        foreach (var line in Wrapped(text, Math.Max(10, Width - indent)))
        {
            if (isFirst && lead.Length > 0)
            {
                writer.Write(Blanks(leadIndent));
                Append(lead, leadInk);
                if (line.Length > 0)
                    writer.Write(Blanks(Math.Max(1, indent - leadIndent - Cells(lead))));
            }
            else if (line.Length > 0)
                writer.Write(Blanks(indent));
            Append(line, ink);
            Gap();
            isFirst = false;
        }
    }

    /// <summary>Text cut into lines at its blanks; a word that is longer than a line is cut anywhere.</summary>
    public static IEnumerable<string> Wrapped(string text, int width)
    {
        var line = new StringBuilder();
        var used = 0;
        foreach (var word in text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            if (used > 0 && used + 1 + Cells(rest) > width)
            {
                yield return line.ToString();
                line.Clear();
                used = 0;
            }

            while (Cells(rest) > width)
            {
                yield return rest[..width];
                rest = rest[width..];
            }

            if (used > 0)
            {
                line.Append(' ');
                used++;
            }

            line.Append(rest);
            used += Cells(rest);
        }

        yield return line.ToString();
    }

    /// <summary>Text filled up with blanks to a number of columns.</summary>
    public static string Padded(string text, int columns) => text + Blanks(columns - Cells(text));

    /// <summary>Columns that a text takes.</summary>
    public static int Cells(string text)
    {
        foreach (var c in text)
        {
            // No sign before this one is wider than one column.
            if (c >= '\u1100')
                return text.GetCellWidth();
        }

        return text.Length;
    }

    static string Blanks(int count) => new(' ', Math.Max(0, count));

    void Append(string text, TerminalStyle ink)
    {
        if (console is null || ink == TerminalStyle.Plain)
            writer.Write(text);
        else
            console.Write(text, Look(ink));
    }

    static Style Look(TerminalStyle ink) => ink switch
    {
        TerminalStyle.Heading => new(decoration: Decoration.Bold),
        TerminalStyle.Quiet => new(decoration: Decoration.Dim),
        TerminalStyle.Stop => new(Color.Red, decoration: Decoration.Bold),
        TerminalStyle.Fix => new(Color.Olive, decoration: Decoration.Bold),
        TerminalStyle.Measure => new(Color.Teal, decoration: Decoration.Bold),
        TerminalStyle.Fine => new(Color.Green),
        _ => Style.Plain,
    };

    static IAnsiConsole Styled(TextWriter writer)
    {
        var styled = AnsiConsole.Create(new AnsiConsoleSettings { Ansi = AnsiSupport.Yes, Out = new AnsiConsoleOutput(writer) });
        // Lines are cut here, not there.
        styled.Profile.Width = 10_000;
        return styled;
    }
}
