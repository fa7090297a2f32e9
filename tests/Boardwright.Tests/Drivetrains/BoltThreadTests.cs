using Boardwright.Drivetrains;

namespace Boardwright.Tests.Drivetrains;

public sealed class BoltThreadTests
{
    // EN ISO 898-1: stress areas as printed.
    [Theory]
    [InlineData("M3", "5.03")]
    [InlineData("M4", "8.78")]
    [InlineData("M5", "14.2")]
    [InlineData("M6", "20.1")]
    [InlineData("M8", "36.6")]
    [InlineData("M10", "58.0")]
    public void Stress_area_is_that_of_ISO_898(string name, string area)
    {
        var thread = BoltThread.Parse(name)!;
        Printed.Matches(area, thread.StressArea.SquareMillimetres);
        Assert.Equal(name, thread.Name);
    }

    [Theory]
    [InlineData("M5", "M5")]
    [InlineData(" m5 ", "M5")]
    [InlineData("M8x1.25", "M8")]
    [InlineData("M4 × 12", "M4")]
    public void A_thread_is_found_by_its_name(string name, string thread) => Assert.Equal(thread, BoltThread.Parse(name)!.Name);

    [Theory]
    [InlineData("M8x1")]
    [InlineData("M7")]
    [InlineData("M")]
    [InlineData("")]
    [InlineData("M5xlong")]
    [InlineData("5/16-24")]
    public void A_fine_or_foreign_thread_is_not_mistaken_for_a_coarse_one(string name) => Assert.Null(BoltThread.Parse(name));

    // EN ISO 898-1: M8 12.9 proof load 35 500 N; M5 8.8 least ultimate load 11 350 N.
    [Fact]
    public void Loads_are_those_of_ISO_898()
    {
        Assert.Equal(35_500, BoltThread.Parse("M8")!.ProofLoad(PropertyClass.Parse("12.9")!).Newtons, 35_500 * 0.003);
        Assert.Equal(11_350, BoltThread.Parse("M5")!.UltimateLoad(PropertyClass.Parse("8.8")!).Newtons, 11_350 * 0.003);
        Assert.Null(PropertyClass.Parse("4.6"));
    }

    [Fact]
    public void Every_class_breaks_above_its_proof_stress_and_every_thread_is_stronger_than_the_thinner_one()
    {
        Assert.All(PropertyClass.All, static strength => Assert.True(strength.TensileStrength > strength.ProofStress));
        for (var i = 1; i < BoltThread.All.Count; i++)
        {
            var (thin, thick) = (BoltThread.All[i - 1], BoltThread.All[i]);
            Assert.True(thick.StressArea > thin.StressArea);
            Assert.True(thick.NutHeight > thin.NutHeight);
            Assert.True(thick.Washer.OuterDiameter > thin.Washer.OuterDiameter);
            Assert.True(thick.Washer.InnerDiameter > thick.Diameter);
        }
    }

    // Strobl, Strocomp 433 manual, appendix 10-2, friction 0.14: M5 10.9, 8.7 N·m.
    [Fact]
    public void Torque_coefficient_undoes_the_torque_that_the_table_is_near_to()
    {
        var thread = BoltThread.Parse("M5")!;
        var torque = thread.TighteningTorque(PropertyClass.Steel109);
        Assert.Equal(8.7, torque.NewtonMetres, 8.7 * 0.03);
        Assert.Equal(BoltThread.UnknownFinish,
            thread.TorqueCoefficient(torque, BoltThread.ReusedPreload * thread.ProofLoad(PropertyClass.Steel109)), 1e-12);
    }

    // CRC chapter 10.1201/9781482273786-99: M10 10.9 in aluminium, 69 600 N, 130 MPa, 21.6 mm.
    [Fact]
    public void Engagement_matches_the_published_example()
    {
        var thread = BoltThread.Parse("M10")!;
        var (strength, bolt, part) = (Pressure.FromMegapascals(130), Length.FromMillimetres(9.968), Length.FromMillimetres(9.206));
        Assert.Equal(21.6, thread.Engagement(Force.FromNewtons(69_600), strength, bolt, part).Millimetres, 0.1);
        Assert.Throws<ArgumentOutOfRangeException>(() => thread.Engagement(Force.FromNewtons(69_600), strength, part, bolt));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => thread.Engagement(Force.FromNewtons(69_600), Pressure.FromMegapascals(0), bolt, part));
    }

    // EN 1993-1-8, table 3.3.
    [Fact]
    public void Holes_keep_the_distances_of_EN_1993()
    {
        var hole = Length.FromMillimetres(5.5);
        Printed.Matches("6.6", HoleEdges.EdgeDistance(hole).Millimetres);
        Printed.Matches("8.25", HoleEdges.SlotEdgeDistance(hole).Millimetres);
        Printed.Matches("12.1", HoleEdges.PitchAlong(hole).Millimetres);
        Printed.Matches("13.2", HoleEdges.PitchAcross(hole).Millimetres);
    }

    [Fact]
    public void Squeeze_and_closed_height_undo_each_other()
    {
        var (free, closed) = (Length.FromMillimetres(5), Length.FromMillimetres(3.5));
        Assert.Equal(30, GasketSqueeze.Compute(free, closed).Percent, 1e-9);
        Assert.Equal(closed.Millimetres, GasketSqueeze.ClosedHeight(free, GasketSqueeze.Compute(free, closed)).Millimetres, 1e-9);
        Assert.All(GasketKind.All, static kind => Assert.True(kind.Least < kind.Greatest));
        Assert.Throws<ArgumentOutOfRangeException>(() => GasketSqueeze.Compute(Length.FromMetres(0), closed));
    }
}
