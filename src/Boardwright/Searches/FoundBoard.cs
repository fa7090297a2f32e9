using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Searches;

/// <summary>A board that a search found, with the figures of its examination.</summary>
public sealed class FoundBoard
{
    readonly CandidateParts offers;
    readonly int[] pick;
    readonly double[] merits;

    FoundBoard(CandidateParts offers, int[] pick, Examination examination)
    {
        (this.offers, this.pick) = (offers, pick);
        var worth = Merits.FromBrief(examination.Board.Brief);
        Price = examination.Price.IsKnown ? examination.Price.Value.Money : examination.Quote.IsKnown ? examination.Quote.Value.Parts
            : null;
        Range = examination.Cruise.IsKnown ? examination.Cruise.Value.Steady?.Metres : null;
        Climb = examination.SteepestClimb.IsKnown ? examination.SteepestClimb.Value.Value : null;
        TopSpeed = examination.Speeds.IsKnown ? examination.Speeds.Value.Full : null;
        Mass = examination.Masses.IsKnown ? examination.Masses.Value.Board.Kilograms : null;
        Spare = SpareOf(examination);
        merits =
        [
            Math.Min(Range ?? double.NaN, worth.Range), Math.Min(Climb ?? double.NaN, worth.Climb),
                Math.Min(TopSpeed ?? double.NaN, worth.Speed), -(Mass ?? double.NaN),
            -(examination.Quote.IsKnown ? (double)examination.Quote.Value.Parts.Amount : double.NaN),
                Math.Min(Spare ?? double.NaN, worth.Spare),
        ];
        var findings = examination.Findings;
        Stops = [.. findings.Where(f => f.Level == Level.Stop).Select(f => f.Rule)];
        Fixes = [.. Stops.Where(ShownRules.Contains), .. findings.Where(f => f.Level == Level.Fix).Select(f => f.Rule)];
        Measures = findings.Count(f => f.Level == Level.Measure);
        IsPriced = examination.Quote.IsKnown && examination.Quote.Value.Unpriced.Count == 0;
    }

    /// <summary>Rules whose finding at the level <see cref="Level.Fix"/> says that the brief is not met.</summary>
    public static IReadOnlyList<string> BriefRules { get; } = ["speed.wanted", "climb.wanted", "cruise.range_wanted", "cruise.held", "price.budget"];
    /// <summary>Rules that no screen of a search knows beforehand: where they say <see cref="Level.Stop"/>, the board is shown with
    /// it.</summary>
    public static IReadOnlyList<string> ShownRules { get; } = ["brake.strength"];
    /// <summary>Range at cruise speed, m.</summary>
    public double? Range { get; }
    /// <summary>Steepest grade at the climbing speed, rise over run.</summary>
    public double? Climb { get; }
    /// <summary>Top speed with a full pack, m/s.</summary>
    public double? TopSpeed { get; }
    /// <summary>Mass of the board, kg.</summary>
    public double? Mass { get; }
    /// <summary>Its price, or what its parts cost where the file does not say what comes on top.</summary>
    public Money? Price { get; }
    /// <summary>Whether the price of every part is known; otherwise the price is a lower bound.</summary>
    public bool IsPriced { get; }
    /// <summary>The least of what is spare on the brief's climb of phase and pack current, and of the controller's voltage; 0 is
    /// nothing.</summary>
    public double? Spare { get; }
    /// <summary>Rules that say <see cref="Level.Stop"/>.</summary>
    public IReadOnlyList<string> Stops { get; }
    /// <summary>Rules that say <see cref="Level.Fix"/>, and those that are shown where they stop, worst first.</summary>
    public IReadOnlyList<string> Fixes { get; }
    /// <summary>How many rules wait for a value.</summary>
    public int Measures { get; }
    /// <summary>Whether nothing stops it and the brief is met; settings that are still to be made do not count against it.</summary>
    public bool MeetsBrief => Stops.All(ShownRules.Contains) && !Fixes.Any(BriefRules.Contains) && !Array.Exists(merits, double.IsNaN);

    /// <summary>The parts chosen, by the key of their place; places that hold nothing are left out.</summary>
    public IReadOnlyList<(Slot Slot, string Name)> Parts =>
        [.. Enum.GetValues<Slot>().Select(s => (Slot: s, Name: offers.NameOf(s, pick[(int)s]))).Where(p => p.Name.Length > 0)];

    /// <summary>The board itself.</summary>
    public Board Board => offers.Whole(pick);
    /// <summary>Value of a criterion as boards are compared by it: more is better, as far as it counts (see
    /// <see cref="Merits"/>).</summary>
    public double Merit(Criterion criterion) => merits[(int)criterion];
    /// <summary>What a file that holds the request's board must say besides to hold this one: keys and values as they are written. Runs of
    /// wire are not among them.</summary>
    public IReadOnlyList<(string Key, string Text)> Entries => BoardWriter.Entries(offers, pick, Board);
    /// <summary>Runs of wire to be written where the request's board has none, each as an item of a list.</summary>
    public IReadOnlyList<string> Wires => offers.Brief.Wiring.Count > 0 ? [] : BoardWriter.Wires(Board);

    internal ReadOnlySpan<int> Pick => pick;

    /// <summary>What keeps it from being better in one thing.</summary>
    public string HeldBackBy(Criterion criterion) => LimitingCause.Describe(Examination.Examine(Board), criterion);

    /// <summary>Whether it is at least as good as another in everything and better in something.</summary>
    public bool Beats(FoundBoard other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var better = false;
        for (var c = 0; c < merits.Length; c++)
        {
            if (!(merits[c] >= other.merits[c]))
                return false;
            better |= merits[c] > other.merits[c];
        }

        return better;
    }

    internal static FoundBoard Create(CandidateParts offers, int[] pick) => new(offers, pick, Examination.Examine(offers.Whole(pick)));

    /// <summary>The boards of a list that none of it beats.</summary>
    public static IReadOnlyList<FoundBoard> Unbeaten(IReadOnlyList<FoundBoard> boards)
    {
        ArgumentNullException.ThrowIfNull(boards);
        return [.. boards.Where(board => !boards.Any(other => other.Beats(board)))];
    }

    static double? SpareOf(Examination e)
    {
        if (!e.Climb.IsKnown || e.Climb.Value.Asked is not { } asked || !e.PhaseLimits.IsKnown || !e.PackLimits.IsKnown)
            return null;
        var spare = Math.Min(1 - asked.PhaseCurrent / e.PhaseLimits.Value.Enforced.Current.Amperes,
            1 - asked.Bus.Amperes / e.PackLimits.Value.Enforced.Current.Amperes);
        return e.Window.IsKnown && e.Board.Parts.Controller.VoltageMax.IsKnown
            ? Math.Min(spare, 1 - e.Window.Value.Full / e.Board.Parts.Controller.VoltageMax.Value)
            : spare;
    }
}
