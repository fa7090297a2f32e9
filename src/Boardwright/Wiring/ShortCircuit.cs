using Boardwright.Findings;
using Boardwright.Packs;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Wiring;

/// <summary>A short circuit behind the pack's fuse.</summary>
/// <param name="Highest">Current of a dead short at the pack's terminals, full, in the first milliseconds and warm: what the fuse has to
/// break. Links, wires and plugs do not help.</param>
/// <param name="Lowest">Current of a short at the far end of the pack's wire at half charge, once the cells have sagged: what has to be
/// enough to blow it.</param>
/// <param name="Inductance">Inductance of the pack's wires, there and back.</param>
/// <param name="SparkResistance">Resistance that a spark at the plug meets: pack, wires and contacts.</param>
/// <validity>All cells alike and at the brief's temperature; the protection's switches closed or failed closed; the fault itself without
/// resistance.</validity>
/// <error>As good as the cells' resistance, which at such currents is known to a factor of 1.5.</error>
/// <source cref="Sources.CircuitTheory"/>
/// <source cref="Sources.CellAtOnce"/>
public sealed record ShortCircuit(Current Highest, Current Lowest, Inductance Inductance, Resistance SparkResistance)
{
    // A cell's resistance after a second over that of the first milliseconds.
    const double SecondOverMillisecond = 2.6;

    // Warm cells have the least resistance.
    static readonly Temperature Warm = Temperature.FromCelsius(45);

    /// <summary>Of a board.</summary>
    public static Answer<ShortCircuit> Compute(
        Board board, Answer<PackModel> pack, Answer<PackWiring> wiring, Answer<VoltageWindow> window) =>
        Answer<ShortCircuit>.Ask("", needs =>
    {
        var (model, wires, volts) = (needs.Read(pack), needs.Read(wiring), needs.Read(window));
        if (needs.Unmet)
            return null;
        var table = board.Parts.Cell.Resistance.Value;
        var groups = (double)model.Series / model.Parallel;
        var atOnce = groups * table.At(1, model.Temperature.Kelvins) + model.Links.Ohms;
        var least = groups * Min(table.At(1, model.Temperature.Kelvins), table.At(1, Warm.Kelvins)) / SecondOverMillisecond;
        return new ShortCircuit(
            Current.FromAmperes(volts.Full.Volts / least),
            Current.FromAmperes(model.RestVoltsAt(0.5) / (model.OhmsAt(0.5) + wires.Resistance.Ohms)),
            InductanceOf(board),
            Resistance.FromOhms(atOnce) + wires.Resistance);
    });

    /// <summary>Inductance of two wires side by side: (µ₀/π) (ln(d/r) + ¼) for each metre, d from middle to middle and at least 2 r, r of
    /// the copper.</summary>
    /// <source cref="Sources.Grover"/>
    public static Inductance OfPair(Area section, Length outerDiameter, Length length) =>
        Inductance.FromHenries(4e-7 * (Log(Max(2, outerDiameter.Metres / Sqrt(section.SquareMetres / PI))) + 0.25) * length.Metres);

    // Several runs lie side by side, so the first stands for all.
    static Inductance InductanceOf(Board board) =>
        board.Wiring.FirstOrDefault(WiringRuns.IsPackRun) is { Gauge.IsKnown: true, Length.IsKnown: true } run
        ? OfPair(run.Gauge.Value, run.OuterDiameter.Or(new Conductor(run.Gauge.Value).GuessedOuterDiameter), run.Length.Value)
        : default;
}

/// <summary>A fuse before a wire in a short circuit.</summary>
/// <param name="Melts">Time until the fuse melts at the lowest fault current.</param>
/// <param name="LetThrough">I²t until the current is broken: three times what melts it.</param>
/// <param name="WireBears">I²t that heats the wire from its limit to what its insulation stands for a moment.</param>
/// <param name="Times">Lowest fault current over the fuse's rating.</param>
/// <validity>Faults that melt the fuse before it loses heat: some ten times its rating and more.</validity>
/// <error>A factor of 2, for fuses of one rating differ, and arcs more so.</error>
/// <source cref="Sources.Iec60949"/>
/// <source cref="Sources.CommonPractice"/>
sealed record FuseInFault(Duration Melts, FusingIntegral LetThrough, FusingIntegral WireBears, double Times)
{
    // The arc goes on after the strip has melted: common practice for small fuses on direct current.
    const double Clearing = 3;

    // What plasticised PVC stands for up to 5 s (IEC 60724, from memory); silicone stands more.
    static readonly Temperature Momentary = Temperature.FromCelsius(160);

    /// <summary>Whether the wire outlasts the fuse.</summary>
    public bool Protects => LetThrough <= WireBears;

    /// <summary>Of a fuse and a wire.</summary>
    /// <param name="rating">Its rating.</param>
    /// <param name="melting">Its melting I²t.</param>
    /// <param name="fault">Lowest fault current.</param>
    /// <param name="section">Copper of the wire.</param>
    /// <param name="limit">Temperature that the copper may have before the fault.</param>
    public static FuseInFault Compute(Current rating, FusingIntegral melting, Current fault, Area section, Temperature limit) => new(
        Duration.FromSeconds(melting.AmpereSquaredSeconds / (fault.Amperes * fault.Amperes)),
        FusingIntegral.FromAmpereSquaredSeconds(Clearing * melting.AmpereSquaredSeconds),
        limit < Momentary ? Fusing.Adiabatic(section, limit, Momentary) : FusingIntegral.FromAmpereSquaredSeconds(0),
        fault / rating);
}
