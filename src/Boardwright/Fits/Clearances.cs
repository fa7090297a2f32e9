using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Fits;

/// <summary>Between what a clearance is.</summary>
public enum Clearing
{
    /// <summary>Motor can and road.</summary>
    MotorToRoad,
    /// <summary>Motor can and leaned deck.</summary>
    MotorToDeck,
    /// <summary>Wheel and leaned deck.</summary>
    WheelToDeck,
    /// <summary>Motor can, or its shaft, and its wheel.</summary>
    MotorToWheel,
    /// <summary>Motor pulley and its wheel.</summary>
    PulleyToWheel,
    /// <summary>Wheel pulley, or the belt on it, and road.</summary>
    PulleyToRoad,
}

/// <summary>One clearance.</summary>
/// <param name="What">Between what it is.</param>
/// <param name="Side">On which side of the board.</param>
/// <param name="Free">How much stays; negative where the two meet.</param>
/// <param name="From">Where it is measured from.</param>
/// <param name="To">Where it is measured to.</param>
/// <param name="IsGuess">Whether it rests on a dimension that is not in the file.</param>
public sealed record Clearance(Clearing What, BoardSide Side, Length Free, BoardPoint From, BoardPoint To, bool IsGuess);

/// <summary>What stays free around the driven axle of a board whose deck leans.</summary>
/// <remarks>
/// The deck leans about the line along the board through the middle of its underside; the axle stays parallel to the road, as it does on
/// four wheels. Under a deck leaned by φ to the right the underside is at z + y tan φ, and a clearance under it is measured straight down,
/// at the end of motor or wheel, or at half the deck's width where that is nearer to the middle: the figures are those of the rules
/// <c>fit.motor_deck</c> and <c>fit.wheel_bite</c>.
/// Steering also turns the axle about the upright; motors, mounts, pulleys and wheels turn with it and keep their clearances to one another
/// and to the road, and their ends move under the deck by less than the deck's edge is rounded. That turn is left out.
/// </remarks>
/// <validity>Up to the truck's lean stop, beyond which the lean is cut. A deck without concave; wheel wells and cut-outs are no entries of
/// a board.</validity>
/// <source cref="Sources.Geometry"/>
/// <source cref="Sources.CommonPractice"/>
/// <param name="Lean">Lean of the deck, positive to the right.</param>
/// <param name="All">Every clearance, in the order of <see cref="Clearing"/>, the left one before the right one.</param>
public sealed record Clearances(Angle Lean, IReadOnlyList<Clearance> All)
{
    /// <summary>The least of them; none on a board of which there is nothing to measure.</summary>
    public Clearance? Tightest => All.MinBy(c => c.Free.Si);
    /// <summary>The least of a kind, on both sides.</summary>
    public Clearance? Least(Clearing what) => All.Where(c => c.What == what).MinBy(c => c.Free.Si);
    /// <summary>A clearance on one side; the least where several motors sit there.</summary>
    public Clearance? On(BoardSide side, Clearing what) => All.Where(c => c.What == what && c.Side == side).MinBy(c => c.Free.Si);

    /// <summary>The clearances at a lean of the deck.</summary>
    /// <param name="shape">The board.</param>
    /// <param name="lean">Lean of the deck, positive to the right; cut at the truck's stop.</param>
    public static Clearances At(BoardShape shape, Angle lean)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var axle = shape.DrivenAxle;
        lean = Angle.FromRadians(Clamp(lean.Radians, -axle.LeanStop.Radians, axle.LeanStop.Radians));
        var slope = Tan(lean.Radians);
        var road = -shape.WheelRadius;
        var all = new List<Clearance>();

        // The underside above a body between two distances from the middle: it comes nearest at one of the two.
        void UnderDeck(Clearing what, BoardSide side, RoundBody body, Length underside, bool isGuess)
        {
            var half = shape.Deck.Width / 2;
            var (right, left) = (body.From > -half ? body.From : -half, body.To < half ? body.To : half);
            if (right > left)
                return;
            var y = slope > 0 ? right : slope < 0 ? left : side == BoardSide.Left ? left : right;
            var (above, top) = (underside + y * slope, body.Z + body.Radius);
            all.Add(new(what, side, above - top, new(body.X, y, above), new(body.X, y, top),
                isGuess || shape.Deck.IsGuess || axle.IsGuess));
        }

        void OverRoad(Clearing what, BoardSide side, RoundBody body, bool isGuess)
        {
            var low = body.Z - body.Radius;
            all.Add(new(what, side, low - road, new(body.X, body.Middle, low), new(body.X, body.Middle, road), isGuess));
        }

        foreach (var side in new[] { BoardSide.Left, BoardSide.Right })
        {
            var wheel = axle.Wheels[side == BoardSide.Left ? 0 : 1];
            foreach (var motor in shape.MotorsOnDrivenAxle.Where(m => m.Side == side && m.Direction != 0))
            {
                OverRoad(Clearing.MotorToRoad, side, motor.Can, motor.Can.IsGuess || wheel.IsGuess);
                if (shape.IsUnderDeck(motor))
                    UnderDeck(Clearing.MotorToDeck, side, motor.Can, shape.UndersideOver(motor), motor.Can.IsGuess);
                var (free, from, to) = motor.Can.GapTo(wheel);
                if (motor.Shaft is { } shaft && shaft.GapTo(wheel) is var beside && beside.Free < free)
                    (free, from, to) = beside;
                all.Add(new(Clearing.MotorToWheel, side, free, from, to, motor.Can.IsGuess || wheel.IsGuess));
                if (motor.Pulley is { } pulley)
                {
                    var (gap, start, end) = pulley.GapTo(wheel);
                    all.Add(new(Clearing.PulleyToWheel, side, gap, start, end, pulley.IsGuess || wheel.IsGuess));
                }

                if (motor.WheelPulley is { } driven)
                    OverRoad(Clearing.PulleyToRoad, side, driven, driven.IsGuess || wheel.IsGuess);
            }

            // Where the deck is no wider than the hanger it lies inside the wheels. The rule takes the wheel from the hanger's end.
            if (shape.Deck.Width > axle.HangerWidth)
            {
                var end = axle.HangerWidth / 2;
                UnderDeck(Clearing.WheelToDeck, side,
                    RoundBody.On(side, "wheels", (axle.X, default), shape.WheelRadius, end, end + (wheel.To - wheel.From), false),
                    shape.Deck.Underside, wheel.IsGuess);
            }
        }

        return new(lean, [.. all.OrderBy(c => c.What)]);
    }
}
