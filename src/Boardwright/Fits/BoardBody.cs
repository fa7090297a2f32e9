using System.Runtime.InteropServices;

namespace Boardwright.Fits;

/// <summary>A place in the board's frame: x forward from the rear axle, y to the left from the board's middle, z up from the
/// axles.</summary>
/// <param name="X">Forward of the rear axle.</param>
/// <param name="Y">To the left of the board's middle.</param>
/// <param name="Z">Above the axles.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct BoardPoint(Length X, Length Y, Length Z);

/// <summary>The side of a board, as its rider looks ahead.</summary>
public enum BoardSide
{
    /// <summary>Left, where y is positive.</summary>
    Left = 1,

    /// <summary>Right, where y is negative.</summary>
    Right = -1,
}

/// <summary>A body of which a board is put together.</summary>
/// <param name="Slot">Key of the place it fills, such as <c>motor</c>.</param>
/// <param name="IsGuess">Whether a dimension of it, or its place, is not in the file.</param>
public abstract record BoardBody(string Slot, bool IsGuess);

/// <summary>A round body that lies across the board: wheel, can, pulley, axle.</summary>
/// <param name="Slot">Key of the place it fills.</param>
/// <param name="X">Where its middle line is, forward of the rear axle.</param>
/// <param name="Z">Where its middle line is, above the axles.</param>
/// <param name="Radius">Its radius.</param>
/// <param name="From">Its right end, the lesser y.</param>
/// <param name="To">Its left end.</param>
/// <param name="IsGuess">Whether a dimension of it, or its place, is not in the file.</param>
public sealed record RoundBody(string Slot, Length X, Length Z, Length Radius, Length From, Length To, bool IsGuess)
    : BoardBody(Slot, IsGuess)
{
    /// <summary>Middle between its ends.</summary>
    public Length Middle => (From + To) / 2;

    /// <summary>A round body between two distances from the board's middle, on one side of it.</summary>
    internal static RoundBody On(
        BoardSide side, string slot, (Length X, Length Z) at, Length radius, Length inner, Length outer, bool isGuess) =>
        side == BoardSide.Left ? new(slot, at.X, at.Z, radius, inner, outer, isGuess)
        : new(slot, at.X, at.Z, radius, -outer, -inner, isGuess);

    /// <summary>The shortest way between this body and another that lies parallel to it.</summary>
    /// <returns>How far apart they are, negative where they meet, and the two points between which it is measured.</returns>
    /// <source cref="Findings.Sources.Geometry"/>
    public (Length Free, BoardPoint From, BoardPoint To) GapTo(RoundBody other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var (dx, dz) = ((other.X - X).Si, (other.Z - Z).Si);
        var apart = Math.Sqrt(dx * dx + dz * dz);
        var (ux, uz) = apart > 0 ? (dx / apart, dz / apart) : (1, 0);
        var radial = apart - Radius.Si - other.Radius.Si;
        var (low, high) = (Math.Max(From.Si, other.From.Si), Math.Min(To.Si, other.To.Si));
        var sideways = low - high;
        var free = radial > 0 && sideways > 0 ? Math.Sqrt(radial * radial + sideways * sideways) : Math.Max(radial, sideways);
        BoardPoint At(double along, double y) =>
            new(Length.FromMetres(X.Si + ux * along), Length.FromMetres(y), Length.FromMetres(Z.Si + uz * along));
        // Ends face each other across a gap, or bodies lie side by side; beside both, edge faces edge.
        var (mine, others) = (Radius.Si, apart - other.Radius.Si);
        if (sideways > 0 && radial <= 0)
            mine = others = (Math.Min(mine, apart + other.Radius.Si) + Math.Max(others, -Radius.Si)) / 2;
        var (myY, otherY) = sideways > 0 ? (From > other.From ? (From.Si, other.To.Si) : (To.Si, other.From.Si))
            : ((low + high) / 2, (low + high) / 2);
        if (sideways <= 0 && sideways > radial)
            (myY, otherY, mine, others) = (low, high, (mine + others) / 2, (mine + others) / 2);
        return (Length.FromMetres(free), At(mine, myY), At(others, otherY));
    }
}

/// <summary>A body with flat faces.</summary>
/// <param name="Slot">Key of the place it fills.</param>
/// <param name="Back">Its lesser x.</param>
/// <param name="Front">Its greater x.</param>
/// <param name="Right">Its lesser y.</param>
/// <param name="Left">Its greater y.</param>
/// <param name="Bottom">Its lesser z.</param>
/// <param name="Top">Its greater z.</param>
/// <param name="IsGuess">Whether a dimension of it, or its place, is not in the file.</param>
public sealed record FlatBody(string Slot, Length Back, Length Front, Length Right, Length Left, Length Bottom, Length Top, bool IsGuess)
    : BoardBody(Slot, IsGuess);
