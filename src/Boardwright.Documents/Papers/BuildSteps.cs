using Boardwright.Builds;

namespace Boardwright.Documents.Papers;

/// <summary>The steps of a board's build sheet and the lines of its bench list, as a built board keeps count of them: the papers' own
/// lines.</summary>
public static class BuildSteps
{
    /// <summary>Every step and check, in the order of the papers.</summary>
    /// <param name="order">The board; with intervals, since some ranges are theirs.</param>
    public static IReadOnlyList<Step> Collect(PaperOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return [.. Collect(StepList.Building, BuildSheet.Compose(new(order))), .. Collect(StepList.Bench, BenchList.Compose(new(order)))];
    }

    static IEnumerable<Step> Collect(StepList list, IReadOnlyList<Block> blocks)
    {
        var (heading, caution) = ("", "");
        foreach (var block in blocks)
        {
            switch (block)
            {
                case HeadingBlock next:
                    (heading, caution) = (next.Text, "");
                    break;
                case CautionBlock next:
                    caution = next.Text;
                    break;
                case ChecksBlock checks:
                    foreach (var check in checks.Items.Where(static check => check.Id.Length > 0))
                        yield return new(check.Id, list, heading, check.Text)
                        {
                            Passes = check.Pass,
                            Unit = Benchwork.DimensionOf(check.Write ?? "") is null ? null : check.Write,
                            Range = check.Range,
                            Caution = caution,
                            IsOnRoad = heading == BenchList.OnTheRoad
                        };
                    break;
            }
        }
    }
}
