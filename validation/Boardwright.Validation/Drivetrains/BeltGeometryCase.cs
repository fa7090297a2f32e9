using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Units;

namespace Boardwright.Validation.Drivetrains;

/// <summary>Pulleys, belt length, centre distance, wrap, mesh and span.</summary>
public sealed class BeltGeometryCase : Case
{
    static readonly Allowance TwoTables = Allowance.Create(0.011, "rounded twice; the manual's own tables differ by 0.01");

    /// <inheritdoc/>
    public override string Room => "Drivetrains";

    /// <inheritdoc/>
    public override string Topic => "Belt geometry";

    /// <inheritdoc/>
    public override string About =>
        "Pulley diameters, and the path of a belt around two pulleys: length, centre distance, wrap, teeth in mesh, span. "
        + "The centre distances of the short belts that boards use are not printed by anyone: they were worked out by hand from the published equation, and the belt-maker's long example is published.";

    /// <inheritdoc/>
    protected override IEnumerable<Check> Compare() => [.. Pulleys(), .. Example(), .. Boards(), .. Shigley()];

    static IEnumerable<Check> Pulleys()
    {
        yield return new(
            "Pitch-line differential", "5M, 0.0225 in", "0.5715", "mm", ToothProfile.Htd5M.PitchLineDifferential.Millimetres,
            Sources.SdpSiTimingBelts, "p. T16, table 4", EvidenceLevel.Published);
        foreach (var (teeth, pitch, outside) in new (int, string?, string)[]
        {
            (12, null, "17.96"), (13, "20.69", "19.55"), (14, "22.28", "21.14"), (15, "23.87", "22.73"), (16, "25.46", "24.32"), (17, "27.06", "25.92"),
            (18, null, "27.51"), (19, "30.24", "29.10"), (20, "31.83", "30.69"), (22, "35.01", "33.87"), (28, "44.56", "43.42"), (32, "50.93", "49.79"),
            (36, null, "56.16"), (40, "63.66", "62.52"), (44, "70.03", "68.89"), (60, "95.49", "94.35"), (72, "114.59", "113.45"),
        })
        {
            var pulley = new PulleyGeometry(teeth, ToothProfile.Htd5M);
            if (pitch is not null)
                yield return new("Pitch diameter", $"5M, {teeth} teeth", pitch, "mm", pulley.PitchDiameter.Millimetres, Sources.OptibeltManual, "p. 74",
                    EvidenceLevel.Published)
                { Allowed = TwoTables };
            yield return new("Outside diameter", $"5M, {teeth} teeth", outside, "mm", pulley.OutsideDiameter.Millimetres, Sources.OptibeltManual, "p. 74",
                EvidenceLevel.Published)
            { Allowed = TwoTables };
        }

        foreach (var (teeth, pitch) in new[] { (36, "91.67"), (56, "142.60") })
            yield return new("Pitch diameter", $"8M, {teeth} teeth", pitch, "mm", new PulleyGeometry(teeth, ToothProfile.Htd8M).PitchDiameter.Millimetres,
            Sources.OptibeltManual, "p. 42", EvidenceLevel.Published);
    }

    static IEnumerable<Check> Example()
    {
        var (small, large) = (new PulleyGeometry(36, ToothProfile.Htd8M), new PulleyGeometry(56, ToothProfile.Htd8M));
        var (d, D) = (small.PitchDiameter, large.PitchDiameter);
        const string pulleys = "8M, 36 and 56 teeth";
        var manual = Sources.OptibeltManual;
        var far = new BeltPath(small, large, Length.FromMillimetres(425));
        yield return new("Belt length", $"{pulleys}, C 425 mm", "1219.33", "mm", far.PitchLength.Millimetres, manual, "p. 43", EvidenceLevel.Published)
        {
            Allowed = Allowance.Create(0.25, "the manual takes π/2 as 1.57"),
        };
        yield return new("Centre distance, approximate formula", $"{pulleys}, belt 1200 mm", "415.22", "mm", BeltEstimates.CentreDistance(Length.FromMillimetres(1200), D, d)?.Millimetres ?? double.NaN,
            manual, "p. 43", EvidenceLevel.Published);
        var path = BeltPath.Fitting(150, small, large)!;
        yield return new("Centre distance, exact", $"{pulleys}, belt 1200 mm", "415.22", "mm", path.CentreDistance.Millimetres, manual, "p. 43", EvidenceLevel.Published);
        yield return new("Teeth in mesh, approximate formula", "36 teeth, D − d 50.93 mm, C 415 mm", "17.26", "",
            BeltEstimates.TeethInMesh(36, Length.FromMillimetres(415), Length.FromMillimetres(142.60), Length.FromMillimetres(91.67)),
            manual, "p. 43", EvidenceLevel.Published);
        yield return new("Whole teeth in mesh", $"{pulleys}, belt 1200 mm", "17", "", path.WholeTeethInMesh, manual, "p. 43", EvidenceLevel.Published);
        var near = new BeltPath(small, large, Length.FromMillimetres(415.22));
        yield return new("Teeth in mesh, exact", $"{pulleys}, C 415.22 mm", "17.297", "", near.TeethInMesh, manual, "p. 43, definition", EvidenceLevel.ComputedFromPublished);
        yield return new("Wrap on the small pulley, exact", $"{pulleys}, C 415.22 mm", "172.968", "°", near.SmallWrap.Degrees, manual, "p. 43, definition",
            EvidenceLevel.ComputedFromPublished)
        { Allowed = Allowance.Create(0.01, "by hand at the rounded centre distance") };
        yield return new("Wrap on the small pulley, 60° rule", $"{pulleys}, C 415.22 mm", "172.641", "°", BeltEstimates.SmallWrap(Length.FromMillimetres(415.22), D, d).Degrees, manual, "p. 43",
            EvidenceLevel.ComputedFromPublished)
        { Allowed = Allowance.Create(0.01, "by hand at the rounded centre distance") };
        yield return new("Span", $"{pulleys}, C 415.22 mm", "414.44", "mm", new BeltPath(small, large, Length.FromMillimetres(415.22)).Span.Millimetres, manual, "p. 44",
            EvidenceLevel.Published)
        { Allowed = Allowance.Create(0.01, "the manual's own rounded inputs") };
        var (least, greatest) = BeltEstimates.RecommendedCentreDistance(Length.FromMillimetres(142.60), Length.FromMillimetres(91.67));
        yield return new("Least recommended centre distance", "D 142.60 mm, d 91.67 mm", "132.14", "mm", least.Millimetres, manual, "p. 42", EvidenceLevel.Published);
        yield return new("Greatest recommended centre distance", "D 142.60 mm, d 91.67 mm", "468.54", "mm", greatest.Millimetres, manual, "p. 42", EvidenceLevel.Published);
    }

    static IEnumerable<Check> Boards()
    {
        var equation = Sources.OptibeltManual;
        foreach (var (z1, z2, belt, centre, wrap, mesh, span) in new (int, int, int, string, string?, string?, string?)[]
        {
            (20, 20, 225, "62.500", null, "10.000", null),
            (15, 36, 255, "61.4639", "148.447", "6.185", "59.148"),
            (15, 36, 265, "66.6436", "150.956", "6.290", "64.514"),
            (15, 36, 270, "69.2229", "152.060", "6.336", "67.175"),
            (16, 36, 270, "68.1325", null, "6.799", null),
            (16, 40, 280, "67.2702", null, "6.534", null),
            (15, 40, 280, "68.3330", null, "6.090", null),
            (16, 44, 300, "71.4992", null, "6.386", null),
            (14, 36, 255, "62.5329", "147.484", "5.735", null),
            (12, 36, 255, "64.6583", null, "4.855", null),
            (18, 60, 400, "96.6620", null, null, null),
            (20, 72, 450, "101.4362", null, null, null),
            (15, 66, 475, "129.855", null, null, null),
        })
        {
            var path = BeltPath.Fitting(Length.FromMillimetres(belt), Htd(z1), Htd(z2))!;
            var given = $"5M, {z1} and {z2} teeth, belt {belt} mm";
            yield return new("Centre distance", given, centre, "mm", path.CentreDistance.Millimetres, equation, "p. 43, exact equation", EvidenceLevel.ComputedFromPublished);
            if (wrap is not null)
                yield return new("Wrap on the small pulley", given, wrap, "°", path.SmallWrap.Degrees, equation, "p. 43, definition", EvidenceLevel.ComputedFromPublished);
            if (mesh is not null)
            {
                yield return new("Teeth in mesh", given, mesh, "", path.TeethInMesh, equation, "p. 43, definition", EvidenceLevel.ComputedFromPublished)
                {
                    MissBecause = mesh == "6.090" ? "The hand calculation was rounded twice, 6.08949 to 6.0895 and that to 6.090." : null,
                };
            }

            if (span is not null)
                yield return new("Span", given, span, "mm", path.Span.Millimetres, equation, "p. 44", EvidenceLevel.ComputedFromPublished);
        }

        yield return new("Whole teeth in mesh", "5M, 14 and 36 teeth, belt 255 mm", "5", "", BeltPath.Fitting(51, Htd(14), Htd(36))!.WholeTeethInMesh, equation, "p. 43",
            EvidenceLevel.ComputedFromPublished);
        yield return new("Whole teeth in mesh", "5M, 12 and 36 teeth, belt 255 mm", "4", "", BeltPath.Fitting(51, Htd(12), Htd(36))!.WholeTeethInMesh, equation, "p. 43",
            EvidenceLevel.ComputedFromPublished);
        yield return new("Centre distance, approximate formula", "5M, 15 and 36 teeth, belt 265 mm", "66.6551", "mm", Estimate(265, 15, 36), equation, "p. 43", EvidenceLevel.ComputedFromPublished);
        yield return new("Centre distance, approximate formula", "5M, 20 and 72 teeth, belt 450 mm", "101.5708", "mm", Estimate(450, 20, 72), equation, "p. 43", EvidenceLevel.ComputedFromPublished);
        yield return new("Belt length", "5M, 15 and 66 teeth, C 127.0 mm", "469.583", "mm", new BeltPath(Htd(15), Htd(66), Length.FromMillimetres(127)).PitchLength.Millimetres, equation, "p. 43, exact equation",
            EvidenceLevel.ComputedFromPublished);
        yield return new("Belt length, approximate formula", "5M, 15 and 66 teeth, C 127.0 mm", "469.469", "mm",
            BeltEstimates.PitchLength(Length.FromMillimetres(127), Htd(66).PitchDiameter, Htd(15).PitchDiameter).Millimetres, equation, "p. 43",
            EvidenceLevel.ComputedFromPublished);
        var (shorter, longer) = ToothProfile.Htd5M.StockAround(Length.FromMillimetres(469.583));
        yield return new("Next shorter stock belt", "5M, 469.583 mm", "460", "mm", shorter?.PitchLength.Millimetres ?? double.NaN, equation, "pp. 24-25", EvidenceLevel.Published);
        yield return new("Next longer stock belt", "5M, 469.583 mm", "475", "mm", longer?.PitchLength.Millimetres ?? double.NaN, equation, "pp. 24-25", EvidenceLevel.Published);
        yield return new("Belt length for centre distance, dL/dC", "5M, 15 and 36 teeth, C 66.6436 mm", "1.9361", "mm/mm", new BeltPath(Htd(15), Htd(36), Length.FromMillimetres(66.6436)).LengthPerCentreDistance, equation,
            "p. 43, exact equation", EvidenceLevel.ComputedFromPublished);
    }

    static IEnumerable<Check> Shigley()
    {
        // A pulley of ten teeth whose pitch gives the flat belt's pulley diameters.
        static PulleyGeometry Wheel(double inches) => new(10, new("flat", Length.FromInches(Math.PI * inches / 10), Length.FromMetres(0)));
        var path = new BeltPath(Wheel(6), Wheel(18), Length.FromInches(96));
        const string given = "flat belt, d 6 in, D 18 in, C 96 in";
        yield return new("Wrap on the small pulley", given, "3.016511", "rad", path.SmallWrap.Radians, Sources.Shigley, "solutions p. 425, eqs 17-1 and 17-2", EvidenceLevel.Published);
        yield return new("Wrap on the large pulley", given, "3.266674", "rad", path.LargeWrap.Radians, Sources.Shigley, "solutions p. 425, eqs 17-1 and 17-2", EvidenceLevel.Published);
        yield return new("Belt length", given, "230.074", "in", path.PitchLength.Inches, Sources.Shigley, "solutions p. 425, eqs 17-1 and 17-2", EvidenceLevel.Published);
    }

    static PulleyGeometry Htd(int teeth) => new(teeth, ToothProfile.Htd5M);

    static double Estimate(double belt, int z1, int z2) =>
        BeltEstimates.CentreDistance(Length.FromMillimetres(belt), Htd(z2).PitchDiameter, Htd(z1).PitchDiameter)?.Millimetres ?? double.NaN;
}
