using Boardwright.Examinations;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Traction;

namespace Boardwright.Searches;

/// <summary>What keeps a board from being better in one thing.</summary>
static class LimitingCause
{
    /// <summary>In a sentence.</summary>
    public static string Describe(Examination e, Criterion criterion) => criterion switch
    {
        Criterion.Range when e.Energy.IsKnown => FormattableString.Invariant($"{e.Energy.Value.Energy.WattHours:0} Wh in the pack{Room(e)}"),
        Criterion.Climb when e.Moving.IsKnown => LimitAt(e, e.Board.Brief.ClimbSpeed.Or(default).MetresPerSecond, 0.5),
        Criterion.Speed when e.Moving.IsKnown && e.Speeds.IsKnown => Fastest(e),
        Criterion.Mass when e.Masses.IsKnown => Heaviest(e),
        Criterion.Price when e.Quote.IsKnown => Dearest(e),
        Criterion.Spare => Tightest(e),
        _ => "",
    };

    static string Room(Examination e)
    {
        var parts = e.Board.Parts;
        var (pack, box) = (parts.Pack, parts.Box);
        if (!box.IsChosen || !box.InnerLength.IsKnown || !pack.Parallel.IsKnown)
            return "";
        var more = PackLayout.All(parts.Cell, pack.Series.Value * (pack.Parallel.Value + 1));
        if (more.Count == 0 || !parts.Controller.Length.IsKnown || !parts.Controller.Width.IsKnown || !parts.Controller.Height.IsKnown
            || !box.InnerWidth.IsKnown || !box.InnerDepth.IsKnown)
            return "";
        return PackLayout.In(box, parts.Controller, PartSlot.ControllerCount(parts), more) is null ? "; one more cell in parallel does not go into the box" : "";
    }

    static string LimitAt(Examination e, double speed, double charge)
    {
        var run = e.Moving.Value;
        return Envelope.At(run, speed, run.SupplyAt(charge)) switch
        {
            ForceLimit.PhaseCurrent => $"the phase current, {e.PhaseLimits.Value.Enforced.Current:0 A} of {Parts(e.PhaseLimits.Value, CurrentRatings.Phase(new Needs(), e.Board))}",
            ForceLimit.PackCurrent => $"the pack current, {e.PackLimits.Value.Enforced.Current:0 A} of {Parts(e.PackLimits.Value, CurrentRatings.Pack(new Needs(), e.Board))}",
            ForceLimit.Taper => "the taper, as the loaded voltage falls",
            ForceLimit.PackPower => "the power that the pack gives through its resistance",
            ForceLimit.Voltage => "the pack's voltage against the motors' own",
            ForceLimit.ElectricalSpeed => "the electrical speed that the controller follows",
            _ => "the grip of the driven tyres",
        };
    }

    /// <summary>The part behind a limit that is set to what the weakest part carries.</summary>
    static string Parts(CurrentLimits limits, IEnumerable<CurrentRating> parts) =>
        !limits.Enforced.IsSet ? limits.Enforced.Says
        : parts.OrderBy(p => p.Rated.Current).FirstOrDefault() is { Rated.Says: { } says } part
        && part.Rated.Current.Amperes < limits.Enforced.Current.Amperes + 1
            ? says : "what is set";

    static string Fastest(Examination e)
    {
        var top = e.Speeds.Value.Full;
        var limit = e.Board.Brief.SpeedLimit;
        return limit.IsKnown && top >= limit.Value.MetresPerSecond ? "the speed limit of the brief" : LimitAt(e, top * (1 - 1e-6), 1);
    }

    static string Heaviest(Examination e) =>
        Part(e, static p => p.Carried, static p => p.Part is Pack ? 0 : p.Part.Mass.Or(default).Kilograms * p.Count,
        static (p, v) => FormattableString.Invariant($"{p.Title}, {v:0.00} kg"));

    static string Dearest(Examination e) =>
        Part(e, static _ => true, static p => (double)p.Part.Price.Or(default).Amount * p.Count,
        (p, v) => FormattableString.Invariant($"{p.Title}, {v:0.00} {e.Quote.Value.Parts.Currency}"));

    static string Part(Examination e, Func<PartSlot, bool> counts, Func<PartSlot, double> value, Func<Part, double, string> says)
    {
        var places = PartSlot.All(e.Board);
        if (!places.IsKnown)
            return "";
        var most = places.Value.Where(p => p.Part.IsChosen && counts(p)).MaxBy(value);
        return most is null ? "" : says(most.Part, value(most));
    }

    static string Tightest(Examination e)
    {
        if (!e.Climb.IsKnown || e.Climb.Value.Asked is not { } asked || !e.PhaseLimits.IsKnown || !e.PackLimits.IsKnown)
            return "";
        var (phase, pack) = (e.PhaseLimits.Value.Enforced.Current.Amperes, e.PackLimits.Value.Enforced.Current.Amperes);
        (double Spare, string Says)[] all =
        [
            (1 - asked.PhaseCurrent / phase, FormattableString.Invariant($"{asked.PhaseCurrent:0} A of {phase:0} A phase current on the climb")),
            (1 - asked.Bus.Amperes / pack, FormattableString.Invariant($"{asked.Bus.Amperes:0} A of {pack:0} A pack current on the climb")),
            (e.Window.IsKnown && e.Board.Parts.Controller.VoltageMax.IsKnown
                ? 1 - e.Window.Value.Full / e.Board.Parts.Controller.VoltageMax.Value : double.PositiveInfinity,
                e.Window.IsKnown ? FormattableString.Invariant($"{e.Window.Value.Full.Volts:0.0} V of {e.Board.Parts.Controller.VoltageMax.Or(default).Volts:0} V at the controller") : ""),
        ];
        return all.MinBy(a => a.Spare).Says;
    }
}
