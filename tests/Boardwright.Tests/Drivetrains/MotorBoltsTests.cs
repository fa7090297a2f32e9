using Boardwright.Documents.Papers;
using Boardwright.Drivetrains;
using Boardwright.Examinations;

namespace Boardwright.Tests.Drivetrains;

public sealed class MotorBoltsTests
{
    // Three quarters of the proof load, K = 0.2: M4 of 8.8 as in a published table for a friction of 0.14, to 5 %.
    [Theory]
    [InlineData("8.8", 3.0)]
    [InlineData("10.9", 4.4)]
    [InlineData("12.9", 5.1)]
    public void The_torque_is_the_published_one(string strength, double newtonMetres) =>
        Assert.Equal(newtonMetres, MotorBolts.Compute(Boards.Tern.With(("mount.bolt_class", strength)).Parts)!.Torque.NewtonMetres, 0.05 * newtonMetres);

    [Theory]
    [InlineData("")]
    [InlineData("8.8")]
    public void Rule_and_build_sheet_say_the_same_torque(string strength)
    {
        var examination = Examination.Examine(strength.Length == 0 ? Boards.Tern : Boards.Tern.With(("mount.bolt_class", strength)));
        var torque = MotorBolts.Compute(examination.Board.Parts)!.TorqueText;

        Assert.Contains(torque, examination.Findings.Single(f => f.Rule == "bolt.motor").Says.In(UnitSystem.Metric), StringComparison.Ordinal);
        var sheet = PaperSet.All.Single(p => p.Id == "build-sheet").Write(new PaperOrder(examination));
        Assert.Contains(sheet.Files, f => System.Text.Encoding.UTF8.GetString(f.Bytes).Contains($"{torque} (", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_class_the_weakest_is_taken() =>
        Assert.Equal(PropertyClass.All.MinBy(c => c.ProofStress.Si), MotorBolts.Compute(Boards.Tern.Parts)!.Strength);

    [Fact]
    public void An_unknown_class_has_no_torque() => Assert.Null(MotorBolts.Compute(Boards.Tern.With(("mount.bolt_class", "9.9")).Parts));
}
