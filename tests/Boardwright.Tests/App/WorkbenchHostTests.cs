using Boardwright.App.Workbench;

namespace Boardwright.Tests.App;

public sealed class WorkbenchHostTests
{
    [Fact]
    public async Task The_first_page_can_be_rendered_for_nobody_before_the_server_answers()
    {
        using var folder = new Folder();
        await using var app = WorkbenchHost.Build(new WorkbenchStart(null) { Shop = Path.Combine(folder.Path, "shop.db") });

        await WorkbenchHost.WarmUp(app);

        Assert.False(File.Exists(Path.Combine(folder.Path, "shop.db")));
    }
}
