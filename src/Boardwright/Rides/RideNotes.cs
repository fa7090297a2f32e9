namespace Boardwright.Rides;

/// <summary>What a reader should know about a ride beside its figures.</summary>
static class RideNotes
{
    // Shorter than this, being held back is part of every start.
    const double WorthSaying = 5;

    public static IReadOnlyList<Phrase> Compose(Ride ride, RideModel model)
    {
        var heat = model.Heat;
        List<Phrase> notes = [];

        void Say(FormattableString text) => notes.Add(text);

        if (ride.End == RideEnd.CannotGoOn)
            Say($"The board cannot go on after {ride.Distance:0.00 km}: {Word(ride.HeldBack)} holds it back.");
        else if (ride.End == RideEnd.PowerCut)
            Say($"Power is cut after {ride.Distance:0.00 km}: the loaded cells are as low as the taper, or their maker, allows.");
        else if (ride.End == RideEnd.TimeIsUp)
            Say($"The ride was broken off after {ride.Time:0.# h}.");
        foreach (var (what, time) in ride.HeldBackFor.Where(p => p.Value.Seconds >= WorthSaying))
            Say($"For {time:0.0 min} the board was slower than its rider wanted: {Word(what)} held it back.");
        if (ride.Winding.High.Kelvins > heat.WindingLimit)
            Say($"The windings {Passes(ride.Winding, heat.WindingLimit)} their limit of {Temperature.FromKelvins(heat.WindingLimit):0 °C}.");
        if (ride.Case.High.Kelvins > heat.MagnetLimit)
            Say($"The cans, and with them the magnets, {Passes(ride.Case, heat.MagnetLimit)} {(heat.AreMagnetsUnmarked ? "what magnets without a mark bear" : "what the magnets bear")}, {Temperature.FromKelvins(heat.MagnetLimit):0 °C}.");
        if (ride.Cells.High.Kelvins > heat.CellLimit)
            Say($"The cells {Passes(ride.Cells, heat.CellLimit)} the {Temperature.FromKelvins(heat.CellLimit):0 °C} up to which they may be discharged.");
        if (ride.InFade.Seconds > 0)
            Say($"A controller was hot enough to fade for {ride.InFade:0.0 min}.");
        if (double.IsInfinity(heat.FadeStart))
            Say($"Nobody says at which temperature the controller fades, so here it never does.");
        if (ride.Energy.FootBrake > 3600)
            Say($"{Boardwright.Units.Energy.FromJoules(ride.Energy.FootBrake):0.0 Wh} were left to foot or slide: the electric brake could not do all of the braking.");
        if (ride.Winding.IsBand || ride.Controller.IsBand || ride.Cells.IsBand)
            Say($"Temperatures with two ends rest on guessed heat capacities or cooling, a factor of {RideHeat.GuessFactor} either way.");
        return notes;
    }

    /// <summary>What holds a board back, as the subject of a sentence.</summary>
    public static string Word(RideLimit what) => what switch
    {
        RideLimit.PhaseCurrent => "the phase current limit",
        RideLimit.HotController => "the hot controller's fade",
        RideLimit.PackCurrent => "the pack current limit",
        RideLimit.Taper => "the taper of the emptying pack",
        RideLimit.Voltage => "the voltage of the pack, or the controller's electrical speed,",
        RideLimit.Grip => "the grip of the tyres",
        _ => "nothing",
    };

    static string Passes(Hottest hottest, double limit) => hottest.Peak.Kelvins > limit ? "pass" : "may pass";
}
