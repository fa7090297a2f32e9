namespace Boardwright.Tests.Lessons;

/// <summary>The recorded trips that are kept beside the repository, not in it.</summary>
static class RideFolder
{
    /// <summary>A file among them; the test is skipped where there are none.</summary>
    public static string At(params string[] names)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var rides = Path.Combine(folder.FullName, "shared", "data", "ride");
            if (Directory.Exists(rides)) return Path.Combine([rides, .. names]);
        }

        Assert.Skip("The folder shared/data/ride with the recorded trips is not above this one.");
        return "";
    }
}
