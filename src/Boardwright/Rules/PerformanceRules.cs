using Boardwright.Analyses;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Traction;

namespace Boardwright.Rules;

/// <summary>What the brief asks of the board on the road.</summary>
static class PerformanceRules
{
    /// <summary>The top speed wanted is reached.</summary>
    public static Rule<BoardAnalysis> TopSpeedReached { get; } = new(
        "speed.wanted", "brief.top_speed_wanted", "The top speed wanted is reached with a full pack.",
        "speed.top_full against the brief. At half charge and at the reserve the board is slower.",
        Sources.Brief,
        (e, needs) =>
        {
            if (!e.Board.Brief.TopSpeedWanted.IsKnown)
                return null;
            var wanted = needs.Read(e.Board.Brief.TopSpeedWanted);
            var tops = needs.Read(e.Speeds);
            var drive = needs.Read(e.Gearing);
            if (needs.Unmet)
                return null;
            var (full, half) = (Speed.FromMetresPerSecond(tops.Full), Speed.FromMetresPerSecond(tops.Half));
            var reserve = e.SpeedAtReserve.IsKnown ? (FormattableString)$", {e.SpeedAtReserve.Value:0.0 km/h} at the reserve" : $"";
            var (value, limit) = (Amount.Create(full, "km/h"), Amount.Create(wanted, "km/h"));
            return full >= wanted
                ? [TopSpeedReached!.Found(Level.Fine, $"{full:0.0 km/h} full, {half:0.0 km/h} at half charge{(Phrase)reserve}; {wanted:0 km/h} are wanted.", value: value, limit: limit)]
                : [TopSpeedReached!.Found(Level.Fix, $"{full:0.0 km/h} full, {half:0.0 km/h} at half charge; {wanted:0 km/h} are wanted: {wanted - full:0.0 km/h} too little.", $"{(Phrase)Faster(e.Board.Parts, drive.Ratio, wanted / full)}, larger wheels by {wanted / full - 1:0 %}, or more cells in series; climb and pull fall by as much.", value, limit)];
        });

    /// <summary>The speed limit that the builder entered.</summary>
    public static Rule<BoardAnalysis> SpeedLimitHeld { get; } = new(
        "speed.limit", "brief.speed_limit", "The board does not go faster than the speed limit that was entered.",
        "speed.top_full against the limit the builder found in the local rules. This program knows no law: ask the authority of the place.",
        Sources.Brief,
        (e, needs) =>
        {
            if (!e.Board.Brief.SpeedLimit.IsKnown)
                return null;
            var limit = needs.Read(e.Board.Brief.SpeedLimit);
            var tops = needs.Read(e.Speeds);
            var drive = needs.Read(e.Wheels);
            if (needs.Unmet)
                return null;
            var full = Speed.FromMetresPerSecond(tops.Full);
            var (value, most) = (Amount.Create(full, "km/h"), Amount.Create(limit, "km/h"));
            var motor = AngularSpeed.FromRadiansPerSecond(drive.MotorSpeed(limit.MetresPerSecond));
            var electrical = AngularSpeed.FromRadiansPerSecond(drive.PolePairs * motor.RadiansPerSecond);
            return full <= limit
                ? [SpeedLimitHeld!.Found(Level.Fine, $"{full:0.0 km/h} at most; {limit:0 km/h} were entered.", value: value, limit: most)]
                : [SpeedLimitHeld!.Found(Level.Fix, $"The board reaches {full:0.0 km/h}; {limit:0 km/h} were entered as the limit.", $"Limit the motors to {motor:0 rpm} ({electrical:0 rpm} electrical) in the controller, and ask the authority of the place what holds there.", value, most)];
        });

    /// <summary>Double-kingpin trucks at speed.</summary>
    public static Rule<BoardAnalysis> SteadyAtSpeed { get; } = new(
        "speed.stability", "rear_truck.kingpin", "Trucks that turn easily are set up for the speed they will see.",
        "Double-kingpin trucks steer more for each degree of lean; at speed small movements of the ankles grow into a weave. No speed is promised here.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var (front, rear) = (needs.Read(e.Board.Parts.FrontTruck.Kingpin), needs.Read(e.Board.Parts.RearTruck.Kingpin));
            if (needs.Unmet)
                return null;
            // The words hold at any speed; the speed is said where it is known.
            var full = e.Speeds.IsKnown ? Speed.FromMetresPerSecond(e.Speeds.Value.Full) : (Speed?)null;
            var value = full is { } known ? Amount.Create(known, "km/h") : (Amount?)null;
            FormattableString reaches = full is { } top ? (FormattableString)$" on a board that reaches {top:0 km/h}" : $"";
            return front != Kingpin.Double && rear != Kingpin.Double
                ? [SteadyAtSpeed!.Found(Level.Fine, $"Single-kingpin trucks{(Phrase)reaches}. How steady it is there nobody can compute: try it in steps.", value: value)]
                : [SteadyAtSpeed!.Found(Level.Measure, $"Double-kingpin trucks{(Phrase)reaches}: riders report a weave that grows with speed, and nobody can compute where it begins.", $"Try it in steps of 5 km/h on an empty road, in full protection. The trade fits harder bushings, first at the rear, lowers the rear truck's pivot angle, has the rider stand forward, and limits the speed where the weave begins.", value)];
        });

    /// <summary>The climb wanted is held.</summary>
    public static Rule<BoardAnalysis> ClimbHeld { get; } = new(
        "climb.wanted", "brief.climb_wanted", "The climb wanted is held at its speed with half a charge.",
        "climb.grade_at_climb_speed against the brief, motors and controller cold; how long they stay so is another rule.",
        Sources.Brief,
        (e, needs) =>
        {
            var wanted = needs.Read(e.Board.Brief.ClimbWanted);
            var speed = needs.Read(e.Board.Brief.ClimbSpeed);
            var (climb, steepest) = (needs.Read(e.Climb), needs.Read(e.SteepestClimb));
            if (needs.Unmet)
                return null;
            var (value, limit) = (Amount.Create(steepest, "%"), Amount.Create(wanted, "%"));
            FormattableString takes = climb.Asked is { } a
                ? (FormattableString)$" and take {Current.FromAmperes(a.PhaseCurrent):0 A} in each motor and {Current.FromAmperes(a.Bus.Amperes):0 A} from the pack"
                : $"";
            return steepest >= wanted
                ? [ClimbHeld!.Found(Level.Fine, $"{steepest:0.0 %} at {speed:0 km/h}; {wanted:0 %} are wanted{takes}.", value: value, limit: limit)]
                : [ClimbHeld!.Found(Level.Fix, $"At {speed:0 km/h} at most {steepest:0.0 %} are held; {wanted:0 %} are wanted.",
                    climb.Asked is { } asked ? (FormattableString)$"It takes {Current.FromAmperes(asked.PhaseCurrent):0 A} of phase current in each motor and {Current.FromAmperes(asked.Bus.Amperes):0 A} from the pack: raise the limits if every part carries that, gear lower, or ask for less." : $"The pack cannot give the power at all: more cells in parallel, or a slower climb.", value, limit)];
        });

    /// <summary>The range wanted is reached at cruise speed.</summary>
    public static Rule<BoardAnalysis> RangeReached { get; } = new(
        "cruise.range_wanted", "brief.range_wanted", "The range wanted is reached at cruise speed, down to the reserve.",
        "cruise.range on the level in the brief's air, against the brief. Where it is not reached, the pace at which it would be is named: a range is only worth something with its pace.",
        Sources.Brief,
        (e, needs) =>
        {
            if (!e.Board.Brief.RangeWanted.IsKnown)
                return null;
            var wanted = needs.Read(e.Board.Brief.RangeWanted);
            var speed = needs.Read(e.Board.Brief.CruiseSpeed);
            var cruise = needs.Read(e.Cruise);
            var cells = needs.Read(e.Energy);
            if (needs.Unmet)
                return null;
            var reached = Length.FromMetres(cruise.Steady?.Metres ?? 0);
            var (value, limit) = (Amount.Create(reached, "km"), Amount.Create(wanted, "km"));
            if (reached >= wanted)
                return [RangeReached!.Found(Level.Fine, $"{reached:0.0 km} at a steady {speed:0 km/h}; {wanted:0 km} are wanted. Stops, hills, wind and cold take from it.", value: value, limit: limit)];
            var found = needs.Read(e.RangePace);
            if (needs.Unmet)
                return null;
            var pace = found.Fastest is { } p ? Speed.FromMetresPerSecond(p) : (Speed?)null;
            if (reached.Si <= 0)
                return [RangeReached!.Found(Level.Fix, $"The pack cannot hold a steady {speed:0 km/h}; {wanted:0 km} are wanted.", $"More cells in parallel, cells of lower resistance, or a slower cruise{(pace is { } held ? (FormattableString)$": {wanted:0 km} are reached at a steady {held:0.0 km/h}" : $"")}.", value, limit)];
            var parallel = Math.Ceiling(e.Board.Parts.Pack.Parallel.Or(1) * (wanted / reached));
            return
            [
                RangeReached!.Found(Level.Fix, $"{reached:0.0 km} at a steady {speed:0 km/h}; {wanted:0 km} are wanted.",
                    pace is { } slow
                        ? (FormattableString)$"{wanted:0 km} are only reached at a steady {slow:0.0 km/h}; at {speed:0 km/h} they take about {parallel} cells in parallel."
                        : $"{wanted:0 km} are reached at no pace; at {speed:0 km/h} they take about {parallel} cells in parallel.",
                    value, limit),
            ];
        });

    /// <summary>Cruise speed is held down to the reserve.</summary>
    public static Rule<BoardAnalysis> CruiseHeld { get; } = new(
        "cruise.held", "brief.cruise_speed", "Cruise speed is held on the level down to the reserve.",
        "Top speed at the reserve against cruise speed, and the range must not end at the taper.",
        Sources.Brief,
        (e, needs) =>
        {
            var speed = needs.Read(e.Board.Brief.CruiseSpeed);
            var (reserve, cruise) = (needs.Read(e.SpeedAtReserve), needs.Read(e.Cruise));
            if (needs.Unmet)
                return null;
            var (value, limit) = (Amount.Create(reserve, "km/h"), Amount.Create(speed, "km/h"));
            return cruise.Steady is { EndsAtTaper: false } && reserve >= speed
                ? [CruiseHeld!.Found(Level.Fine, $"At the reserve the board still does {reserve:0.0 km/h}.", value: value, limit: limit)]
                : [CruiseHeld!.Found(Level.Fix,
                $"At the reserve the board does {reserve:0.0 km/h}; {speed:0 km/h} are wanted to the end{(cruise.Steady is { EndsAtTaper: true } early ? (FormattableString)$", and the taper cuts with {Fraction.FromValue(early.EndCharge):0 %} of the charge left" : $"")}.",
                    $"Lower the taper's start and end where the cells allow, keep a larger reserve, or cruise slower.", value, limit)];
        });

    /// <summary>The electric brake holds the climb downhill.</summary>
    public static Rule<BoardAnalysis> BrakeHoldsDescent { get; } = new(
        "brake.downhill_full", "limits.brake_phase_current", "The electric brake alone holds the brief's climb downhill at full charge.",
        "Largest braking force at the climbing speed and at a walk at 100 % charge, by braking currents, charge limits, the cells' full voltage and grip, against the slope's pull. Stopping is judged by brake.stops, on the level from the faster cruise speed, and at half charge. A full pack takes almost nothing back: what is left is what copper turns into heat.",
        Sources.Mechanics,
        (e, needs) =>
        {
            var wanted = needs.Read(e.Board.Brief.ClimbWanted);
            var speed = needs.Read(e.Board.Brief.ClimbSpeed);
            var (held, descent) = (needs.Read(e.DescentHeld), needs.Read(e.Descent));
            if (needs.Unmet)
                return null;
            FormattableString only = held.Value < 0.0005 ? (FormattableString)$"no descent is held" : $"only {held:0.0 %} downhill are held";
            var (value, limit) = (Amount.Create(held, "%"), Amount.Create(wanted, "%"));
            return held >= wanted
                ? [BrakeHoldsDescent!.Found(Level.Fine, $"With a full pack {held:0.0 %} downhill are held at {speed:0 km/h} and slower; {wanted:0 %} are asked. It is one brake, and it is gone when the link or the pack is.", value: value, limit: limit)]
                : [BrakeHoldsDescent!.Found(Level.Stop, $"With a full pack {new Phrase(only)} at {speed:0 km/h} and slower; the brief's hill has {wanted:0 %}.",
                    descent.HoldsFrom is { } charge and >= 0.01
                        ? (FormattableString)$"Start down that hill with no more than {Fraction.FromValue(Math.Floor(100 * charge) / 100):0 %} of the charge, from where it is held, and fit or be able to use another brake."
                        : $"It is held at no charge: raise the braking currents if every part carries them, gear lower, and fit or be able to use another brake.", value, limit)];
        });

    /// <summary>The electric brake stops the board.</summary>
    public static Rule<BoardAnalysis> BrakeStops { get; } = new(
        "brake.stops", "limits.brake_phase_current", "The electric brake stops the board from cruise speed, and downhill from climbing speed.",
        "v · 1 s + ∫ v/a dv at full and half charge on the level, and at half charge downhill. The rear axle loses grip as it brakes.",
        Sources.Mechanics,
        (e, needs) =>
        {
            var (brakes, descent) = (needs.Read(e.Brakes), needs.Read(e.Descent));
            var speed = needs.Read(e.Board.Brief.CruiseSpeed);
            var (hill, slow) = (needs.Read(e.Board.Brief.ClimbWanted), needs.Read(e.Board.Brief.ClimbSpeed));
            if (needs.Unmet)
                return null;
            static FormattableString Way(double? metres) => metres is { } m ? (FormattableString)$"{Length.FromMetres(m):0.0 m}" : $"never";
            static FormattableString Within(double? metres) => metres is null ? (FormattableString)$"never" : $"within {new Phrase(Way(metres))}";
            return brakes is { Half: not null, Full: not null } && descent.Stop is not null
                ? [BrakeStops!.Found(Level.Fine, $"From {speed:0 km/h} on the level {Way(brakes.Half)} at half charge and {Way(brakes.Full)} full; down the brief's {hill:0 %} from {slow:0 km/h} {Way(descent.Stop)} at half charge.", value: new Amount(brakes.Half.Value, "m"))]
                : [BrakeStops!.Found(Level.Stop, $"The board stops from {speed:0 km/h} on the level {Within(brakes.Half)} at half charge and {Within(brakes.Full)} full, down the brief's {hill:0 %} from {slow:0 km/h} {Within(descent.Stop)} at half charge.", $"Raise the braking currents if every part carries them, or fit another brake; until then ride only where a foot or a slide stops the board.")];
        });

    /// <summary>The advertised power against what the pack feeds.</summary>
    public static Rule<BoardAnalysis> AdvertisedPower { get; } = new(
        "pack.advertised_power", "motor.power_rating", "The power that is advertised for the motors can be fed by the pack.",
        "Motors · power rating against the power at the controllers at the pack current that the board holds, at half charge. What a pack cannot feed no motor can take; a customer should be told the smaller number.",
        Sources.CircuitTheory,
        (e, needs) =>
        {
            var part = e.Board.Parts.Motor.PowerRating;
            if (!part.IsKnown)
                return null;
            var rated = needs.Read(part) * needs.Read(e.Board.Parts.Drive.Motors);
            var feed = needs.Read(CurrentLimits.FeedPowerOf(e.PackLimits, e.Pack, e.PackWiring));
            return needs.Unmet ? null :
                [AdvertisedPower!.Found(Level.Fine, feed < rated
                    ? (FormattableString)$"The motors are advertised with {rated:0 W} together; the pack can feed {feed:0 W}, {feed / rated:0 %} of that. Promise {feed:0 W}, not {rated:0 W}."
                    : $"The motors are advertised with {rated:0 W} together; the pack can feed {feed:0 W}.", value: Amount.Create(feed, "W"), limit: Amount.Create(rated, "W"))];
        });

    /// <summary>The remote has a failsafe.</summary>
    public static Rule<BoardAnalysis> FailsafePresent { get; } = new(
        "remote.failsafe", "remote.failsafe", "When the remote's link is lost the board neither drives on nor brakes hard.",
        "A receiver that goes on with its last command drives on without the rider.",
        Sources.CommonPractice,
        (e, needs) =>
        {
            var failsafe = needs.Read(e.Board.Parts.Remote.Failsafe);
            if (needs.Unmet)
                return null;
            return failsafe == Failsafe.None
                ? [FailsafePresent!.Found(Level.Stop, $"The receiver goes on with its last command when the link is lost.", $"Take a remote that lets the board coast or brakes it softly, and try it with the wheels in the air before each day's first ride.")]
                : [FailsafePresent!.Found(Level.Fine, $"When the link is lost the board {(failsafe == Failsafe.Coast ? "coasts" : "brakes")}. Try it with the wheels in the air before each day's first ride.")];
        });

    /// <summary>Motors stay below their limit on the climb.</summary>
    public static Rule<BoardAnalysis> MotorsStayCool { get; } = new(
        "heat.climb", "motor.winding_limit", "The windings stay below their limit on the brief's climb.",
        "Steady temperature of the windings at the climb's current, with the copper's own rise; where it is passed, the minutes until then. Heat capacities and resistances that nobody measured are guesses: read the minutes as half to twice.",
        Sources.TwoNodeMotor,
        (e, needs) =>
        {
            var heat = needs.Read(e.ClimbHeat);
            var limit = needs.Read(e.Board.Parts.Motor.WindingLimit);
            var wanted = needs.Read(e.Board.Brief.ClimbWanted);
            var speed = needs.Read(e.Board.Brief.ClimbSpeed);
            if (needs.Unmet)
                return null;
            var most = Amount.Create(limit, "°C");
            if (heat.Settled is { } end && end.Winding <= limit)
                return [MotorsStayCool!.Found(Level.Fine, $"On an endless {wanted:0 %} at {speed:0 km/h} the windings settle at {end.Winding:0 °C}; {limit:0 °C} are allowed.", value: Amount.Create(end.Winding, "°C"), limit: most)];
            if (!heat.IsTold)
            {
                return
                [
                    MotorsStayCool!.Found(Level.Fix, $"On {wanted:0 %} at {speed:0 km/h} the windings pass {limit:0 °C}; when cannot be told, as winding and case have heat capacities too unlike.",
                        $"Look at motor.winding_capacity and motor.case_capacity again; gear lower, take larger motors, or climb slower.", heat.Settled is { } far ? Amount.Create(far.Winding, "°C") : null, most),
                ];
            }

            var time = heat.TimeToLimit ?? Duration.FromSeconds(0);
            var way = Length.FromMetres(time.Seconds * speed.MetresPerSecond);
            return
            [
                MotorsStayCool!.Found(Level.Fix,
                    heat.Settled is { } hot ? (FormattableString)$"On {wanted:0 %} at {speed:0 km/h} the windings would settle at {hot.Winding:0 °C}; they pass {limit:0 °C} after {After(time)}." : $"On {wanted:0 %} at {speed:0 km/h} the windings find no end; they pass {limit:0 °C} after {After(time)}.",
                    $"Fine for a hill of up to {way:0 m}, {way * wanted.Value:0 m} high. For longer ones gear lower, take larger motors, or climb slower.",
                    heat.Settled is { } s ? Amount.Create(s.Winding, "°C") : null, most),
            ];
        });

    // Pulleys have whole teeth, so the next that suffice are named and not a ratio.
    static FormattableString Faster(Fitted parts, double ratio, double times)
    {
        if (parts.Drive.IsBelt && parts.MotorPulley.Teeth.IsKnown && parts.WheelPulley.Teeth.IsKnown)
        {
            var (motor, wheel) = (parts.MotorPulley.Teeth.Value, parts.WheelPulley.Teeth.Value);
            var (more, fewer) = ((int)Math.Ceiling(motor * times), (int)Math.Floor(wheel / times));
            return $"A motor pulley of {more} teeth instead of {motor} or a wheel pulley of {fewer} instead of {wheel}";
        }

        return $"A ratio of about {ratio / times:0.00} instead of {ratio:0.00}";
    }

    static FormattableString After(Duration time) => time.Minutes < 3 ? $"{time:0 s}" : (FormattableString)$"{time:0 min}";

    /// <summary>Every rule about the ride.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [BrakeHoldsDescent, BrakeStops, FailsafePresent, TopSpeedReached, SpeedLimitHeld, SteadyAtSpeed, ClimbHeld, RangeReached,
        CruiseHeld, MotorsStayCool, AdvertisedPower];
}
