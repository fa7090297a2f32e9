using Boardwright.Drivetrains;
using CsCheck;

namespace Boardwright.Tests.Drivetrains;

public sealed class BeltStrengthTests
{
    // SDP/SI handbook D265, p. T15 table 3: 102 lbf on 1 in of 5M belt, 454 N.
    [Fact]
    public void An_inch_of_belt_carries_the_printed_tension_either_way()
    {
        var belt = new BeltStrength(ToothProfile.Htd5M, Length.FromInches(1));
        Printed.Matches("454", belt.TensionByWidth.Newtons);
        Assert.Equal(belt.TensionByWidth.Newtons, belt.WorkingTension.Newtons, 1e-9);
    }

    [Fact]
    public void A_narrower_belt_carries_less_than_its_share_and_a_wider_one_more() =>
        Gen.Select(Gen.OneOf(ToothProfile.All.Select(Gen.Const).ToArray()), Gen.Double[0.1, 85]).Sample((profile, millimetres) =>
        {
            var belt = new BeltStrength(profile, Length.FromMillimetres(millimetres));
            return belt.WorkingTension >= Force.FromNewtons(0)
                && Math.Sign(millimetres - 25.4) * (belt.WorkingTension - belt.TensionByWidth).Newtons >= -1e-9;
        });

    // The supplier's width multipliers of 9, 15 and 25 mm belts, from memory: 1.00, 1.89, 3.38.
    [Fact]
    public void The_edge_loss_gives_the_width_multipliers_back()
    {
        var narrow = new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(9)).WorkingTension;
        Printed.Matches("1.89", new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(15)).WorkingTension / narrow);
        Printed.Matches("3.38", new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(25)).WorkingTension / narrow);
    }

    // Optibelt prints 1.58 for 30 over 20 mm of 8M belt.
    [Fact]
    public void The_edge_loss_of_8M_gives_the_makers_ratio_of_widths_back() =>
        Printed.Matches("1.58", new BeltStrength(ToothProfile.Htd8M, Length.FromMillimetres(30)).WorkingTension
        / new BeltStrength(ToothProfile.Htd8M, Length.FromMillimetres(20)).WorkingTension);

    [Fact]
    public void Teeth_out_of_mesh_cost_their_part_of_pull_and_torque()
    {
        var belt = new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(15));
        var path = BeltPath.Fitting(51, new(14, ToothProfile.Htd5M), new(36, ToothProfile.Htd5M))!;
        Assert.Equal(5, path.WholeTeethInMesh);
        Assert.Equal(0.8 * belt.WorkingTension, belt.AllowedPull(path));
        Assert.Equal(0.7 * belt.WorkingTension, belt.AllowedPull(path, MeshLadder.Strict));
        Assert.Equal(belt.AllowedPull(path).Newtons * path.Driving.PitchDiameter.Metres / 2, belt.AllowedTorque(path).NewtonMetres, 1e-12);
    }

    [Fact]
    public void A_mesh_factor_never_falls_with_more_teeth_and_the_strict_ladder_never_gives_more()
    {
        for (var teeth = 0; teeth < 20; teeth++)
        {
            Assert.True(MeshLadder.Default.Factor(teeth) <= MeshLadder.Default.Factor(teeth + 1));
            Assert.True(MeshLadder.Strict.Factor(teeth) <= MeshLadder.Strict.Factor(teeth + 1));
            Assert.True(MeshLadder.Strict.Factor(teeth) <= MeshLadder.Default.Factor(teeth));
        }

        Assert.Equal(0, MeshLadder.Default.Factor(1));
        Assert.Equal(1, MeshLadder.Default.Factor(36));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeshLadder.Default.Factor(-1));
    }

    [Fact]
    public void Impossible_belts_are_refused_and_one_of_edges_only_carries_nothing()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltStrength(ToothProfile.Htd5M, Length.FromMetres(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new BeltStrength(ToothProfile.Htd5M, Length.FromMetres(double.NaN)));
        Assert.Equal(Force.FromNewtons(0), new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(2)).WorkingTension);
    }

    // Goodyear/Elatech, Polyurethane PT Belt Division (2012), p. 36.
    [Theory]
    [InlineData(0, "331.2")]
    [InlineData(3000, "173.07")]
    [InlineData(-3000, "173.07")]
    [InlineData(6000, "128.88")]
    [InlineData(20000, "94.77")]
    public void A_steel_cord_belt_pulls_less_the_faster_it_runs(double rpm, string newtons) =>
        Printed.Matches(newtons, SteelCordBelt.AllowedPull(AngularSpeed.FromRpm(rpm), 6, Length.FromMillimetres(15)).Newtons);

    [Fact]
    public void Teeth_beyond_the_makers_cap_do_not_count_on_a_steel_cord_belt()
    {
        var (speed, width) = (AngularSpeed.FromRpm(3000), Length.FromMillimetres(15));
        Assert.Equal(SteelCordBelt.AllowedPull(speed, 6, width), SteelCordBelt.AllowedPull(speed, 9, width));
        Assert.Equal(1.5, SteelCordBelt.AllowedPull(speed, 9, width, SteelCordBelt.MostTeethOpen)
            / SteelCordBelt.AllowedPull(speed, 6, width), 1e-12);
    }
}
