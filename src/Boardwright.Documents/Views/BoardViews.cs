using Boardwright.Documents.Drawings;
using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Documents.Views;

/// <summary>A view of a board.</summary>
/// <param name="Id">The word by which it is asked for.</param>
/// <param name="Shows">What it shows, in a few words.</param>
/// <param name="Of">Draws it from an examination.</param>
public sealed record BoardView(string Id, string Shows, Func<Examination, ViewWishes, Drawing> Of);

/// <summary>The board drawn to scale.</summary>
/// <remarks>
/// Every part is a <see cref="DrawingGroup"/> of the kind <c>part</c>, keyed by its place in the board file such as <c>parts.motor</c>; a
/// part whose outline passes over others has a second group of the same key.
/// A finding that does not hold and is about a part that is drawn has a pin: a group of the kind <c>finding</c>, keyed by its rule, marked
/// with its level, and numbered by its place in <see cref="Examination.Findings"/>. Findings that wait for values of the same part share
/// one pin, whose key holds their rules with blanks between.
/// Dimensions are groups of the kind <c>dimension</c>.
/// </remarks>
public static class BoardViews
{
    /// <summary>Every view; from behind at the lean stop.</summary>
    public static IReadOnlyList<BoardView> All { get; } =
    [
        new("above", "the board from above, to scale", (e, w) => Above(e, w)),
        new("side", "the board from its right side, to scale", (e, w) => SideOf(e, w)),
        new("behind", "the driven axle from behind, the deck leaned to its stop", (e, w) => Behind(e, e.Shape.DrivenAxle.LeanStop, w)),
        new("box", "the box from above with everything in it, to scale", (e, w) => Box(e, w)),
    ];

    /// <summary>The board from above, its nose to the right.</summary>
    public static Drawing Above(Examination examination, ViewWishes? wishes = null)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return AboveView.Draw(new(examination), wishes ?? ViewWishes.Usual);
    }

    /// <summary>The board from its right side, its nose to the right.</summary>
    public static Drawing Side(Examination examination, ViewWishes? wishes = null) => SideOf(examination, wishes ?? ViewWishes.Usual);

    /// <summary>The driven axle from behind, with the deck leaned.</summary>
    /// <param name="examination">The board.</param>
    /// <param name="lean">Lean of the deck, positive to the right; cut at the truck's stop.</param>
    /// <param name="wishes">How it is wanted.</param>
    public static Drawing Behind(Examination examination, Angle lean, ViewWishes? wishes = null)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return BehindView.Draw(new(examination), lean, wishes ?? ViewWishes.Usual);
    }

    /// <summary>The box from above, without the deck, its nose end to the right.</summary>
    /// <param name="examination">The board.</param>
    /// <param name="wishes">How it is wanted.</param>
    /// <param name="layout">What lies where, when that is not what the board file says.</param>
    public static Drawing Box(Examination examination, ViewWishes? wishes = null, Boxes.BoxLayout? layout = null)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return BoxView.Draw(new(examination), wishes ?? ViewWishes.Usual, layout);
    }

    static Drawing SideOf(Examination examination, ViewWishes wishes)
    {
        ArgumentNullException.ThrowIfNull(examination);
        return SideView.Draw(new(examination), wishes);
    }
}

/// <summary>What every view of a board asks for.</summary>
/// <param name="Examination">The board.</param>
sealed record ViewedBoard(Examination Examination)
{
    /// <summary>The board put together.</summary>
    public BoardShape Shape => Examination.Shape;
    /// <summary>The title of a view.</summary>
    public string Title(string says) => BoardPictures.Title(Examination, says);

    /// <summary>The name of a part for people.</summary>
    public string Name(string slot)
    {
        var words = slot.Replace('_', ' ');
        var part = Parts.Entry.ListEntries(typeof(Parts.Fitted)).First(e => e.Key == slot).Read(Examination.Board.Parts) as Parts.Part;
        return part is { IsChosen: true } ? $"{char.ToUpperInvariant(words[0])}{words[1..]}: {part.Title}" : $"{char.ToUpperInvariant(words[0])}{words[1..]}, not chosen";
    }

    /// <summary>The findings that do not hold, with the part that each is about; those that wait for values of the same part have one pin
    /// together.</summary>
    public IEnumerable<Pin> Pins()
    {
        var open = Examination.Findings.Where(f => f.Level != Level.Fine).Select((f, i) => (Finding: f, Number: i + 1, Slot: SlotOf(f)));
        foreach (var together in open.GroupBy(p => (p.Slot, p.Finding.Level, Number: p.Finding.Level == Level.Measure ? 0 : p.Number)))
        {
            var (first, rules) = (together.First(), together.Select(p => p.Finding.Rule).Distinct(StringComparer.Ordinal));
            yield return new(
                together.Skip(1).Any() ? $"{first.Number}+" : $"{first.Number}", string.Join(' ', rules), first.Finding.Level, first.Slot,
                string.Join('\n', together.Select(p => $"{p.Number}: {p.Finding.Says}")));
        }
    }

    /// <summary>A dimension, in brackets where it rests on what is not in the file.</summary>
    public static string Bracketed(bool isGuess, string text) => isGuess ? $"({text})" : text;
    /// <summary>Whether any of some entries had to be guessed.</summary>
    public bool IsGuessed(params string[] keys) => Shape.Guesses.Any(g => keys.Contains(g.Key, StringComparer.Ordinal));

    /// <summary>Writes below a drawing what was guessed and what is missing.</summary>
    public void Excuse(DrawingBoard board)
    {
        const int most = 10;
        if (Shape.Guesses.Count > 0)
        {
            var told = string.Join(", ", Shape.Guesses.Take(most).Select(g => $"{g.Key} {board.Say($"{g.Value}").Replace(' ', '\u00a0')}"));
            var more = Shape.Guesses.Count > most ? $" and {Shape.Guesses.Count - most} more" : "";
            board.Below($"Not in the file and drawn as is usual, in long dashes and with its dimensions in brackets: {told}{more}.");
        }

        if (Shape.LeftOut.Count > 0)
            board.Below($"Left out, since nothing was chosen or its size is not known: {string.Join(", ", Shape.LeftOut.Select(s => s.Replace('_', ' ')))}.");
    }

    static string SlotOf(Finding finding)
    {
        var where = finding.Where;
        var end = where.IndexOfAny(['.', '[']);
        var slot = end < 0 ? where : where[..end];
        return slot switch
        {
            "drive" => "motor",
            "cell" => "pack",
            "fittings" or "fuse" => "box",
            _ => slot,
        };
    }
}
