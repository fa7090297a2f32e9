namespace Boardwright.Parts;

/// <summary>A wall of a box, by the way it faces on the board.</summary>
public enum BoxWall
{
    /// <summary>Towards the nose.</summary>
    Front,
    /// <summary>Towards the tail.</summary>
    Rear,
    /// <summary>To the left, facing the nose.</summary>
    Left,
    /// <summary>To the right, facing the nose.</summary>
    Right,
}

/// <summary>Where a thing lies in the box: its middle on the floor, or a fitting's place in a wall.</summary>
public sealed record BoxPosition : Sheet
{
    /// <summary>Towards the nose, from the middle of the box.</summary>
    [Entry("Middle of the thing, from the middle of the box towards the nose.", Example = "-80 mm", Least = -2, Greatest = 2, Spread = SpreadKind.None)]
    public Known<Length> X { get; init; }
    /// <summary>Towards the right-hand side, from the middle of the box.</summary>
    [Entry("Middle of the thing, from the middle of the box towards the right-hand side, facing the nose.", Example = "20 mm", Least = -2, Greatest = 2, Spread = SpreadKind.None)]
    public Known<Length> Y { get; init; }
    /// <summary>How far it is turned, seen from above.</summary>
    [Entry("How far it is turned, clockwise seen from above: 0, 90, 180 or 270 deg. Unturned its length lies along the board and its first lead leaves towards the nose.", Example = "90 deg", Least = 0, Greatest = 1.5 * Math.PI + 1e-9, Spread = SpreadKind.None)]
    public Known<Angle> Turn { get; init; }
    /// <summary>The wall that a fitting sits in.</summary>
    [Entry("The wall that a fitting sits in.", Example = "rear")]
    public Known<BoxWall> Wall { get; init; }
    /// <summary>From the middle of the wall.</summary>
    [Entry("Middle of the fitting, from the middle of its wall: towards the nose in a side wall, towards the right-hand side in the front or rear wall.", Example = "40 mm", Least = -2, Greatest = 2, Spread = SpreadKind.None)]
    public Known<Length> Along { get; init; }
}
