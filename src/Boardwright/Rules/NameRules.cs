using Boardwright.Analyses;
using Boardwright.Boxes;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Rules;

/// <summary>Names that are looked up must be known: what nobody can look up, nobody has checked.</summary>
static class NameRules
{
    // What a builder may write for what the box's bolts go into.
    static readonly string[] Inserts = ["deck insert", "threaded insert", "T-nut", "wood screw"];

    /// <summary>Bearings that are known.</summary>
    public static IReadOnlyList<string> Bearings { get; } = [.. BallBearing.All.Select(b => b.Name).Distinct(StringComparer.Ordinal)];
    /// <summary>Screws that are known.</summary>
    public static IReadOnlyList<string> Screws { get; } = [.. BoltThread.All.Select(t => t.Name)];
    /// <summary>Strength classes of bolts that are known.</summary>
    public static IReadOnlyList<string> Classes { get; } = [.. PropertyClass.All.Select(c => c.Name)];
    /// <summary>Tooth profiles that are known.</summary>
    public static IReadOnlyList<string> Profiles { get; } = [.. ToothProfile.All.Select(p => p.Name)];

    /// <summary>Every name that is looked up is known.</summary>
    public static Rule<BoardAnalysis> NamesKnown { get; } = new(
        "name.known", "parts", "Every plug, bearing, screw, tooth profile and material that is looked up by its name is known by it.",
        "Names are compared without capitals, spaces, hyphens and underlines. The program knows the shelf's plugs and the usual ones, bearings after ISO 15, metric screws with their washers, tooth profiles and the stiffness of some materials; of another name nothing is known, so nothing that rests on it was checked.",
        Sources.CommonPractice,
        (e, _) =>
        {
            var names = LookedUp(e).ToList();
            if (names.Count == 0)
                return null;
            var unknown = names.Where(n => !n.IsKnown).ToList();
            return unknown.Count == 0
                ? [NamesKnown!.Found(Level.Fine, $"All {names.Count} names that are looked up are known.", value: Amount.Plain(names.Count))]
                : unknown.Select(n => Unknown(NamesKnown!, n.Key, n.Name, n.What, n.Known));
        });

    /// <summary>Every rule about names.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } = [NamesKnown];

    /// <summary>Names of the plugs that a board can look up.</summary>
    public static IReadOnlyList<string> PlugsOf(Board board) => [.. board.Plugs.Values.Select(plug => plug.Title), .. UsualPlugs.Names];

    /// <summary>A finding about a name that is not known.</summary>
    /// <param name="rule">The rule that would look it up.</param>
    /// <param name="key">Its entry.</param>
    /// <param name="name">The name.</param>
    /// <param name="what">What it should name.</param>
    /// <param name="known">The names that are known.</param>
    public static Finding Unknown(Rule<BoardAnalysis> rule, string key, string name, string what, IReadOnlyList<string> known)
    {
        const int Most = 6;
        var near = TradeName.Near(name, known);
        var described = what == "plug" ? ", or describe it on the shelf with its currents and its voltage" : "";
        return rule.Found(
            Level.Measure, $"No {what} is known as \u201c{name}\u201d, so what rests on it was not checked.",
            near.Count > 0
                ? (FormattableString)$"Write {Choice(near)} if that is meant{described}."
                : $"Known are {string.Join(", ", known.Take(Most))}{(known.Count > Most ? FormattableString.Invariant($" and {known.Count - Most} more") : "")}: write one of these{described}.",
            where: key);
    }

    static string Choice(IReadOnlyList<string> names) =>
        names.Count == 1 ? names[0] : $"{string.Join(", ", names.Take(names.Count - 1))} or {names[^1]}";

    static IEnumerable<(string Key, string Name, string What, bool IsKnown, IReadOnlyList<string> Known)> LookedUp(BoardAnalysis e)
    {
        var (board, parts) = (e.Board, e.Board.Parts);
        var plugs = PlugsOf(board);
        Known<string>[] screws = [parts.Motor.Bolt, parts.Mount.Bolt, parts.Mount.CoverBolt, board.Fixings.Box.Bolt];
        Known<string>[] profiles = e.IsBelt ? [parts.Belt.Profile, parts.MotorPulley.Profile, parts.WheelPulley.Profile] : [];
        return
        [
            .. ElectricalRules.PlugsInUse(board).Select(p => (p.Key, p.Name, "plug", board.KnowsPlug(p.Name), plugs)),
            .. Look("bearing", Bearings, name => BallBearing.Parse(name) is not null, parts.Wheels.Bearing),
            .. Look("screw", Screws, name => BoltThread.Parse(name) is not null, screws),
            .. Look("bolt class", Classes, name => PropertyClass.Parse(name) is not null, parts.Mount.BoltClass),
            .. Look("tooth profile", Profiles, name => ToothProfile.Parse(name) is not null, profiles),
            .. Look("material", GasketBeam.Materials, GasketBeam.Knows, parts.Box.Material),
            .. Look("insert", Inserts, IsInsert, board.Fixings.Box.Insert),
        ];
    }

    static IEnumerable<(string Key, string Name, string What, bool IsKnown, IReadOnlyList<string> Known)> Look(
        string what, IReadOnlyList<string> names, Func<string, bool> isKnown, params IEnumerable<Known<string>> entries) =>
        entries.Where(entry => entry.IsKnown).Select(entry => (entry.Key, entry.Value, what, isKnown(entry.Value), names));

    static bool IsInsert(string name) => Inserts.Append("screw")
        .Any(known => TradeName.Plain(name).Contains(TradeName.Plain(known), StringComparison.Ordinal));
}
