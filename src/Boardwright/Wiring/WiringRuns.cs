using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Wiring;

/// <summary>The wires between a board's pack and controllers, and on to its motors.</summary>
static class WiringRuns
{
    /// <summary>Contacts of a plug that the current of a pair passes through.</summary>
    const int ContactsOfPair = 2;

    // A pair of round contacts of 4 to 6 mm, new; common practice, no source.
    static readonly Resistance UsualContact = Resistance.FromOhms(0.4e-3);

    /// <summary>Resistance between pack and controllers: two conductors of each run and two contacts of each plug, at the brief's
    /// temperature. Runs to several controllers lie side by side.</summary>
    /// <returns>The resistance; zero when the file has no such run.</returns>
    /// <source cref="Sources.Iec60028"/>
    public static Answer<PackWiring> PackSide(Board board) => Answer<PackWiring>.Ask("", needs =>
    {
        var temperature = needs.Read(board.Brief.Temperature);
        var siemens = 0.0;
        foreach (var run in board.Wiring.Where(IsPackRun))
        {
            needs.Read(run.From);
            needs.Read(run.To);
            var section = needs.Read(run.Gauge);
            var length = needs.Read(run.Length);
            var contact = run.Plug.IsKnown ? needs.Read(board.PlugCalled(needs.Read(run.Plug)).ContactResistance, UsualContact) : default;
            if (needs.Unmet)
                continue;
            var ohms = (new Conductor(section).Resistance(length, temperature) * 2 + contact * ContactsOfPair).Ohms;
            siemens += ohms > 0 ? 1 / ohms : 0;
        }

        return needs.Unmet ? null : new PackWiring(Resistance.FromOhms(siemens > 0 ? 1 / siemens : 0));
    });

    /// <summary>Asks for what nobody can say which run it is without: its ends.</summary>
    public static void AskEnds(Needs needs, Board board)
    {
        foreach (var run in board.Wiring)
        {
            needs.Read(run.From);
            needs.Read(run.To);
        }
    }

    /// <summary>Whether a run lies between pack and controller.</summary>
    public static bool IsPackRun(Run run) => Joins(run, "pack", "controller");
    /// <summary>Whether a run lies between controller and motor.</summary>
    public static bool IsMotorRun(Run run) => Joins(run, "controller", "motor");

    static bool Joins(Run run, string one, string other) =>
        (Starts(run.From, one) && Starts(run.To, other)) || (Starts(run.From, other) && Starts(run.To, one));

    static bool Starts(Known<string> end, string name) => end.IsKnown && end.Value.StartsWith(name, StringComparison.OrdinalIgnoreCase);
}

/// <summary>Wires between pack and controllers.</summary>
/// <param name="Resistance">Resistance there and back, plugs included.</param>
public sealed record PackWiring(Resistance Resistance);
