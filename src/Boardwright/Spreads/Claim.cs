using System.Globalization;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Spreads;

/// <summary>Something that might be promised of a board, and whether what is known of it bears that out.</summary>
/// <remarks>A promise holds only when the unfavourable end of the figure's interval keeps it: the lower end of a range, the upper end of a
/// charge time.</remarks>
/// <validity>As the interval: it knows the spreads that the board file states, not a model's own error.</validity>
/// <error>The unfavourable end is missed one time in twenty.</error>
/// <source cref="Sources.QuasiMonteCarlo"/>
public sealed record Claim
{
    // Two digits are what a promise is heard with.
    const int Digits = 2;

    /// <summary>What is promised.</summary>
    public required FigureKind Kind { get; init; }
    /// <summary>Under which conditions.</summary>
    public required Phrase Conditions { get; init; }
    /// <summary>What the brief wants, in the figure's unit; <c>null</c> where it wants nothing.</summary>
    public double? Asked { get; init; }
    /// <summary>Whether more is better.</summary>
    public required bool IsAtLeast { get; init; }
    /// <summary>The figure; <c>null</c> where it cannot be said.</summary>
    public double? Value { get; init; }
    /// <summary>How well it is known; <c>null</c> where nobody computed that.</summary>
    public Interval? Interval { get; init; }
    /// <summary>Entries that are missing.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];
    /// <summary>What the figure itself warns of.</summary>
    public string? Caution { get; init; }
    /// <summary>The end of the interval that a promise has to keep to.</summary>
    public double? Unfavourable => Interval is null ? null : IsAtLeast ? Interval.Low : Interval.High;
    /// <summary>Whether what the brief wants may be promised; <c>null</c> where it wants nothing.</summary>
    public bool? IsSupported => Asked is not { } asked ? null : Unfavourable is { } end && (IsAtLeast ? end >= asked : end <= asked);

    /// <summary>The most that may be promised: the unfavourable end, rounded to two digits to its unfavourable side.</summary>
    /// <returns>The number; <c>null</c> where nothing may be promised.</returns>
    public double? MayPromise
    {
        get
        {
            if (Unfavourable is not { } end || end <= 0 || !double.IsFinite(end))
                return null;
            return Rounded(end);
        }
    }

    double Rounded(double end)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(end)) - Digits + 1);
        // A hair is forgiven, so that a round number stays as it is.
        var rounded = IsAtLeast ? Math.Floor(end / step + 1e-9) * step : Math.Ceiling(end / step - 1e-9) * step;
        return Math.Round(rounded, 6);
    }

    /// <summary>What may be said, with its unit; the brief's own number where that is borne out.</summary>
    /// <returns>Words such as <c>at least 56 km</c>; <c>null</c> where nothing may be promised.</returns>
    public string? Words => WordsIn(UnitSystem.Metric);

    /// <summary>The same in the reader's units: imperial numbers are rounded to two digits to their unfavourable side once more.</summary>
    public string? WordsIn(UnitSystem units)
    {
        if ((IsSupported == true ? Asked : MayPromise) is not { } number)
            return null;
        var (shown, unit) = Dimensions.In(units, number, Kind.Unit);
        var kept = unit == Kind.Unit ? number : Rounded(shown);
        return string.Create(CultureInfo.InvariantCulture, $"{(IsAtLeast ? "at least" : "at most")} {kept:0.##} {unit}");
    }

    /// <summary>What might be promised of a board: what its brief wants, then what a customer asks.</summary>
    /// <param name="examination">The board.</param>
    /// <param name="intervals">How well the figures are known, by their ids.</param>
    public static IReadOnlyList<Claim> ListClaims(Examination examination, IReadOnlyDictionary<string, Interval> intervals)
    {
        ArgumentNullException.ThrowIfNull(examination);
        ArgumentNullException.ThrowIfNull(intervals);
        var brief = examination.Board.Brief;
        Phrase rider = examination.LoadOnDeck.IsKnown ? (FormattableString)$"rider {examination.LoadOnDeck.Value:0 kg} with gear" : $"rider not stated";
        Phrase warm = brief.Temperature.IsKnown ? (FormattableString)$"{brief.Temperature.Value:0 °C}" : $"temperature not stated";
        Phrase wind = brief.Headwind.IsKnown ? (FormattableString)$"headwind {brief.Headwind.Value:0.# m/s}" : $"wind not stated";
        Phrase air = (FormattableString)$"{warm}, {(brief.Surface.IsKnown ? Parts.Entry.Snake(brief.Surface.Value.ToString()).Replace('_', ' ') : "surface not stated")}, {wind}";
        Phrase cruise = brief.CruiseSpeed.IsKnown ? (FormattableString)$"steady {brief.CruiseSpeed.Value:0.# km/h}" : $"cruise speed not stated";
        Phrase reserve = brief.Reserve.IsKnown ? (FormattableString)$"down to {brief.Reserve.Value:0 %} of charge" : $"reserve not stated";
        Phrase climb = brief.ClimbSpeed.IsKnown ? (FormattableString)$"at {brief.ClimbSpeed.Value:0.# km/h}" : $"climbing speed not stated";
        Phrase charger = examination.Board.Parts.Charger is { IsChosen: true, Current.IsKnown: true } c ? (FormattableString)$"with the {c.Current.Value:0.# A} charger, new cells" : $"charger not stated";
        Claim? Made(FigureKind kind, bool isAtLeast, FormattableString conditions)
        {
            var asked = FigureTarget.Find(examination.Board, kind.Id)?.Least;
            var figure = examination.Figures.FirstOrDefault(f => f.Kind.Id == kind.Id);
            // What this board has no part for is not spoken of.
            return figure is null && asked is null ? null : new Claim
            {
                Kind = kind,
                Conditions = conditions,
                Asked = asked,
                IsAtLeast = isAtLeast,
                Value = figure?.Value,
                Interval = intervals.GetValueOrDefault(kind.Id),
                Missing = figure?.Missing ?? [],
                Caution = figure?.Caution,
            };
        }

        Claim?[] all =
        [
            Made(Catalogue.Range, true, $"level road, {cruise}, {reserve}; {rider}, {air}"),
            Made(Catalogue.TopFull, true, $"level road, full charge; {rider}, {air}"),
            Made(Catalogue.TopReserve, true, $"level road, {reserve}; {rider}, {air}"),
            Made(Catalogue.Grade, true, $"half charge, {climb}, motors cold; {rider}, {air}"),
            Made(Catalogue.ChargeFull, false, $"from empty, {charger}"),
            Made(Catalogue.Charge80, false, $"from empty, {charger}"),
            Made(Catalogue.BoardMass, false, $"without charger"),
        ];
        return [.. all.OfType<Claim>()];
    }
}
