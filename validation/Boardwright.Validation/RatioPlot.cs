using System.Security;
using System.Text;
using static System.FormattableString;

namespace Boardwright.Validation;

/// <summary>Draws a topic: for each check the ratio of the program's value to the published one, around the line of equality, with the
/// range allowed.</summary>
/// <remarks>The scale is linear within one part in 100 000 of equality and logarithmic beyond, so that differences of every size can be
/// seen.</remarks>
public static class RatioPlot
{
    const double Linear = 1e-5;
    const double Left = 78, Right = 704, Top = 34, Bottom = 226, Middle = (Top + Bottom) / 2;
    static readonly double[] Ticks = [0.0001, 0.001, 0.01, 0.1];

    /// <summary>The drawing as an SVG document; checks of a published zero have no ratio and are left out.</summary>
    public static string Svg(Case topic)
    {
        ArgumentNullException.ThrowIfNull(topic);
        var points = topic.Checks.Select(static (check, i) => (Check: check, Number: i + 1))
            .Where(static p => p.Check.RelativeDifference is { } d && double.IsFinite(d)).ToList();
        var most = points.Count == 0 ? Ticks[0]
            : points.Max(static p => Math.Max(Math.Abs(p.Check.RelativeDifference!.Value), Limit(p.Check)));
        var reach = Height(Math.Clamp(most, Ticks[0], 1));
        double Y(double relative) =>
            Middle - Math.Clamp(Math.Sign(relative) * Height(Math.Abs(relative)) / reach, -1, 1) * (Bottom - Top - 12) / 2;
        double X(int number) => Left + (Right - Left) * (number - 0.5) / Math.Max(1, topic.Checks.Count);

        var svg = new StringBuilder();
        var misses = topic.Checks.Count(static c => c.IsMiss);
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 720 264\" width=\"720\" height=\"264\" role=\"img\" aria-labelledby=\"title desc\">\n");
        svg.Append(Invariant($"<title id=\"title\">{Escape(topic.Topic)}: computed over published</title>\n"));
        svg.Append(Invariant($"<desc id=\"desc\">{points.Count} checks by number from left to right. A dot is the ratio of the computed to the published value, the bar the range allowed; on the middle line the two are equal. {misses} of the checks miss.</desc>\n"));
        svg.Append("""
            <style>
            text { font: 12px system-ui, sans-serif; fill: #333; }
            .axis { stroke: #333; stroke-width: 1.2; }
            .grid { stroke: #999; stroke-width: 0.6; stroke-dasharray: 2 4; }
            .allowed { stroke: #7aa7d9; stroke-width: 5; stroke-linecap: butt; opacity: 0.7; }
            .dot { fill: #10508f; }
            .miss { stroke: #b3261e; stroke-width: 2.4; fill: none; }
            @media (prefers-color-scheme: dark) {
            text { fill: #ddd; }
            .axis { stroke: #ddd; }
            .grid { stroke: #888; }
            .allowed { stroke: #3f6d9e; }
            .dot { fill: #a9d1ff; }
            .miss { stroke: #ff8a80; }
            }
            </style>

            """.ReplaceLineEndings("\n"));
        svg.Append(Invariant($"<text x=\"{Left}\" y=\"18\">{Escape(topic.Topic)}: computed / published</text>\n"));
        foreach (var tick in Ticks.Where(tick => Height(tick) <= reach))
        {
            Line("grid", Left, Y(tick), Right, Y(tick));
            Line("grid", Left, Y(-tick), Right, Y(-tick));
            Label(Left - 6, Y(tick) + 4, "end", Invariant($"+{tick * 100:0.##} %"));
            Label(Left - 6, Y(-tick) + 4, "end", Invariant($"−{tick * 100:0.##} %"));
        }

        Label(Left - 6, Middle + 4, "end", "equal");
        var every = Math.Max(1, (topic.Checks.Count + 19) / 20);
        for (var number = 1; number <= topic.Checks.Count; number += every)
            Label(X(number), Bottom + 18, "middle", Invariant($"{number}"));
        Label((Left + Right) / 2, Bottom + 34, "middle", "number of the check");
        foreach (var (check, number) in points)
            Line("allowed", X(number), Y(Limit(check)), X(number), Y(-Limit(check)));
        Line("axis", Left, Middle, Right, Middle);
        foreach (var (check, number) in points)
        {
            var (x, y) = (X(number), Y(check.RelativeDifference!.Value));
            svg.Append(check.IsMiss
                ? Invariant($"<path class=\"miss\" d=\"M{x - 4:0.0} {y - 4:0.0}l8 8m0 -8l-8 8\"/>\n")
                : Invariant($"<circle class=\"dot\" cx=\"{x:0.0}\" cy=\"{y:0.0}\" r=\"2.6\"/>\n"));
        }

        return svg.Append("</svg>\n").ToString();

        void Line(string style, double x1, double y1, double x2, double y2) =>
            svg.Append(Invariant($"<line class=\"{style}\" x1=\"{x1:0.0}\" y1=\"{y1:0.0}\" x2=\"{x2:0.0}\" y2=\"{y2:0.0}\"/>\n"));

        void Label(double x, double y, string anchor, string text) =>
            svg.Append(Invariant($"<text x=\"{x:0.0}\" y=\"{y:0.0}\" text-anchor=\"{anchor}\">{text}</text>\n"));
    }

    static double Limit(Check check) => check.Limit / Math.Abs(check.Published.Value);

    static double Height(double relative) => Math.Log10(1 + relative / Linear);

    static string Escape(string text) => SecurityElement.Escape(text);
}
