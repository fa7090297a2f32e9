using Boardwright.Parts;

namespace Boardwright.Searches;

/// <summary>What is looked for, and among what.</summary>
/// <param name="Board">A board of which only the brief need be filled in; what else it says stands. Its entries are named (see
/// <see cref="Parts.Board.WithNames()"/>).</param>
/// <param name="Shelf">The parts to choose from, in an order that does not change from one search to the next.</param>
public sealed record SearchRequest(Board Board, IReadOnlyList<Part> Shelf)
{
    /// <summary>Places that hold one part of the shelf, by the part's id; beside those that the board itself fills.</summary>
    public IReadOnlyDictionary<Slot, string> Fixed { get; init; } = new Dictionary<Slot, string>();
    /// <summary>Whether parts are taken as if there were enough of each.</summary>
    public bool IgnoresStock { get; init; }
}

/// <summary>An entry of the brief that the customer left open, and what the search takes for it.</summary>
/// <param name="Key">Dotted key of the entry.</param>
/// <param name="Text">The value as it would be written in the file.</param>
/// <param name="Board">The board with it.</param>
public sealed record Assumption(string Key, string Text, Board Board)
{
    /// <summary>Usual values for what a brief must say before a board can be judged and does not.</summary>
    /// <source cref="Findings.Sources.CommonPractice"/>
    public static IReadOnlyList<Assumption> For(Board board)
    {
        ArgumentNullException.ThrowIfNull(board);
        var made = new List<Assumption>();

        void Take<T>(Known<T> known, string text, T value, Func<Brief, Known<T>, Brief> put)
            where T : notnull
        {
            if (known.IsKnown)
                return;
            board = board with { Brief = put(board.Brief, new Known<T>(value, from: Origin.Guess, key: known.Key)) };
            made.Add(new(known.Key, text, board));
        }

        var brief = board.Brief;
        if (!brief.DragArea.IsKnown)
            Take(brief.Stance, "upright", Stance.Upright, static (b, k) => b with { Stance = k });
        var cruise = Math.Min(20, brief.SpeedLimit.IsKnown ? Math.Floor(brief.SpeedLimit.Value.KilometresPerHour) : 20);
        if (cruise > 0)
            Take(brief.CruiseSpeed, FormattableString.Invariant($"{cruise} km/h"), Speed.FromSi(Speed.Dimension.Find("km/h")!.ToSi(cruise)),
                static (b, k) => b with { CruiseSpeed = k });
        Take(brief.ClimbWanted, "8 %", Fraction.FromSi(Fraction.Dimension.Find("%")!.ToSi(8)), static (b, k) => b with { ClimbWanted = k });
        Take(brief.ClimbSpeed, "10 km/h", Speed.FromSi(Speed.Dimension.Find("km/h")!.ToSi(10)), static (b, k) => b with { ClimbSpeed = k });
        Take(brief.Temperature, "18 °C", Temperature.FromSi(Temperature.Dimension.Find("°C")!.ToSi(18)),
            static (b, k) => b with { Temperature = k });
        Take(brief.Surface, "smooth asphalt", Surface.SmoothAsphalt, static (b, k) => b with { Surface = k });
        Take(brief.Reserve, "10 %", Fraction.FromSi(Fraction.Dimension.Find("%")!.ToSi(10)), static (b, k) => b with { Reserve = k });
        return made;
    }
}
