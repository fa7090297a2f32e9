using System.Globalization;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;
using static Boardwright.Documents.Papers.PaperContext;

namespace Boardwright.Documents.Papers;

/// <summary>The customer's spec sheet: what may be promised, under which conditions, and how sure it is.</summary>
static class SpecSheet
{
    const double PictureWidth = 660;

    public static IReadOnlyList<Block> Compose(PaperContext gathering)
    {
        var claims = Claim.ListClaims(gathering.Examination, gathering.Order.Intervals);
        foreach (var key in claims.SelectMany(c => c.Missing))
            gathering.Lack(key);
        List<Block> blocks = [];
        var open = gathering.Examination.Findings.Count(f => f.Level == Level.Stop);
        if (open > 0)
            blocks.Add(new CautionBlock(Invariant($"{Count(open, "finding")} of the kind STOP {(open == 1 ? "is" : "are")} open on this design. Nothing on this sheet may be promised before {(open == 1 ? "it is" : "they are")} mended.")));
        var borne = claims.Where(c => c.Words is not null && c.Missing.Count == 0).ToList();
        if (borne.Count > 0)
        {
            blocks.Add(new HeadingBlock("What it does"));
            blocks.Add(new TableBlock(
                [new("", 2.6), new(open > 0 ? "Once mended" : "Promise", 2.4), new("Computed, nine times out of ten between", 3.4), new("Conditions", 5.6)],
                [.. borne.Select(c => (IReadOnlyList<string?>)[TitleOf(c), c.WordsIn(gathering.Order.Units), Sure(c, gathering),
                Conditions(c, gathering)])]));
        }

        if (gathering.Board.Brief.SpeedLimit is { IsKnown: true, Value: var limit }
            && claims.FirstOrDefault(c => c.Kind.Id == Catalogue.TopFull.Id)?.Interval is { } top && top.High > limit.KilometresPerHour)
            blocks.Add(new CautionBlock(gathering.Say($"The builder entered {limit:0.# km/h} as the limit where it will be ridden; the board can go faster. It is sold with its speed limited as the limits sheet says, and the speeds above are not promised for public ways.")));
        blocks.AddRange(Refused(claims, gathering));
        blocks.AddRange(Facts(gathering));
        if (RangePicture.Draw(gathering.Examination) is { IsKnown: true, Value: var chart })
            blocks.Add(new PictureBlock(ChartLayout.Compute(chart with { Title = "Range over cruise speed" }, new ChartView(PictureWidth)).Drawing));

        blocks.Add(new HeadingBlock("How sure this is"));
        blocks.AddRange(Resting(borne, gathering.Board));
        if (gathering.Examination.Usual is { Count: > 0 } usual)
            blocks.Add(new ParagraphBlock(Invariant($"Rests on {usual.Count} usual {(usual.Count == 1 ? "value" : "values")} for what no part's sheet states; their spreads are in the intervals.")));
        blocks.Add(new ParagraphBlock((gathering.Board.Model.Energy.IsKnown
            ? "Computed from the stated figures of the parts, with their spreads and the model's own, as rides showed it, carried through (evidence level E2 for energy; E0 for what no ride was held against). "
            : "Computed from the stated figures of the parts, with their spreads carried through; no board of this design has been measured against it yet (evidence level E0). ") + "A promise is what the unfavourable end of the interval keeps. Hills, stops, wind, cold, wet, soft wheels, old cells and a heavier rider take from range and climb."));
        blocks.Add(new CautionBlock(PaperCautions.Law));
        return blocks;
    }

    /// <summary>Which promises rest on measurement: those of which every value that matters most was measured.</summary>
    internal static IEnumerable<Block> Resting(IReadOnlyList<Claim> claims, Board board)
    {
        var lines = new List<string>();
        foreach (var claim in claims.Where(c => c.Interval is { MattersMost.Count: > 0 }))
        {
            var matters = claim.Interval!.MattersMost.Select(key => (Key: key, From: Spread.OriginOf(board, key))).ToList();
            var most = matters.Count == 1 ? "matters most" : "matter most";
            var words = matters.Select(m => $"{m.Key} ({(m.From switch { Origin.Measured => "measured", Origin.Guess => "a guess", Origin.Usual => "a usual value", _ => "the maker's figure" })})");
            lines.Add(matters.TrueForAll(m => m.From == Origin.Measured)
                ? $"{TitleOf(claim)} rests on measurement: {string.Join(" and ", words)} {most}."
                : $"{TitleOf(claim)} rests on {(matters.Exists(m => m.From == Origin.Measured) ? "measurement in part" : "no measurement")}: {string.Join(" and ", words)} {most}.");
        }

        if (lines.Count > 0)
            yield return new PointsBlock([.. lines]);
    }

    static string TitleOf(Claim claim) => claim.Kind.Id == Catalogue.BoardMass.Id ? "Mass of the board" : claim.Kind.Title;

    static string Sure(Claim claim, PaperContext gathering) => claim.Interval is null ? "" : Ends(claim, gathering, "and");

    // Rounded outwards, so that a promise never looks larger than its interval.
    static string Ends(Claim claim, PaperContext gathering, string word)
    {
        var (low, unit) = Dimensions.In(gathering.Order.Units, claim.Interval!.Low, claim.Kind.Unit);
        var (high, _) = Dimensions.In(gathering.Order.Units, claim.Interval.High, claim.Kind.Unit);
        return $"{Digits(Math.Floor(low * 10 + 1e-9) / 10)} {word} {Digits(Math.Ceiling(high * 10 - 1e-9) / 10)} {unit}";
    }

    static string Digits(double value) => value.ToString(Math.Abs(value) < 100 ? "0.0" : "0", CultureInfo.InvariantCulture);

    static string Conditions(Claim claim, PaperContext gathering) =>
        claim.Conditions.In(gathering.Order.Units) + (claim.Caution is { } caution ? $"; {caution}" : "");

    static IEnumerable<Block> Refused(IReadOnlyList<Claim> claims, PaperContext gathering)
    {
        var refused = claims.Where(c => c.IsSupported == false || c.Words is null).ToList();
        if (refused.Count == 0)
            yield break;
        yield return new HeadingBlock("Not promised");
        yield return new PointsBlock([.. refused.Select(c => Refusal(c, gathering))]);
    }

    /// <summary>Why a claim is refused, and what may be said instead.</summary>
    internal static string Refusal(Claim claim, PaperContext gathering)
    {
        var units = gathering.Order.Units;
        var (asked, unit) = Dimensions.In(units, claim.Asked ?? 0, claim.Kind.Unit);
        var wanted = claim.Asked is null ? $"{TitleOf(claim)}: " : Invariant($"{TitleOf(claim)}: {asked:0.##} {unit} {(claim.IsAtLeast ? "or more" : "or less")} is not borne out. ");
        if (claim.Missing.Count > 0)
            return wanted + "nothing can be said before these are known: " + PaperContext.JoinWords(claim.Missing) + ".";
        if (claim.Value is not { } value)
            return wanted + (claim.Caution is { } caution ? caution + "." : "the board does not do it at all.");
        if (claim.Interval is null)
            return Invariant($"{wanted}computed {Digits(Dimensions.In(units, value, claim.Kind.Unit).Value)} {unit}, but how sure that is was not computed.");
        var end = $"The {(claim.IsAtLeast ? "lower" : "upper")} end of the interval, {Ends(claim, gathering, "to")}, does not keep it. ";
        return wanted + end + (claim.WordsIn(units) is { } words ? $"What may be said: {words} ({claim.Conditions.In(units)})." : "Nothing may be promised.");
    }

    static IEnumerable<Block> Facts(PaperContext gathering)
    {
        var parts = gathering.Parts;
        yield return new HeadingBlock("What it is");
        string? Titled(Part part) => part.IsChosen ? part.Title : null;
        List<IReadOnlyList<string?>> rows =
        [
            ["Deck", Titled(parts.Deck) is { } deck ? gathering.Say($"{deck}{(parts.Deck.Length.IsKnown ? gathering.Say($", {parts.Deck.Length.Value:0 mm} long") : "")}") : null],
            ["Wheels", Titled(parts.Wheels) is { } wheels ? gathering.Say($"{wheels}{(parts.Wheels.Diameter.IsKnown ? gathering.Say($", Ø {parts.Wheels.Diameter.Value:0 mm}") : "")}") : null],
            ["Drive", gathering.Format(parts.Drive.Kind, k => $"{(k == DriveKind.Belt ? "belts" : k == DriveKind.Gear ? "gears" : "motors in the wheels")}, {(parts.Drive.Motors.IsKnown ? Count(parts.Drive.Motors.Value, "motor") : "")}")],
            ["Power at the controllers, half charge", gathering.Figure(Catalogue.FeedPower, "0")],
            ["Pack", Invariant($"{Or(gathering.Format(parts.Pack.Series, s => $"{s}"))}s{Or(gathering.Format(parts.Pack.Parallel, p => $"{p}"))}p, {Or(gathering.Figure(Catalogue.PackEnergy, "0"))} nominal")],
            ["Charger", Titled(parts.Charger) is { } charger ? Invariant($"{charger}, {Or(gathering.Format(parts.Charger.Current, a => $"{a.Amperes:0.#} A"))}") : "none"],
        ];
        yield return new TableBlock([new("", 3), new("", 7)], rows);
    }
}
