using System.Runtime.InteropServices;

namespace Boardwright.Documents.Charts;

/// <summary>What a chart shows, for page, paper and command line alike; how wide, in which units and in which medium is decided
/// later.</summary>
public sealed record Chart
{
    /// <summary>A word that tells it from others; letters, digits and hyphens.</summary>
    public required string Name { get; init; }
    /// <summary>What it shows, in a few words.</summary>
    public required string Title { get; init; }
    /// <summary>What is to be seen, in sentences: stands below the chart and is read to those who do not see it.</summary>
    public Phrase Says { get; init; }
    /// <summary>The axis from left to right, which all panels share.</summary>
    public required Axis Across { get; init; }
    /// <summary>The panels, from the top down.</summary>
    public required IReadOnlyList<Panel> Panels { get; init; }
    /// <summary>Upright lines through all panels; the topmost panel has their labels.</summary>
    public IReadOnlyList<Guide> Guides { get; init; } = [];
}

/// <summary>A quantity along an axis.</summary>
/// <param name="Says">What is measured, in a word or two.</param>
/// <param name="Dimension">Its dimension.</param>
/// <param name="Unit">Symbol of the unit in a metric chart; an imperial one takes its counterpart.</param>
public sealed record Axis(string Says, Dimension Dimension, string Unit)
{
    /// <summary>A value that the axis must reach, SI; <c>null</c> where the values alone decide.</summary>
    public double? From { get; init; }

    /// <inheritdoc cref="From"/>
    public double? To { get; init; }

    /// <summary>An axis of a quantity in its usual unit, or in another one.</summary>
    public static Axis For<T>(string says, string? unit = null)
        where T : struct, IQuantity<T> => new(says, T.Dimension, unit ?? T.Dimension.Usual.Symbol);

    /// <summary>The unit in which the axis is written.</summary>
    public Unit UnitIn(UnitSystem units)
    {
        var metric = Dimension.Find(Unit) ?? throw new InvalidOperationException($"'{Unit}' is not a unit of {Dimension.Name}.");
        return units.IsImperial && metric.Imperial is { } counterpart ? Dimension.Find(counterpart)! : metric;
    }

    /// <summary>The heading of the axis: what is measured, and the unit.</summary>
    public string HeadingIn(UnitSystem units) => SymbolOf(UnitIn(units)) is { Length: > 0 } symbol ? $"{Says}, {symbol}" : Says;
    /// <summary>How a unit is written beside numbers.</summary>
    public static string SymbolOf(Unit unit) => unit.Symbol.EndsWith("ohm", StringComparison.Ordinal) ? unit.Symbol[..^3] + "Ω" : unit.Symbol;
}

/// <summary>One field of a chart.</summary>
public abstract record Panel
{
    /// <summary>Height relative to the other panels.</summary>
    public double Share { get; init; } = 1;
}

/// <summary>Lines, bands and areas over the axis across.</summary>
/// <param name="Up">The axis upwards.</param>
public sealed record LinePanel(Axis Up) : Panel
{
    /// <summary>What is drawn, the lowest first.</summary>
    public required IReadOnlyList<ChartSeries> Series { get; init; }
    /// <summary>Level lines with labels.</summary>
    public IReadOnlyList<Guide> Levels { get; init; } = [];
    /// <summary>Marked places with labels.</summary>
    public IReadOnlyList<ChartMark> Marks { get; init; } = [];
}

/// <summary>Bars along the axis across, one below another, each with its name and its amount.</summary>
/// <param name="Bars">The bars, from the top down.</param>
sealed record BarPanel(IReadOnlyList<Bar> Bars) : Panel;

/// <summary>A bar from one value to another on the axis across, SI.</summary>
/// <param name="Name">Its name.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Amount">Its amount in words.</param>
/// <param name="Kind">Number of its kind from 0; bars of one kind are filled alike.</param>
/// <param name="IsSum">Whether it is the sum of those above.</param>
sealed record Bar(string Name, double From, double To, Phrase Amount, int Kind = 0, bool IsSum = false);

/// <summary>A line for reference at a value of an axis.</summary>
/// <param name="At">The value, SI.</param>
/// <param name="Label">What it stands for.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Guide(double At, Phrase Label);

/// <summary>A marked place.</summary>
/// <param name="X">Value on the axis across, SI.</param>
/// <param name="Y">Value on the axis upwards, SI.</param>
/// <param name="Label">What is there; may be empty.</param>
/// <param name="Pen">Number of the series it belongs to, for its colour.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ChartMark(double X, double Y, Phrase Label, int Pen = 0);

/// <summary>Values over the axis across.</summary>
/// <param name="Name">Its name, which is written beside it.</param>
/// <param name="X">Values on the axis across, SI, never falling.</param>
public abstract record ChartSeries(string Name, ReadOnlyMemory<double> X)
{
    /// <summary>Number of its colour and pattern, from 0; where not given, its place in the panel.</summary>
    public int? Pen { get; init; }
}

/// <summary>A line. Where a value is not a number there is a gap.</summary>
/// <param name="Name">Its name, which is written beside it.</param>
/// <param name="X">Values on the axis across, SI, never falling.</param>
/// <param name="Y">Values on the axis upwards, SI.</param>
public sealed record Line(string Name, ReadOnlyMemory<double> X, ReadOnlyMemory<double> Y) : ChartSeries(Name, X)
{
    /// <summary>Whether it is only there to compare with.</summary>
    public bool IsThin { get; init; }
    /// <summary>Place on the axis across, SI, near which its name is best written when it does not reach the right edge.</summary>
    public double? LabelAt { get; init; }
    /// <summary>Parts of it that have a name of their own.</summary>
    public IReadOnlyList<AxisRange> Stretches { get; init; } = [];
}

/// <summary>A part of a line with a name of its own.</summary>
/// <param name="From">Where it begins on the axis across, SI.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Says">Its name; empty where only its ends are marked.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct AxisRange(double From, double To, string Says);

/// <summary>A band between a low and a high value.</summary>
/// <param name="Name">Its name, which is written beside it.</param>
/// <param name="X">Values on the axis across, SI, never falling.</param>
/// <param name="Low">Its lower edge, SI.</param>
/// <param name="High">Its upper edge, SI.</param>
public sealed record Band(string Name, ReadOnlyMemory<double> X, ReadOnlyMemory<double> Low, ReadOnlyMemory<double> High)
    : ChartSeries(Name, X);

/// <summary>Areas on top of one another, so that their sum is seen.</summary>
/// <param name="X">Values on the axis across, SI, never falling.</param>
/// <param name="Layers">The areas, the lowest first; finite values of 0 or more.</param>
sealed record LayeredPanel(ReadOnlyMemory<double> X, IReadOnlyList<ChartLayer> Layers) : ChartSeries("", X);

/// <summary>One area of a stack.</summary>
/// <param name="Name">Its name, which is written beside it.</param>
/// <param name="Y">How high it is, SI.</param>
sealed record ChartLayer(string Name, ReadOnlyMemory<double> Y);
