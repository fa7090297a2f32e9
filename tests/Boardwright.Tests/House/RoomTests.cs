using System.Text.RegularExpressions;
using Boardwright.Parts;

namespace Boardwright.Tests.House;

public sealed partial class RoomTests
{
    // A room uses only rooms that come before it.
    static readonly string[] Rooms =
    [
        "Units", "Numerics", "Findings", "Parts", "Drivetrains", "Road", "Motors", "Heat", "Packs", "Wiring", "Traction", "Fits", "Boxes",
        "Prices", "Rides", "Searches", "Spreads", "Builds",
    ];

    static readonly string Core = Repository.At("src", "Boardwright");

    [Fact]
    public void Every_room_has_its_place_in_the_order()
    {
        var rooms = Directory.EnumerateDirectories(Core).Select(p => Path.GetFileName(p)!).Where(n => n is not ("bin" or "obj"));

        Assert.Empty(rooms.Except(Rooms));
    }

    [Fact]
    public void A_room_uses_only_rooms_before_it()
    {
        // A type may be named by its room alone, since all rooms lie in one namespace.
        var types = typeof(Board).Assembly.GetTypes().Where(t => t.Namespace?.StartsWith("Boardwright.", StringComparison.Ordinal) == true)
            .Select(t => (Room: t.Namespace!.Split('.')[1], Name: t.Name.Split('`')[0])).ToHashSet();
        var wrong = new List<string>();
        foreach (var room in Rooms.Where(r => Directory.Exists(Path.Combine(Core, r))))
        {
            foreach (var file in Directory.EnumerateFiles(Path.Combine(Core, room), "*.cs", SearchOption.AllDirectories))
            {
                // Rules judge the whole examination, which knows every room.
                if (file.EndsWith("Rules.cs", StringComparison.Ordinal))
                    continue;
                var text = Comments().Replace(File.ReadAllText(file), "");
                var used = FullNames().Matches(text).Select(m => m.Groups["room"].Value)
                    .Concat(ShortNames().Matches(text).Where(m => types.Contains((m.Groups["room"].Value, m.Groups["type"].Value))).Select(m => m.Groups["room"].Value));
                foreach (var other in used.Distinct().Where(u => Array.IndexOf(Rooms, u) > Array.IndexOf(Rooms, room)))
                    wrong.Add($"{Path.GetRelativePath(Core, file)} uses {other}");
            }
        }

        Assert.Empty(wrong);
    }

    [GeneratedRegex(@"//.*", RegexOptions.None, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Comments();

    [GeneratedRegex(@"\bBoardwright\.(?<room>[A-Z]\w*)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex FullNames();

    [GeneratedRegex(@"(?<![\w.])(?<room>[A-Z]\w*)\.(?<type>[A-Z]\w*)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex ShortNames();
}
