using ArchUnitNET.Domain;
using ArchUnitNET.Loader;
using Boardwright.Parts;

namespace Boardwright.Tests.House;

public sealed class RoomTests
{
    // The order of the rooms of the core: a room uses only rooms that come before it.
    static readonly string[] Rooms =
    [
        "Units", "Numerics", "Findings", "Parts", "Drivetrains", "UsualValues", "Road", "Motors", "Heat", "Packs", "Wiring", "Traction", "Fits", "Boxes",
        "Prices", "Rides", "Logs", "Lessons", "Analyses", "Rules", "Examinations", "Searches", "Spreads", "Builds",
    ];

    static readonly Architecture Core = new ArchLoader().LoadAssemblies(typeof(Board).Assembly).Build();

    [Fact]
    public void Every_room_has_its_place_in_the_order()
    {
        var folders = Directory.EnumerateDirectories(Repository.At("src", "Boardwright")).Select(p => Path.GetFileName(p)!);

        Assert.Empty(folders.Except(Rooms).Except(["bin", "obj"]));
        Assert.Empty(Core.Types.Select(RoomOf).OfType<string>().Distinct().Except(Rooms));
    }

    [Fact]
    public void A_room_uses_only_rooms_before_it()
    {
        var wrong = from type in Core.Types
                    let room = RoomOf(type)
                    where room is not null
                    from target in type.Dependencies.Select(d => d.Target).Distinct()
                    let other = RoomOf(target)
                    where other is not null && Array.IndexOf(Rooms, other) > Array.IndexOf(Rooms, room)
                    select $"{type.FullName} uses {target.FullName}";

        Assert.Empty(wrong);
    }

    static string? RoomOf(IType type) =>
        type.Namespace?.FullName is { } name && name.StartsWith("Boardwright.", StringComparison.Ordinal) ? name.Split('.')[1] : null;
}
