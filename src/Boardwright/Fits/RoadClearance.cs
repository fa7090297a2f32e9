using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Fits;

/// <summary>How far the loaded board stays above the road.</summary>
/// <source cref="Sources.Geometry"/>
static class RoadClearance
{
    /// <summary>Wheelbase: the deck's first.</summary>
    public static Answer<Length> WheelbaseOf(Board board) => Answer<Length>.Ask("", needs =>
    {
        var list = needs.Read(board.Parts.Deck.Wheelbase);
        return needs.Unmet ? default : list.Items[0];
    });

    /// <summary>How far the deck bends in the middle under its load; a deck whose bend nobody knows is taken as stiff.</summary>
    public static Answer<Length> DeckBendOf(Board board, Answer<Mass> load) => Answer<Length>.Ask("", needs =>
        Length.FromMetres(board.Parts.Deck.BendPerKg.IsKnown
            ? needs.Read(board.Parts.Deck.BendPerKg).MetresPerKilogram * needs.Read(load).Kilograms
            : 0));

    /// <summary>Clearance under the loaded box: r + deck above axle − box depth − wall − bend.</summary>
    public static Answer<Length> UnderBoxOf(Board board, Answer<Length> wheelRadius, Answer<Length> bend) =>
        !board.Parts.Box.IsChosen ? Answer<Length>.Beside : Answer<Length>.Ask("", needs =>
        {
            var radius = needs.Read(wheelRadius);
            var deck = DrivenAxle.DeckAboveAxle(needs, board.Parts, underPlatform: true);
            var depth = needs.Read(board.Parts.Box.InnerDepth) + needs.Read(board.Parts.Box.Wall);
            return radius + deck - depth - needs.Read(bend);
        });

    /// <summary>Clearance under the motors: r + C sin α − can/2.</summary>
    public static Answer<Length> UnderMotorOf(Answer<MotorPlace> place, Answer<Length> wheelRadius) =>
        place.IsBeside ? Answer<Length>.Beside : Answer<Length>.Ask("", needs => needs.Read(place).AboveRoad(needs.Read(wheelRadius)));

    /// <summary>Sharpest crest that the board crosses without sitting down on its box.</summary>
    public static Answer<Angle> BreakoverOf(Answer<Length> underBox, Answer<Length> wheelbase) =>
        underBox.IsBeside ? Answer<Angle>.Beside : Answer<Angle>.Ask("", needs =>
        {
            var (clearance, length) = (needs.Read(underBox), needs.Read(wheelbase));
            return needs.Unmet ? default : Breakover(clearance, length);
        });

    /// <summary>Breakover angle of a board: 2 atan(2 c / wheelbase).</summary>
    public static Angle Breakover(Length clearance, Length wheelbase) => Angle.FromRadians(2 * Atan(2 * clearance / wheelbase));
}
