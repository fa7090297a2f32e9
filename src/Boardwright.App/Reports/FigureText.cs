using System.Globalization;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.App.Reports;

/// <summary>How figures are set beside what the brief asks, in reports and on pages alike.</summary>
static class FigureText
{
    /// <summary>What a rider asks about first, in this order; the rest is shown when everything is asked for.</summary>
    public static IReadOnlyList<(string Heading, string[] Ids)> Chapters { get; } =
    [
        ("What it does", Ids(
            Catalogue.TopFull, Catalogue.TopHalf, Catalogue.TopReserve, Catalogue.Grade, Catalogue.Range, Catalogue.Consumption,
            Catalogue.Minutes, Catalogue.BrakeDistance, Catalogue.ChargeFull, Catalogue.ChargeBound)),
        ("What it weighs", Ids(Catalogue.BoardMass, Catalogue.RollingMass)),
        ("What it costs", Ids(Catalogue.PartsCost, Catalogue.Cost, Catalogue.Price)),
    ];

    static string[] Ids(params ReadOnlySpan<FigureKind> kinds) => [.. kinds.ToArray().Select(k => k.Id)];

    /// <summary>The title, with the speed that the figure holds for.</summary>
    public static string Label(Board board, Figure figure, UnitSystem units) =>
        FigureTarget.PaceOf(board, figure.Kind.Id) is { IsKnown: true, Value: var pace } ? $"{figure.Kind.Title}, {pace.ToString("0.# km/h", units)}" : figure.Kind.Title;

    /// <summary>What the brief asks of a figure; empty where it asks nothing.</summary>
    public static string DescribeTarget(Board board, string id, UnitSystem units) => FigureTarget.Find(board, id)?.Text(units) ?? "";

    /// <summary>A figure in the reader's units, or why there is none.</summary>
    public static string Format(UnitSystem units, Figure figure) =>
        figure.Value is { } value ? Format(units, value, figure.Unit, null)
        : figure.Missing.Count > 0 ? "needs " + string.Join(", ", figure.Missing.Take(2)) + (figure.Missing.Count > 2 ? " …" : "")
        : figure.Caution ?? figure.Text ?? "has no answer";

    /// <summary>A value with its unit in the reader's units, and the interval in brackets where there is one.</summary>
    public static string Format(UnitSystem units, double value, string unit, Interval? interval)
    {
        if (!double.IsFinite(value))
            return "not a number";
        var isMoney = unit.Length == 3 && unit.All(char.IsAsciiLetterUpper);
        var (shown, symbol) = Dimensions.In(units, value, unit);
        var number = isMoney ? shown.ToString("0.00", CultureInfo.InvariantCulture) : Dimension.Figures(shown);
        var text = symbol.Length > 0 ? $"{number} {symbol}" : number;
        if (interval is null || interval.Low == interval.High)
            return text;
        return $"{text} ({Ends(units, value, unit, interval)})";
    }

    /// <summary>The ends of an interval, with as many decimals as three digits of the value need, so that they can be compared at a
    /// glance.</summary>
    public static string Ends(UnitSystem units, double value, string unit, Interval interval)
    {
        var shown = Dimensions.In(units, value, unit).Value;
        var magnitude = shown == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(shown)));
        var decimals = "F" + Math.Clamp(2 - magnitude, 0, 6).ToString(CultureInfo.InvariantCulture);
        return $"{End(interval.Low)} to {End(interval.High)}";

        string End(double end) => Dimensions.In(units, end, unit).Value.ToString(decimals, CultureInfo.InvariantCulture);
    }
}
