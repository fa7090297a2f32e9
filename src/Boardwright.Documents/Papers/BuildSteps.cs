using Boardwright.Builds;

namespace Boardwright.Documents.Papers;

/// <summary>The steps of a board's build sheet and the lines of its bench list, as a built board keeps count of them: the papers' own lines.</summary>
public static class BuildSteps
{
    /// <summary>Every step and check, in the order of the papers.</summary>
    /// <param name="order">The board; with intervals, since some ranges are theirs.</param>
    public static IReadOnlyList<Step> Of(PaperOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return [.. Of(StepList.Building, BuildSheet.Of(new(order))), .. Of(StepList.Bench, BenchList.Of(new(order)))];
    }

    static IEnumerable<Step> Of(StepList list, IReadOnlyList<Block> blocks)
    {
        var (heading, caution) = ("", "");
        foreach (var block in blocks)
        {
            switch (block)
            {
                case Heading next:
                    (heading, caution) = (next.Text, "");
                    break;
                case Caution next:
                    caution = next.Text;
                    break;
                case Checks checks:
                    foreach (var check in checks.Items.Where(static check => check.Id.Length > 0))
                        yield return new(check.Id, list, heading, check.Text) { Passes = check.Pass, Unit = Benchwork.DimensionOf(check.Write ?? "") is null ? null : check.Write, Range = check.Range, Caution = caution, IsOnRoad = heading == BenchList.OnTheRoad };
                    break;
            }
        }
    }
}
