using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Rides;

/// <summary>The greatest temperature of something on a ride.</summary>
/// <param name="Peak">The temperature.</param>
/// <param name="At">Distance ridden when it was met.</param>
/// <param name="Low">The same when the guessed capacities and conductances are at the cool ends of their spreads; equal to the peak where
/// nothing is guessed.</param>
/// <param name="High">The same at their hot ends.</param>
public sealed record Hottest(Temperature Peak, Length At, Temperature Low, Temperature High)
{
    /// <summary>Whether it rests on guesses, so that the band has to be shown and not the peak alone.</summary>
    public bool IsBand => Low < High;
}

/// <summary>A ride: how far, how long, on what energy, how hot, and what stood in the way.</summary>
/// <validity>As <see cref="Simulation"/> and <see cref="RideModel"/>.</validity>
/// <error>That of the inputs; the arithmetic's own is below 0.1 %.</error>
/// <source cref="Sources.Mechanics"/>
public sealed record Ride
{
    /// <summary>What the road is called.</summary>
    public required string Road { get; init; }
    /// <summary>How it ended.</summary>
    public required RideEnd End { get; init; }
    /// <summary>What held the board back when it could not go on.</summary>
    public required RideLimit HeldBack { get; init; }
    /// <summary>Distance ridden.</summary>
    public required Length Distance { get; init; }
    /// <summary>Length of the route; of one round where it is repeated.</summary>
    public required Length Route { get; init; }
    /// <summary>Whole rounds, where the route is repeated.</summary>
    public required int Laps { get; init; }
    /// <summary>Time from start to end, stops included.</summary>
    public required Duration Time { get; init; }
    /// <summary>Time on the move.</summary>
    public required Duration Moving { get; init; }
    /// <summary>Charge left, 0 to 1.</summary>
    public required Fraction ChargeLeft { get; init; }
    /// <summary>Least voltage of a cell, and where.</summary>
    public required (Voltage Volts, Length At) LowestCell { get; init; }
    /// <summary>Greatest phase amplitude of a motor, driving or braking.</summary>
    public required Current PeakPhase { get; init; }
    /// <summary>Root of the mean square of the phase amplitude, stops included.</summary>
    public required Current RmsPhase { get; init; }
    /// <summary>Greatest current out of the pack.</summary>
    public required Current PeakPack { get; init; }
    /// <summary>Root of the mean square of the pack's current, stops included.</summary>
    public required Current RmsPack { get; init; }
    /// <summary>Greatest current into the pack.</summary>
    public required Current PeakRegen { get; init; }
    /// <summary>The windings.</summary>
    public required Hottest Winding { get; init; }
    /// <summary>The motors' cases.</summary>
    public required Hottest Case { get; init; }
    /// <summary>The cells.</summary>
    public required Hottest Cells { get; init; }
    /// <summary>The controllers.</summary>
    public required Hottest Controller { get; init; }
    /// <summary>Time with a controller so hot that it fades.</summary>
    public required Duration InFade { get; init; }
    /// <summary>Time with the pack so low that power is tapered.</summary>
    public required Duration InTaper { get; init; }
    /// <summary>Time for which each limit kept the board from what the rider wanted; those that did not are left out.</summary>
    public required IReadOnlyDictionary<RideLimit, Duration> HeldBackFor { get; init; }
    /// <summary>Whether windings or cells pass the temperature that is allowed them.</summary>
    public required bool IsTooHot { get; init; }
    /// <summary>Where the energy went.</summary>
    public required RideEnergy Energy { get; init; }
    /// <summary>Steps taken.</summary>
    public required long Steps { get; init; }
    /// <summary>Moments, where they were asked for.</summary>
    public required IReadOnlyList<RideMoment> Trace { get; init; }
    /// <summary>The same moments when the guessed capacities and conductances are at the cool ends of their spreads; none where nothing is
    /// guessed.</summary>
    public IReadOnlyList<RideMoment> CoolTrace { get; init; } = [];
    /// <summary>The same at their hot ends.</summary>
    public IReadOnlyList<RideMoment> HotTrace { get; init; } = [];
    /// <summary>What a reader should know about this ride.</summary>
    public required IReadOnlyList<Phrase> Notes { get; init; }
    /// <summary>Energy out of the cells' terminals, less what the brakes returned.</summary>
    public Energy Used => Boardwright.Units.Energy.FromJoules(Energy.Delivered - Energy.Returned);
    /// <summary>That energy for each length ridden; <c>null</c> where nothing was ridden.</summary>
    public EnergyPerDistance? Consumption =>
        Distance.Metres > 0 ? EnergyPerDistance.FromJoulesPerMetre(Used.Joules / Distance.Metres) : null;

    /// <summary>Rides a board over a route.</summary>
    /// <param name="board">The board, its entries named.</param>
    /// <param name="route">The route.</param>
    /// <param name="options">How; as usual where not given.</param>
    public static Answer<Ride> Simulate(Board board, Route route, RideOptions? options = null) =>
        Simulate(board, pace => RideCourse.Create(route, pace), options ?? new());

    /// <summary>Rides a board on a level road at its cruise speed until the reserve is reached.</summary>
    /// <param name="board">The board, its entries named.</param>
    /// <param name="options">How; as usual where not given.</param>
    public static Answer<Ride> Cruising(Board board, RideOptions? options = null) => Simulate(board, RideCourse.Level, options ?? new());

    /// <summary>Rides a course.</summary>
    public static Ride On(RideModel model, RideCourse course, RideOptions options)
    {
        var ride = Once(model, course, options);
        if (model.Heat.Guessed == HeatGuess.None)
            return ride;
        // What is guessed is shown as a band: everything slow and well cooled, and everything quick and badly cooled.
        var cool = Once(model with { Heat = model.Heat.WithGuesses(RideHeat.GuessFactor, RideHeat.GuessFactor) }, course, options);
        var hot = Once(model with { Heat = model.Heat.WithGuesses(1 / RideHeat.GuessFactor, 1 / RideHeat.GuessFactor) }, course, options);
        var (motor, controller) =
            (HeatGuess.WindingCapacity | HeatGuess.CaseCapacity | HeatGuess.WindingToCase | HeatGuess.CaseToAir,
            HeatGuess.ControllerCapacity | HeatGuess.ControllerToAir);
        Hottest Band(HeatGuess which, Func<Ride, Hottest> of) => (model.Heat.Guessed & which) == HeatGuess.None ? of(ride)
            : of(ride) with { Low = Lesser(of(cool).Peak, of(ride).Peak), High = Greater(of(hot).Peak, of(ride).Peak) };
        var banded = ride with
        {
            Winding = Band(motor, r => r.Winding),
            Case = Band(motor, r => r.Case),
            Controller = Band(controller, r => r.Controller),
            Cells = Band(HeatGuess.CellCapacity | HeatGuess.PackToAir, r => r.Cells),
            CoolTrace = cool.Trace,
            HotTrace = hot.Trace,
        };
        return banded with { Notes = RideNotes.Compose(banded, model) };
    }

    /// <summary>A single ride, without the bands of what is guessed.</summary>
    internal static Ride Once(RideModel model, RideCourse course, RideOptions options)
    {
        var simulation = new Simulation(model, course, options);
        simulation.Run();
        var (state, most, energy) = (simulation.State, simulation.Most, simulation.Energy);
        var seconds = Max(state.Seconds, 1e-9);
        var held = Enum.GetValues<RideLimit>().Where(h => most.Held[(int)h] > 0)
            .ToDictionary(h => h, h => Duration.FromSeconds(most.Held[(int)h]));
        var series = model.Running.Pack.Series;
        var ride = new Ride
        {
            Road = course.Route.Name,
            End = simulation.End!.Value,
            HeldBack = simulation.HeldBack,
            Distance = Length.FromMetres(state.Metres),
            Route = course.Route.Distance,
            Laps = simulation.Laps,
            Time = Duration.FromSeconds(state.Seconds),
            Moving = Duration.FromSeconds(simulation.MovingSeconds),
            ChargeLeft = Fraction.FromValue(state.Charge),
            LowestCell = (Voltage.FromVolts(simulation.Steps > 0 ? most.CellVolts.Value / series : model.Cell.RestVoltsAt(state.Charge)),
                Length.FromMetres(most.CellVolts.Metres)),
            PeakPhase = Current.FromAmperes(most.Phase),
            RmsPhase = Current.FromAmperes(Sqrt(simulation.PhaseSquareSeconds / seconds)),
            PeakPack = Current.FromAmperes(most.Out),
            RmsPack = Current.FromAmperes(Sqrt(simulation.PackSquareSeconds / seconds)),
            PeakRegen = Current.FromAmperes(most.Into),
            Winding = HottestOf(most.Winding),
            Case = HottestOf(most.Case),
            Cells = HottestOf(most.Cells),
            Controller = HottestOf(most.Controller),
            InFade = Duration.FromSeconds(most.FadeSeconds),
            InTaper = Duration.FromSeconds(most.TaperSeconds),
            HeldBackFor = held,
            IsTooHot = most.Winding.Value > model.Heat.WindingLimit || most.Case.Value > model.Heat.MagnetLimit
                || most.Cells.Value > model.Heat.CellLimit,
            Energy = energy,
            Steps = simulation.Steps,
            Trace = simulation.Trace,
            Notes = [],
        };
        return ride with { Notes = RideNotes.Compose(ride, model) };
    }

    static Answer<Ride> Simulate(Board board, Func<RiderPace, RideCourse> course, RideOptions options) => Answer<Ride>.Ask("ride", needs =>
    {
        var model = needs.Read(RideModel.Compute(board));
        return needs.Unmet ? null : On(model, course(model.Pace), options);
    });

    static Hottest HottestOf(Peaks.Peak peak)
    {
        var kelvins = Temperature.FromKelvins(peak.Value);
        return new(kelvins, Length.FromMetres(peak.Metres), kelvins, kelvins);
    }

    static Temperature Lesser(Temperature a, Temperature b) => a < b ? a : b;

    static Temperature Greater(Temperature a, Temperature b) => a > b ? a : b;
}
