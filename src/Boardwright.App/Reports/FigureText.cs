using System.Globalization;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.App.Reports;

/// <summary>How figures are set beside what the brief asks, in reports and on pages alike.</summary>
static class FigureText
{
    /// <summary>What a rider asks about first, in this order; the rest is shown when everything is asked for.</summary>
    public static IReadOnlyList<(string Heading, string[] Ids)> Chapters { get; } =
    [
        ("What it does",
        [
            "speed.top_full", "speed.top_half", "speed.top_reserve", "climb.grade_at_climb_speed", "cruise.range", "cruise.consumption",
            "heat.minutes_to_limit_at_climb", "brake.regen_distance", "charge.time_full", "charge.time_lower_bound",
        ]),
        ("What it weighs", ["mass.board", "mass.rolling"]),
        ("What it costs", ["money.parts", "money.cost", "money.price"]),
    ];

    /// <summary>The title, with the speed that the figure holds for: a range without its pace says nothing.</summary>
    public static string Label(Board board, Figure figure, UnitSystem units)
    {
        var brief = board.Brief;
        return figure.Kind.Id switch
        {
            "cruise.range" or "cruise.consumption" or "cruise.power" when brief.CruiseSpeed.IsKnown => $"{figure.Kind.Title}, {DescribeKnown(brief.CruiseSpeed, "0.# km/h", units)}",
            "brake.regen_distance" or "brake.regen_distance_full" when brief.CruiseSpeed.IsKnown => $"{figure.Kind.Title}, {DescribeKnown(brief.CruiseSpeed, "0.# km/h", units)}",
            "climb.grade_at_climb_speed" when brief.ClimbSpeed.IsKnown => $"{figure.Kind.Title}, {DescribeKnown(brief.ClimbSpeed, "0.# km/h", units)}",
            _ => figure.Kind.Title,
        };
    }

    /// <summary>What the brief asks of a figure; empty where it asks nothing.</summary>
    public static string DescribeTarget(Board board, string id, UnitSystem units)
    {
        var brief = board.Brief;
        return id switch
        {
            "speed.top_full" => DescribeKnown(brief.TopSpeedWanted, "0.# km/h", units),
            "climb.grade_at_climb_speed" => DescribeKnown(brief.ClimbWanted, "0.# %", units),
            "cruise.range" => DescribeKnown(brief.RangeWanted, "0.# km", units),
            _ => "",
        };
    }

    static string DescribeKnown<T>(Known<T> wanted, string format, UnitSystem units)
        where T : struct, IQuantity<T> =>
        wanted.IsKnown ? wanted.Value.ToString(format, units) : "";

    /// <summary>What the brief wants of a figure, in the figure's own unit.</summary>
    /// <returns>The least value that will do, or <c>null</c> where the brief wants nothing of it.</returns>
    public static double? Wanted(Board board, string id)
    {
        var brief = board.Brief;
        return id switch
        {
            "speed.top_full" when brief.TopSpeedWanted.IsKnown => brief.TopSpeedWanted.Value.KilometresPerHour,
            "climb.grade_at_climb_speed" when brief.ClimbWanted.IsKnown => brief.ClimbWanted.Value.Percent,
            "cruise.range" when brief.RangeWanted.IsKnown => brief.RangeWanted.Value.Kilometres,
            _ => null,
        };
    }

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

    /// <summary>The ends of an interval, with as many decimals as three digits of the value need, so that they can be compared at a glance.</summary>
    public static string Ends(UnitSystem units, double value, string unit, Interval interval)
    {
        var shown = Dimensions.In(units, value, unit).Value;
        var magnitude = shown == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(shown)));
        var decimals = "F" + Math.Clamp(2 - magnitude, 0, 6).ToString(CultureInfo.InvariantCulture);
        return $"{End(interval.Low)} to {End(interval.High)}";

        string End(double end) => Dimensions.In(units, end, unit).Value.ToString(decimals, CultureInfo.InvariantCulture);
    }
}
