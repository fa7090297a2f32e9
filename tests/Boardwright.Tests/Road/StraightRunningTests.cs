using Boardwright.Road;

namespace Boardwright.Tests.Road;

public sealed class StraightRunningTests
{
    // An independent calculation of the same model: rider of 85 kg, centre of mass 1 m up, two trucks of 44° and 2.4 N·m/deg on 0.78 m.
    [Theory]
    [InlineData(0.15, 0.15, 47.812)]
    [InlineData(0.15, 0.5, 34.319)]
    [InlineData(0.15, 0.9, 31.092)]
    [InlineData(0.20, 0.5, 26.228)]
    [InlineData(0.25, 0.15, 30.161)]
    [InlineData(0.25, 0.9, 19.464)]
    public void A_reflex_comes_too_late_from_a_speed_on(double delay, double ankle, double kilometresPerHour) =>
        Assert.Equal(kilometresPerHour, Late(85, 1, 275.0197, 44, 44, 0.78, delay, ankle), 1e-3 * kilometresPerHour);

    [Theory]
    [InlineData(35, 35, 1, 1, 0.78, 30.801)]
    [InlineData(50, 25, 1, 1, 0.78, 28.307)]
    [InlineData(44, 44, 2, 1, 0.78, 30.841)]
    [InlineData(44, 44, 1, 1, 0.90, 28.173)]
    [InlineData(44, 44, 1, 0.85, 0.78, 25.197)]
    public void Flatter_stiffer_and_longer_boards_weave_later(
        double front, double rear, double stiffer, double height, double wheelbase, double kilometresPerHour) =>
        Assert.Equal(kilometresPerHour, Late(85, height, 275.0197 * stiffer, front, rear, wheelbase, 0.2, 0.5), 1e-3 * kilometresPerHour);

    [Fact]
    public void Of_a_board_the_two_corners_are_said()
    {
        var weave = StraightRunning.Compute(Boards.Tern);

        Assert.InRange(weave.Value.Low.KilometresPerHour, 15, 25);
        Assert.InRange(weave.Value.High.KilometresPerHour, 40, 55);
        Assert.Contains("rear_truck.lean_stiffness", StraightRunning.Compute(Boards.Tern.With(("rear_truck.lean_stiffness", ""))).Missing);
    }

    static double Late(
        double mass, double height, double stiffness, double front, double rear, double wheelbase, double delay, double ankle)
    {
        var steer = (Math.Tan(front * Math.PI / 180) + Math.Tan(rear * Math.PI / 180)) / wheelbase;
        return StraightRunning.LateFrom(mass, height, stiffness, steer, delay, ankle).KilometresPerHour;
    }
}
