using Boardwright.Boxes;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Units;

namespace Boardwright.App.Workbench.BoardPages;

/// <summary>Things in the box of the open board, moved and turned by hand: seen at once, written down when they are let go.</summary>
sealed class BoxEditor(EditSession session)
{
    readonly string opened = session.Text;
    string followed = session.Text;
    PlacedThing? held;
    BoxLayout? moved;

    /// <summary>Name of the thing that is moved and turned.</summary>
    public string Chosen { get; private set; } = "pack";
    /// <summary>The layout as it is drawn; <c>null</c> where there is none.</summary>
    public BoxLayout? Shown => moved ?? Settled;
    /// <summary>Whether anything was written down since the page was opened.</summary>
    public bool IsChanged => session.Text != opened;
    /// <summary>Whether the board file says where any thing lies.</summary>
    public bool IsStated => session.Examination?.Board.Layout.Count > 0;

    /// <summary>Why there is no layout.</summary>
    public string WhyNone => session.Examination is not { } examination ? "The board is not in order yet."
        : examination.Layout.IsBeside ? "This board has no box. Choose one on the Board page."
        : $"Nothing can be laid out until {string.Join(", ", examination.Layout.Missing)} is known.";

    /// <summary>What does not fit, with what would mend it.</summary>
    public IReadOnlyList<(Level Level, Phrase Says, Phrase Remedy)> Wrong => moved is { } preview
        ? [.. preview.Faults.Select(f => (f.IsImpossible ? Level.Stop : Level.Fix, (Phrase)f.Says, (Phrase)f.Remedy))]
        : [.. (session.Examination?.Findings ?? []).Where(f => f.Rule.StartsWith("box.layout.", StringComparison.Ordinal) && f.Level != Level.Fine)
        .Select(f => (f.Level, f.Says, f.Remedy))];

    BoxLayout? Settled => session.Examination?.Layout is { IsKnown: true } answer ? answer.Value : null;

    /// <summary>Whether the board file itself says where a thing lies.</summary>
    public bool States(PlacedThing thing) => thing.IsStated && session.Examination?.Board.Layout.ContainsKey(thing.Name) == true;

    /// <summary>Where the chosen thing lies, and what it clashes with.</summary>
    public string Describe()
    {
        if (Shown is not { } layout || layout[Chosen] is not { } thing)
            return "Nothing is chosen.";
        Phrase place = thing.Wall is { } wall
            ? new($"{thing.Name}: {thing.Along:0.0 mm} along the {wall.ToString().ToLowerInvariant()} wall")
            : new($"{thing.Name}: {thing.X:0.0 mm} to the nose, {thing.Y:0.0 mm} to the right, turned {thing.Turn}°");
        var clashes = layout.Faults.Where(f => f.Name == Chosen || f.Other == Chosen)
            .Select(f => f.Name == Chosen ? f.Other.Length > 0 ? f.Other : "the wall" : f.Name).Distinct(StringComparer.Ordinal).ToList();
        return place.In(session.Units) + (clashes.Count == 0 ? "" : $"; clashes with {string.Join(", ", clashes)}");
    }

    /// <summary>Takes over another text of the board. Intervals that arrive while a thing is held leave it where it is.</summary>
    public void Follow()
    {
        if (session.Text != followed)
            (moved, held, followed) = (null, null, session.Text);
    }

    /// <summary>Chooses a thing.</summary>
    public void Choose(string name) => Chosen = name;

    /// <summary>Drags a thing from where it was taken, and writes it down when that is done.</summary>
    public void Drag(string name, Length toNose, Length toRight, bool isDone)
    {
        if (Settled is not { } layout || layout[name] is not { } thing)
            return;
        if (Chosen != name || held is null)
            (Chosen, held) = (name, thing);
        moved = toNose == default && toRight == default ? null : layout.With(Shift(layout, held, toNose, toRight, anyWall: true));
        if (!isDone)
            return;
        held = null;
        Settle();
    }

    /// <summary>Does what a key says in the drawing; any other key settles what was moved.</summary>
    public void Press(string key, bool isLarge)
    {
        var step = isLarge ? 10 : 1;
        Action act = key switch
        {
            "ArrowLeft" => () => Move(-step, 0),
            "ArrowRight" => () => Move(step, 0),
            "ArrowUp" => () => Move(0, -step),
            "ArrowDown" => () => Move(0, step),
            "q" => Turn,
            "," => () => ChooseNext(-1),
            "." => () => ChooseNext(1),
            _ => Settle,
        };
        act();
    }

    /// <summary>Moves the chosen thing by whole millimetres.</summary>
    public void Move(int toNose, int toRight)
    {
        if (Shown is { } layout && layout[Chosen] is { } thing)
            moved = layout.With(Shift(layout, thing, Length.FromMillimetres(toNose), Length.FromMillimetres(toRight), anyWall: false));
    }

    /// <summary>Turns the chosen thing by a quarter; a fitting goes to the next wall, as far along as it was.</summary>
    public void Turn()
    {
        if (Shown is not { } layout || layout[Chosen] is not { } thing)
            return;
        moved = layout.With(thing.Wall is { } wall
            ? layout.InWall(thing.Thing, PlacedThing.After(wall, 90), Limit(layout, PlacedThing.After(wall, 90), thing.Along))
            : thing with { Turn = (thing.Turn + 90) % 360, IsStated = true });
    }

    /// <summary>Writes down what was moved, and with it what was only proposed, so that the rest stays where it is.</summary>
    public void Settle()
    {
        if (moved is { } layout && layout[Chosen] is { } thing)
            Write(layout.Things.Where(t => !t.IsStated || t.Name == thing.Name), $"layout: {thing.Name} moved");
    }

    /// <summary>Puts a thing where it certainly clashes, to be moved from there by hand.</summary>
    public void PutIn(BoxThing thing)
    {
        if (Shown is not { } layout)
            return;
        Chosen = thing.Name;
        moved = layout.With(thing.IsFitting ? layout.InWall(thing, BoxWall.Right, default) : new(thing, default, default, 0, null, true));
        Settle();
    }

    /// <summary>Writes the proposal down.</summary>
    public void WriteProposal()
    {
        if (Settled is { } layout)
            Write(layout.Things.Where(t => !t.IsStated), "layout: the proposal written down");
    }

    /// <summary>Lets everything be proposed.</summary>
    public void ProposeAnew() => session.Write(BoardText.Unplace(session.Text).Text, "layout: proposed anew");
    /// <summary>Lets a place for one thing be proposed.</summary>
    public void ProposeAnew(string name) => session.Write(BoardText.Unplace(session.Text, name).Text, $"layout: {name} proposed anew");
    /// <summary>Goes back to what the board said when the page was opened.</summary>
    public void TakeBack() => session.Write(opened, "layout: all taken back");

    void ChooseNext(int by)
    {
        string[] names = [.. (Shown?.Things ?? []).Select(t => t.Name)];
        if (names.Length > 0)
            Chosen = names[(Math.Max(0, Array.IndexOf(names, Chosen)) + by + names.Length) % names.Length];
    }

    void Write(IEnumerable<PlacedThing> things, string what)
    {
        var changed = LayoutText.Write(session.Text, things);
        if (changed.Refusal is { } refusal)
        {
            (moved, held) = (null, null);
            session.Say($"{refusal.Says} {refusal.Remedy}");
        }
        else
        {
            session.Write(changed.Text, what);
        }
    }

    static PlacedThing Shift(BoxLayout layout, PlacedThing thing, Length toNose, Length toRight, bool anyWall)
    {
        var (x, y) = (thing.X + toNose, thing.Y + toRight);
        if (thing.Wall is not { } wall)
            return thing with { X = Whole(x), Y = Whole(y), IsStated = true };
        if (anyWall)
        {
            var room = layout.Room;
            wall = new[] { (BoxWall.Front, Off: room.Front - x), (BoxWall.Rear, Off: x - room.Back), (BoxWall.Left, Off: y - room.Left),
                (BoxWall.Right, Off: room.Right - y) }.MinBy(w => w.Off.Si).Item1;
        }

        return layout.InWall(thing.Thing, wall, Whole(Limit(layout, wall, wall is BoxWall.Left or BoxWall.Right ? x : y)));
    }

    static Length Limit(BoxLayout layout, BoxWall wall, Length along)
    {
        var half = (wall is BoxWall.Left or BoxWall.Right ? layout.RoomLength : layout.RoomWidth) / 2;
        return along > half ? half : along < -half ? -half : along;
    }

    static Length Whole(Length value) => Length.FromMillimetres(Math.Round(value.Millimetres, MidpointRounding.AwayFromZero));
}
