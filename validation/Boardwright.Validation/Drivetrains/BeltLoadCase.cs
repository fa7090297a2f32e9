using System.Globalization;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Units;

namespace Boardwright.Validation.Drivetrains;

/// <summary>What a belt carries, how tight it must be, and what follows from the ratio.</summary>
public sealed class BeltLoadCase : Case
{
    static readonly Allowance RoundedTension = Allowance.Part(0.0011, "worked out from 454 N, which is itself rounded to 1 N");

    /// <inheritdoc/>
    public override string Room => "Drivetrains";

    /// <inheritdoc/>
    public override string Topic => "Belt load and tension";

    /// <inheritdoc/>
    public override string About =>
        "Working tension, mesh factor, effective pull, installation tension, frequency, deflection, shaft load, ratio. "
        + "Nobody publishes the torque at which a 5 mm curvilinear belt jumps teeth, nor a power table for a moulded one, so what a belt really stands is not compared with anything. "
        + "The mesh factors and the supplier's multipliers are looked up, so their checks guard against slips of the pen only.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare() => [.. Strength(), .. SteelCord(), .. Tension(), .. Frequencies(), .. Turning()];

    static IEnumerable<Check> Strength()
    {
        yield return new("Working tension, 25.4 mm wide", "5M, 102 lbf/in", "454", "N", ToothProfile.Htd5M.TensionPerInch.Newtons, Sources.SdpSiTimingBelts, "p. T15, table 3", EvidenceLevel.Published);
        foreach (var (width, linear, derated, evidence) in new[]
        {
            (9, "160.9", "132.1", EvidenceLevel.ComputedFromPublished), (15, "268.1", "249.9", EvidenceLevel.Published), (25, "446.9", "446.1", EvidenceLevel.Published),
        })
        {
            var belt = new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(width));
            yield return new("Working tension in proportion to width", $"5M, {width} mm", linear, "N", belt.TensionByWidth.Newtons, Sources.SdpSiTechnicalSection, "sec. 9.1", evidence)
            {
                Allowed = RoundedTension,
            };
            yield return new("Working tension less the edges", $"5M, {width} mm, edge loss 2.27 mm", derated, "N", belt.WorkingTension.Newtons, Sources.ProfilesFromMemory, "", EvidenceLevel.FromMemory)
            {
                Allowed = RoundedTension,
            };
        }

        foreach (var (teeth, widths) in new (int, string[])[]
        {
            (14, ["1.79", "2.99", "4.98"]), (15, ["1.92", "3.20", "5.33"]), (16, ["2.05", "3.41", "5.69"]), (18, ["2.30", "3.84", "6.40"]), (20, ["2.56", "4.27", "7.11"]),
        })
        {
            foreach (var (width, torque) in ((int, string)[])[(9, widths[0]), (15, widths[1]), (25, widths[2])])
            {
                var tension = new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(width)).TensionByWidth;
                yield return new("Torque at the working tension in proportion to width", $"5M, {teeth} teeth, {width} mm, all in mesh", torque, "N·m", BeltStrength.TorqueOf(tension, Htd(teeth)).NewtonMetres, Sources.SdpSiTimingBelts, "p. T15, table 3",
                    EvidenceLevel.ComputedFromPublished)
                {
                    Allowed = Allowance.Create(
                        Math.Round(0.005 + RoundedTension.Size * double.Parse(torque, CultureInfo.InvariantCulture), 4), "worked out from 454 N, and rounded"),
                };
            }
        }

        var wide = new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(15)).TensionByWidth;
        yield return new("Torque at the working tension and mesh factor", "5M, 14 teeth, 15 mm, 5 in mesh", "2.390", "N·m", BeltStrength.TorqueOf(MeshLadder.Default.Factor(5) * wide, Htd(14)).NewtonMetres,
            Sources.SdpSiTechnicalSection, "sec. 13.3", EvidenceLevel.ComputedFromPublished)
        {
            Allowed = RoundedTension,
        };
        var pull = BeltTension.EffectivePull(Torque.FromNewtonMetres(2.5), Htd(15));
        yield return new("Effective pull", "2.5 N·m, 15 teeth", "209.44", "N", pull.Newtons, Sources.OptibeltManual, "p. 44, definition", EvidenceLevel.ComputedFromPublished);
        yield return new("Working tension over effective pull", "the same, 15 mm, in proportion to width", "1.280", "", wide / pull, Sources.SdpSiTimingBelts, "p. T15, table 3",
            EvidenceLevel.ComputedFromPublished)
        { Allowed = RoundedTension };
        yield return new("Working tension over effective pull", "the same, 9 mm, in proportion to width", "0.768", "", new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(9)).TensionByWidth / pull,
            Sources.SdpSiTimingBelts, "p. T15, table 3", EvidenceLevel.ComputedFromPublished)
        { Allowed = RoundedTension };
        foreach (var (teeth, factor) in new[] { (6, "1.0"), (5, "0.8"), (4, "0.6"), (3, "0.4"), (2, "0.2") })
            yield return new("Mesh factor", $"{teeth} teeth", factor, "", MeshLadder.Default.Factor(teeth), Sources.SdpSiTechnicalSection, "sec. 13.3",
            EvidenceLevel.Published);
        foreach (var (teeth, factor) in new[] { (6, "1.0"), (5, "0.7"), (4, "0.5") })
            yield return new("Mesh factor, strict", $"{teeth} teeth", factor, "", MeshLadder.Strict.Factor(teeth), Sources.TsubakiMeshing, "table T6", EvidenceLevel.Published);
    }

    static IEnumerable<Check> SteelCord()
    {
        foreach (var (rpm, force) in new[] { (0, "331.2"), (3000, "173.07"), (6000, "128.88") })
            yield return new("Pull of a polyurethane belt", $"{rpm} r/min, 6 teeth in mesh, 15 mm", force, "N", SteelCord(rpm).Newtons, Sources.ElatechCatalogue, "", EvidenceLevel.ComputedFromPublished);
        var torque = BeltStrength.TorqueOf(SteelCord(3000), Htd(15));
        yield return new("Torque of a polyurethane belt", "3000 r/min, 15 teeth, 6 in mesh, 15 mm", "2.066", "N·m", torque.NewtonMetres, Sources.ElatechCatalogue, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Power of a polyurethane belt", "3000 r/min, 15 teeth, 6 in mesh, 15 mm", "649", "W", Gearing.PowerOf(torque, AngularSpeed.FromRpm(3000)).Watts, Sources.ElatechCatalogue, "",
            EvidenceLevel.ComputedFromPublished);
    }

    static IEnumerable<Check> Tension()
    {
        var manual = Sources.OptibeltManual;
        var speed = BeltTension.BeltSpeed(new(36, ToothProfile.Htd8M), AngularSpeed.FromRpm(2850));
        yield return new("Belt speed", "d 91.67 mm, 2850 r/min", "13.68", "m/s", speed.MetresPerSecond, manual, "p. 44", EvidenceLevel.Published);
        yield return new("Effective pull", "18.5 kW, d 91.67 mm, 2850 r/min", "1352", "N", BeltTension.EffectivePull(Power.FromKilowatts(18.5), speed).Newtons, manual, "p. 44",
            EvidenceLevel.Published);
        var pull = Force.FromNewtons(1352);
        var installed = BeltTension.Installation(pull);
        yield return new("Shaft load at rest, maker's estimate", "Fu 1352 N", "1487.2", "N", BeltTension.EstimatedShaftLoad(pull).Newtons, manual, "p. 44", EvidenceLevel.Published);
        yield return new("Installation tension", "Fu 1352 N", "743.6", "N", installed.Newtons, manual, "p. 44", EvidenceLevel.Published);
        var span = Length.FromMillimetres(414.44);
        var (push, deflection) = BeltTension.DeflectionTest(pull, span);
        yield return new("Test force", "Fu 1352 N", "67.6", "N", push.Newtons, manual, "p. 45", EvidenceLevel.Published);
        yield return new("Test deflection", "span 414.44 mm", "8.29", "mm", deflection.Millimetres, manual, "p. 45", EvidenceLevel.Published);
        yield return new("Take-up", "C 415.22 mm", "1.66", "mm", BeltTension.TakeUp(Length.FromMillimetres(415.22)).Millimetres, manual, "p. 43",
            EvidenceLevel.Published);
        yield return new("Least tension of a reversing drive", "peak braking pull 209.44 N", "104.72", "N", BeltTension.ReversingFloor(Force.FromNewtons(209.44)).Newtons, manual, "inference from two like spans",
            EvidenceLevel.ComputedFromPublished);
        foreach (var (width, tension) in new[] { (10, "55"), (15, "96"), (20, "137"), (25, "178"), (30, "220"), (40, "302") })
            yield return new("Fixed installation tension", $"5M, {width} mm", tension, "N", BeltTension.FixedByWidth(Length.FromMillimetres(width)).Newtons, Sources.GatesUnittaU550,
            "", EvidenceLevel.Published);
        var at = Force.FromNewtons(115.19);
        yield return new("Shaft load at rest", "115.19 N in both spans, wrap 150.956°", "223.0", "N", BeltTension.ShaftLoad(at, at, Angle.FromDegrees(150.956)).Newtons, Sources.Geometry, "",
            EvidenceLevel.ComputedFromPublished);
        static PulleyGeometry Wheel(double inches) => new(10, new("in", Length.FromInches(Math.PI * inches / 10), Length.FromMetres(0)));
        var path = new BeltPath(Wheel(0.940), Wheel(2.256), Length.FromInches(3));
        yield return new("Span", "C 3.0 in, D 2.256 in, d 0.940 in", "2.9269", "in", path.Span.Inches, Sources.SdpSiTension, "eq. 1-3", EvidenceLevel.ComputedFromPublished);
        yield return new("Test deflection, supplier's", "span 2.9269 in", "0.0457", "in", Supplier(path.Span).Deflection.Inches, Sources.SdpSiTension, "p. T-3",
            EvidenceLevel.ComputedFromPublished);
        var (least, greatest, _) = Supplier(Length.FromInches(3.54));
        yield return new("Least test force, supplier's", "T 20 lbf, Y 24.9 lbf, span 3.54 in, L 11.811 in", "1.716", "lbf", least.PoundsForce, Sources.SdpSiTension, "eq. 1-4; Y from memory", EvidenceLevel.FromMemory);
        yield return new("Greatest test force, supplier's", "T 20 lbf, Y 24.9 lbf, span 3.54 in, L 11.811 in", "1.841", "lbf", greatest.PoundsForce, Sources.SdpSiTension, "eq. 1-5; Y from memory", EvidenceLevel.FromMemory);
    }

    static IEnumerable<Check> Frequencies()
    {
        var tension = Force.FromNewtons(743.6);
        var span = Length.FromMillimetres(414.44);
        yield return new("Span frequency", "743.6 N, 0.174 kg/m, span 414.44 mm", "78.9", "Hz", BeltTension.SpanFrequency(tension, 0.174, span).Hertz, Sources.OptibeltManual, "p. 44",
            EvidenceLevel.Published);
        yield return new("Tension from frequency, meter's formula", "M 5.8 g/(m·mm), W 30 mm, S 414.44 mm, 78.87 Hz", "743.6", "N", BeltTension.OfMeter(5.8, Length.FromMillimetres(30), span, Frequency.FromHertz(78.87)).Newtons,
            Sources.Gates508C, "against Optibelt p. 44", EvidenceLevel.Published)
        { Allowed = Allowance.Create(0.1, "the frequency is rounded to 0.01 Hz") };
        yield return new("Tension from frequency", "0.174 kg/m, span 414.44 mm, 78.88 Hz", "743.6", "N", BeltTension.OfFrequency(Frequency.FromHertz(78.88), 0.174, span).Newtons, Sources.OptibeltManual,
            "p. 44", EvidenceLevel.Published)
        { Allowed = Allowance.Create(0.3, "the frequency is rounded to 0.01 Hz and the span to 0.01 mm") };
        var mass = ToothProfile.Htd5M.KilogramsPerMetre(Length.FromMillimetres(15));
        yield return new("Span frequency", "5M, 15 mm, 100 N, span 90 mm", "242.46", "Hz", BeltTension.SpanFrequency(Force.FromNewtons(100), mass, Length.FromMillimetres(90)).Hertz,
            Sources.OptibeltManual, "p. 44, equation", EvidenceLevel.ComputedFromPublished)
        { Allowed = Allowance.Create(0.05, "by hand") };
        yield return new("Span frequency", "5M, 15 mm, 115.19 N, span 64.514 mm", "363.03", "Hz", BeltTension.SpanFrequency(Force.FromNewtons(115.19), mass, Length.FromMillimetres(64.514)).Hertz,
            Sources.OptibeltManual, "p. 44, equation", EvidenceLevel.ComputedFromPublished)
        { Allowed = Allowance.Create(0.05, "by hand") };
    }

    static IEnumerable<Check> Turning()
    {
        var torque = Gearing.TorqueOf(Power.FromKilowatts(31.09), AngularSpeed.FromRpm(2850));
        yield return new("Torque of a power", "31.09 kW, 2850 r/min", "104", "N·m", torque.NewtonMetres, Sources.OptibeltManual, "p. 45", EvidenceLevel.Published);
        yield return new("Torque through a ratio", "the same, 36 to 56 teeth", "162", "N·m", Gearing.WheelTorque(torque, 56 / 36.0, Fraction.FromValue(1)).NewtonMetres, Sources.OptibeltManual,
            "p. 45", EvidenceLevel.Published);
        var belt = BeltTension.BeltSpeed(Htd(15), AngularSpeed.FromRpm(4000));
        yield return new("Belt speed", "15 teeth, 4000 r/min", "5.000", "m/s", belt.MetresPerSecond, Sources.Kinematics, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Belt speed", "d 23.873 mm, 4000 r/min, as 0.0000524 d n", "5.004", "m/s", belt.MetresPerSecond, Sources.GatesDriveSelection, "",
            EvidenceLevel.Published)
        { Allowed = Allowance.Part(0.001, "the maker rounds π/60 000 to three digits") };
        var wheel = Gearing.WheelSpeed(AngularSpeed.FromRpm(6000), 36 / 15.0);
        var road = Gearing.RoadSpeed(wheel, Length.FromMillimetres(90));
        yield return new("Wheel speed", "6000 r/min, 15 to 36 teeth", "2500", "r/min", wheel.Rpm, Sources.Kinematics, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Road speed", "the same, wheel 90 mm", "11.781", "m/s", road.MetresPerSecond, Sources.Kinematics, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Road speed", "the same", "42.41", "km/h", road.KilometresPerHour, Sources.Kinematics, "", EvidenceLevel.ComputedFromPublished);
    }

    static PulleyGeometry Htd(int teeth) => new(teeth, ToothProfile.Htd5M);

    static Force SteelCord(double rpm) => SteelCordBelt.AllowedPull(AngularSpeed.FromRpm(rpm), 6, Length.FromMillimetres(15));

    static (Force Least, Force Greatest, Length Deflection) Supplier(Length span) =>
        BeltTension.SupplierDeflectionTest(Force.FromPoundsForce(20), Force.FromPoundsForce(24.9), span, Length.FromInches(11.811));
}
