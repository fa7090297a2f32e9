using Boardwright.Boxes;

namespace Boardwright.Tests.Boxes;

/// <summary>Boxes with invented contents, the same for a seed in every run, filled to 70 to 85 % counting the room beside the
/// things.</summary>
static class RandomBoxes
{
    /// <summary>How many there are.</summary>
    public const int Count = 200;

    /// <summary>Boxes from this seed on are filled to 85 to 95 %, more than anybody should.</summary>
    public const int Fuller = 1000;

    /// <summary>How many of those there are.</summary>
    public const int FullerCount = 60;

    /// <summary>Whether the box was cut into its pieces, so that they are known to go in.</summary>
    public static bool IsCut(int seed) => seed % 2 == 0;

    /// <summary>A box in whole millimetres. Even seeds: a box cut into pieces that are then made smaller. Odd seeds: a pack, one or two
    /// controllers that keep 10 mm from it, fittings in the walls and other things, drawn until the box is full enough; whether they go in
    /// is not known.</summary>
    public static FloorPlan Of(int seed)
    {
        var random = new Random(seed);
        var (along, across) = (random.Next(300, 651), random.Next(130, 221));
        var target = seed < Fuller ? 0.70 + 0.15 * random.NextDouble() : 0.85 + 0.10 * random.NextDouble();
        if (IsCut(seed))
            return new(along, across, [.. Cut(random, along, across, target).Select(p => Piece(p.Along, p.Across, p.Room, along, across))]);
        var (pieces, controllers) = Drawn(random, along, across, target);
        return new(along, across, pieces, null, (i, j) => i == 0 && j > 0 && j <= controllers ? 10 : 0);
    }

    /// <summary>Area of outlines and rooms as a part of the floor.</summary>
    public static double Fill(FloorPlan plan) =>
        plan.Pieces.Sum(p => p.Area + p.Forms[0].Rooms.Sum(r => (long)r.Along * r.Across)) / ((double)plan.Along * plan.Across);

    static IEnumerable<(int Along, int Across, int Room)> Cut(Random random, int along, int across, double target)
    {
        const int Least = 18;
        List<(int Along, int Across)> parts = [(along, across)];
        var many = random.Next(5, 13);
        while (parts.Count < many)
        {
            var at = Enumerable.Range(0, parts.Count).MaxBy(i => (double)parts[i].Along * parts[i].Across * (0.3 + random.NextDouble()));
            var part = parts[at];
            var isAlong = part.Along * (0.5 + random.NextDouble()) > part.Across;
            var whole = isAlong ? part.Along : part.Across;
            if (whole < 2 * Least + 2)
                break;
            var first = random.Next(Least, whole - Least + 1);
            parts[at] = isAlong ? (first, part.Across) : (part.Along, first);
            parts.Add(isAlong ? (whole - first, part.Across) : (part.Along, whole - first));
        }

        // One side after another loses a millimetre until the fill is right.
        long area = (long)along * across;
        while (area > target * along * across)
        {
            var i = random.Next(parts.Count);
            var (a, b) = parts[i];
            var shorter = random.Next(2) == 0 ? (a - 1, b) : (a, b - 1);
            if (shorter.Item1 < 10 || shorter.Item2 < 10)
                continue;
            area -= (long)a * b - (long)shorter.Item1 * shorter.Item2;
            parts[i] = shorter;
        }

        foreach (var (a, b) in parts)
        {
            // Room for the leads at one end of every other piece, out of the piece itself.
            var room = random.Next(2) == 0 && Math.Max(a, b) > 40 ? random.Next(8, 23) : 0;
            var (length, width) = a >= b ? (a, b) : (b, a);
            yield return (length - room, width, room);
        }
    }

    static (IReadOnlyList<FloorPiece> Pieces, int Controllers) Drawn(Random random, int along, int across, double target)
    {
        var total = (double)along * across;
        var most = target < 0.85 ? Math.Min(0.85, target + 0.02) : target + 0.02;
        var area = 0.0;
        var pieces = new List<FloorPiece>();
        bool Take(int length, int width, int room, bool isFitting = false)
        {
            var size = (double)(length + room) * width;
            if (area + size > most * total)
                return false;
            area += size;
            pieces.Add(isFitting ? Fitting(length, width, room, along, across) : Piece(length, width, room, along, across));
            return true;
        }

        Take((int)(along * (0.40 + 0.15 * random.NextDouble())), (int)(across * (0.70 + 0.28 * random.NextDouble())), random.Next(14, 25));
        var controllers = 0;
        for (var i = random.Next(1, 3); i > 0; i--)
            controllers += Take(random.Next(60, 141), random.Next(36, 91), random.Next(12, 24)) ? 1 : 0;
        for (var i = random.Next(2, 6); i > 0; i--)
            Take(random.Next(12, 29), random.Next(17, 33), random.Next(6, 19), isFitting: true);
        for (var misses = 0; misses < 60 && area < target * total;)
            misses += Take(random.Next(35, 111), random.Next(20, 66), random.Next(2) == 0 ? random.Next(8, 19) : 0) ? 0 : 1;
        return (pieces, controllers);
    }

    static FloorPiece Fitting(int depth, int width, int room, int along, int across) => new(
    [
        Against(FloorForm.Anywhere(0, depth, width, [new(depth, 0, room, width)], along, across), atX: 0, null),
        Against(FloorForm.Anywhere(90, width, depth, [new(0, depth, width, room)], along, across), null, atY: 0),
        Against(FloorForm.Anywhere(180, depth, width, [new(-room, 0, room, width)], along, across), atX: along - depth, null),
        Against(FloorForm.Anywhere(270, width, depth, [new(0, -room, width, room)], along, across), null, atY: across - depth),
    ]);

    static FloorForm Against(FloorForm form, int? atX, int? atY) =>
        form with { X = atX is { } x ? (x, x) : form.X, Y = atY is { } y ? (y, y) : form.Y };

    static FloorPiece Piece(int along, int across, int room, int floorAlong, int floorAcross)
    {
        if (room == 0)
            return new([FloorForm.Anywhere(0, along, across, [], floorAlong, floorAcross),
                FloorForm.Anywhere(90, across, along, [], floorAlong, floorAcross)]);
        return new(
        [
            FloorForm.Anywhere(0, along, across, [new(along, 0, room, across)], floorAlong, floorAcross),
            FloorForm.Anywhere(90, across, along, [new(0, along, across, room)], floorAlong, floorAcross),
            FloorForm.Anywhere(180, along, across, [new(-room, 0, room, across)], floorAlong, floorAcross),
            FloorForm.Anywhere(270, across, along, [new(0, -room, across, room)], floorAlong, floorAcross),
        ]);
    }
}
