using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Boardwright.Browser.Tests;

static class PageAssertions
{
    // All its rules; what passes them is not listed, which takes most of the time.
    static readonly AxeRunOptions Violations = new() { ResultTypes = [ResultType.Violations] };

    /// <summary>Holds a page against what axe knows, and its width against the window's.</summary>
    public static async Task HoldAsync(IPage page)
    {
        var result = await page.RunAxe(Violations);
        Assert.Equal("", string.Join("\n", result.Violations.Select(v => $"{v.Id}: {v.Help} {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}")));
        Assert.Equal(page.ViewportSize!.Width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
    }
}
