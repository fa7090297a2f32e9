using Boardwright.Rides;

namespace Boardwright.Tests.Rides;

public sealed class CoastDownTests(ITestOutputHelper output)
{
    static CoastDownFit Fit(RolledRide ride, CoastDownConditions conditions)
    {
        var answer = CoastDown.Fit(CoastDown.Find(ride.Ridden()), conditions);
        Assert.True(answer.Fit is not null, answer.Refusal);
        return answer.Fit;
    }

    // What the workshop asks for: from eight two-way runs Crr within 5 % and CdA within 8 %, the truth inside the 90 % interval in 85 to 95 of 100 cases.
    // The wheel is off by a hundredth, which is stated as what its scale may be off by; and in a second hundred it is right and known to be.
    [Theory]
    [InlineData(0.01, 0)]
    [InlineData(0, 0)]
    [InlineData(0.01, 0.15)]
    public void Of_a_hundred_rides_nine_in_ten_intervals_hold_the_truth(double spread, double gusts)
    {
        var (rolling, area, both, worstRolling, worstArea) = (0, 0, 0, 0.0, 0.0);
        for (var number = 0; number < 100; number++)
        {
            var made = RolledRide.Case(number) with { Gusts = gusts };
            var ride = made with { Scale = 1 + spread * new Chance(7_000 + (ulong)number).Normal() };
            var fit = Fit(ride, ride.Conditions(spread));

            Assert.Equal(16, fit.Parts.Count(p => p.LeftOut.Length == 0));
            worstRolling = Math.Max(worstRolling, Math.Abs(fit.RollingResistance.Value.Value / ride.Rolling - 1));
            worstArea = Math.Max(worstArea, Math.Abs(fit.DragArea.Value.SquareMetres / ride.DragArea - 1));
            var (isRolling, isArea) = (fit.RollingResistance.Covers(Number.FromSi(ride.Rolling)), fit.DragArea.Covers(Area.FromSi(ride.DragArea)));
            rolling += isRolling ? 1 : 0;
            area += isArea ? 1 : 0;
            both += isRolling && isArea ? 1 : 0;
        }

        output.WriteLine(FormattableString.Invariant($"spread {spread}, gusts {gusts}: Crr inside {rolling}, CdA inside {area}, both {both}; worst {worstRolling:P2} and {worstArea:P2}"));
        Assert.InRange(worstRolling, 0, 0.05);
        Assert.InRange(worstArea, 0, 0.08);
        Assert.InRange(rolling, 85, 95);
        Assert.InRange(area, 85, 95);
    }
}
