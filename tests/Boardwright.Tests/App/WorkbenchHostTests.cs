using Boardwright.App.Workbench.BoardPages;
using Boardwright.App.Workbench.Frame;

namespace Boardwright.Tests.App;

public sealed class WorkbenchHostTests
{
    [Fact]
    public async Task The_first_page_can_be_rendered_for_nobody_before_the_server_answers()
    {
        using var folder = new Folder();
        var start = new WorkbenchStart(null) { Shop = Path.Combine(folder.Path, "shop.db") };
        await using var boards = new OpenBoards(start);
        await using var app = WorkbenchHost.Build(start, boards);

        await WorkbenchHost.RehearseAsync(boards);
        await WorkbenchHost.WarmUpAsync(app);

        Assert.False(File.Exists(Path.Combine(folder.Path, "shop.db")));
    }
}
