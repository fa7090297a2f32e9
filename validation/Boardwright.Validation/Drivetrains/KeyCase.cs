using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Units;

namespace Boardwright.Validation.Drivetrains;

/// <summary>Keys, set screws and fits.</summary>
public sealed class KeyCase : Case
{
    /// <inheritdoc/>
    public override string Room => "Drivetrains";

    /// <inheritdoc/>
    public override string Topic => "Keys, set screws and fits";

    /// <inheritdoc/>
    public override string About =>
        "Standard keys of a shaft, stresses in a key, torque a set screw holds, clearance of a hole on a shaft. "
        + "What a loose hub does to a key in a drive that reverses hundreds of times an hour has not been compared with anything.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare() => [.. Sizes(), .. Stresses(), .. Examples(), .. Screws(), .. Fits()];

    static IEnumerable<Check> Sizes()
    {
        foreach (var (diameter, width, hub, shaft) in new[] { (8, "2", "9.0", "6.8"), (10, "3", "11.4", "8.2"), (12, "4", "13.8", "9.5"), (15, "5", "17.3", "12.0"),
            (17, "5", "19.3", "14.0") })
        {
            var d = Length.FromMillimetres(diameter);
            var size = KeySize.ForShaft(d)!;
            yield return new("Width of the standard key", $"shaft {diameter} mm", width, "mm", size.Width.Millimetres, Sources.Din6885, "table", EvidenceLevel.Published);
            yield return new("Hub dimension d + t₂", $"shaft {diameter} mm", hub, "mm", size.HubDimension(d).Millimetres, Sources.Din6885, "table", EvidenceLevel.Published);
            yield return new("Shaft dimension d − t₁", $"shaft {diameter} mm", shaft, "mm", size.ShaftDimension(d).Millimetres, Sources.Din6885, "table", EvidenceLevel.Published);
        }
    }

    static IEnumerable<Check> Stresses()
    {
        foreach (var (newtonMetres, diameter, length, load, shear, hub, half) in new[]
        {
            (3, 8, 10, "750.0", "37.50", "93.75", "75.00"), (5, 10, 12, "1000.0", "27.78", "69.44", "55.56"), (10, 14, 16, "1428.6", "17.86", "44.64", "35.71"),
        })
        {
            var (torque, d) = (Torque.FromNewtonMetres(newtonMetres), Length.FromMillimetres(diameter));
            var key = KeySize.ForShaft(d)!.Key(Length.FromMillimetres(length));
            var given = $"{newtonMetres} N·m, shaft {diameter} mm, standard key {length} mm long";
            yield return new("Force on the key", given, load, "N", ParallelKey.Load(torque, d).Newtons, Sources.Mott, "",
                EvidenceLevel.ComputedFromPublished);
            yield return new("Shear stress", given, shear, "MPa", key.Shear(torque, d).Megapascals, Sources.Mott, "eq. 11-1", EvidenceLevel.ComputedFromPublished);
            yield return new("Bearing stress, h − t₁", given, hub, "MPa", key.HubBearing(torque, d).Megapascals, Sources.Din6885, "",
                EvidenceLevel.ComputedFromPublished);
            yield return new("Bearing stress, h / 2", given, half, "MPa", key.HalfHeightBearing(torque, d).Megapascals, Sources.Mott, "eq. 11-2",
                EvidenceLevel.ComputedFromPublished);
        }
    }

    static IEnumerable<Check> Examples()
    {
        var (load, yield65, side) = (Force.FromPoundsForce(5850), Pressure.FromPoundsPerSquareInch(65_000), Length.FromInches(0.375));
        const string given = "5850 lbf, key 3/8 in square, Sy 65 ksi, n 2.8";
        yield return new("Key length for shear", given, "1.16", "in", ParallelKey.LengthFor(load, side, ParallelKey.AllowableShearByDistortion(yield65, 2.8)).Inches,
            Sources.KeysFromMemory, "Shigley example 7-6", EvidenceLevel.FromMemory);
        yield return new("Key length for crushing", given, "1.34", "in", ParallelKey.LengthFor(load, side / 2, ParallelKey.AllowableBearing(yield65, 2.8)).Inches,
            Sources.KeysFromMemory, "Shigley example 7-6", EvidenceLevel.FromMemory);
        var mott = ParallelKey.Load(Torque.FromPoundForceInches(2965), Length.FromInches(2));
        yield return new("Key length for shear", "2965 lbf·in, shaft 2.00 in, width 0.5 in, allowable 8500 psi", "0.698", "in", ParallelKey.LengthFor(mott, Length.FromInches(0.5), Pressure.FromPoundsPerSquareInch(8500)).Inches,
            Sources.KeysFromMemory, "Mott eq. 11-1", EvidenceLevel.FromMemory);
    }

    static IEnumerable<Check> Screws()
    {
        foreach (var (size, screw, force, shaft, torque) in new[] { ("#0", 0.060, 50, 0.125, "3.1"), ("#1", 0.073, 65, 0.3125, "10.0"),
            ("#2", 0.086, 85, 0.375, "16.0") })
        {
            yield return new("Torque a set screw holds", $"{size}, {force} lbf, shaft {shaft} in", torque, "lbf·in",
                SetScrew.HoldingTorque(SetScrew.HoldingForce(Length.FromInches(screw)) ?? Force.FromNewtons(0), Length.FromInches(shaft))
                .PoundForceInches, Sources.SetScrewChart, "", EvidenceLevel.Published)
            {
                Allowed = Allowance.Part(0.02, "the chart rounds to half a pound-inch and less"),
            };
        }

        var held = Force.FromNewtons(1713);
        var d = Length.FromMillimetres(8);
        yield return new("Holding force", "#8, 0.164 in", "1713", "N", SetScrew.HoldingForce(Length.FromInches(0.164))?.Newtons ?? double.NaN,
            Sources.SetScrewsFromMemory, "", EvidenceLevel.FromMemory);
        yield return new("Torque a set screw holds at rest", "1713 N, shaft 8 mm", "6.85", "N·m", SetScrew.HoldingTorque(held, d).NewtonMetres, Sources.SetScrewsFromMemory, "",
            EvidenceLevel.FromMemory);
        yield return new("Torque a set screw holds, dynamic factor 8", "1713 N, shaft 8 mm", "0.86", "N·m", SetScrew.DynamicTorque(held, d).Least.NewtonMetres, Sources.SetScrewsFromMemory, "",
            EvidenceLevel.FromMemory);
        yield return new("Torque a set screw holds, dynamic factor 4", "1713 N, shaft 8 mm", "1.71", "N·m", SetScrew.DynamicTorque(held, d).Greatest.NewtonMetres, Sources.SetScrewsFromMemory, "",
            EvidenceLevel.FromMemory);
    }

    static IEnumerable<Check> Fits()
    {
        var eight = Length.FromMillimetres(8);
        foreach (var (hole, shaft, least, greatest, source, evidence) in new[]
        {
            ("H7", "h6", "0", "24", Sources.Iso286, EvidenceLevel.ComputedFromPublished),
                ("H7", "m6", "-15", "9", Sources.Iso286, EvidenceLevel.ComputedFromPublished),
            ("H7", "k6", "-10", "14", Sources.FitsFromMemory, EvidenceLevel.FromMemory),
                ("H7", "g6", "5", "29", Sources.FitsFromMemory, EvidenceLevel.FromMemory),
        })
        {
            var fit = new CylindricalFit(ToleranceZone.Parse(hole, eight)!, ToleranceZone.Parse(shaft, eight)!);
            yield return new("Least clearance", $"8 mm {hole}/{shaft}", least, "µm", fit.LeastClearance.Micrometres, source, "", evidence);
            yield return new("Greatest clearance", $"8 mm {hole}/{shaft}", greatest, "µm", fit.GreatestClearance.Micrometres, source, "", evidence);
        }

        var bearing = new CylindricalFit(ToleranceZone.BearingBore, ToleranceZone.Parse("h6", eight)!);
        yield return new("Least clearance", "608 bore on 8 mm h6", "-8", "µm", bearing.LeastClearance.Micrometres, Sources.Iso492, "", EvidenceLevel.ComputedFromPublished);
        yield return new("Greatest clearance", "608 bore on 8 mm h6", "9", "µm", bearing.GreatestClearance.Micrometres, Sources.Iso492, "", EvidenceLevel.ComputedFromPublished);
    }
}
