using Boardwright.Analyses;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Traction;

namespace Boardwright.Rules;

/// <summary>What the brief asks of the board on the road.</summary>
static class PerformanceRules
{
    static readonly Acceleration UsualBraking = Acceleration.FromMetresPerSecondSquared(1.54);
    static readonly Acceleration UnreliableBraking = Acceleration.FromMetresPerSecondSquared(1);
    static readonly Temperature SafeSideWinding = Temperature.FromCelsius(120);
    static readonly Temperature SafeSideMagnet = RideHeat.UnmarkedMagnets;

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

    /// <summary>Trucks at speed.</summary>
    public static Rule<BoardAnalysis> SteadyAtSpeed { get; } = new(
        "speed.stability", "rear_truck.kingpin", "Trucks that turn easily are set up for the speed they will see.",
        "In a simplified model a rider's reflex damps the weave of a board only below V² = ((I ω*² + m g h)/κK − k)/(m h S), S = (tan λ front + tan λ rear)/wheelbase: above it each correction comes too late. The band is that of riders with delays of 0.15 s to 0.25 s and ankles that give 0.15 to 0.9 of what falling asks. It is a trend, not a promise, and nobody compared it with rides of this board; so the rule never passes. Of double-kingpin trucks the stated angle says too little.",
        Sources.SkateboardStability,
        (e, needs) =>
        {
            var (front, rear) = (needs.Read(e.Board.Parts.FrontTruck.Kingpin), needs.Read(e.Board.Parts.RearTruck.Kingpin));
            // What the board reaches where that is known, and what is asked of it where not.
            Known<Speed>[] asked = [e.Board.Brief.TopSpeedWanted, e.Board.Brief.CruiseSpeed];
            var fastest = e.Speeds.IsKnown ? Speed.FromMetresPerSecond(needs.Read(e.Speeds).Full)
                : asked.Where(s => s.IsKnown).Select(s => needs.Read(s)).Cast<Speed?>().FirstOrDefault() ?? needs.Read(asked[0]);
            var isDouble = front == Kingpin.Double || rear == Kingpin.Double;
            var weave = isDouble ? default : needs.Read(StraightRunning.Compute(e.Board));
            if (needs.Unmet)
                return null;
            FormattableString step = $"Try it in steps of 5 km/h on an empty road, in full protection. The trade fits harder bushings, first at the rear, lowers the rear truck's pivot angle, has the rider stand forward, and limits the speed where the weave begins.";
            var value = Amount.Create(fastest, "km/h");
            if (weave is null)
                return [SteadyAtSpeed!.Found(Level.Measure, $"Double-kingpin trucks on a board that reaches {fastest:0 km/h}: they steer more for each degree of lean, and riders report a weave that grows with speed. Where it begins rests on the rider as much as on the board.", step, value)];
            FormattableString band = $"In a simplified model corrections begin to come too late somewhere between {weave.Low:0 km/h} and {weave.High:0 km/h}, by the rider's delay and ankles";
            return [SteadyAtSpeed!.Found(Level.Measure, fastest > weave.Low
                ? (FormattableString)$"{new Phrase(band)}; the board reaches {fastest:0 km/h}."
                : $"{new Phrase(band)}. The board reaches {fastest:0 km/h}, which is below that band; it says nothing of loose trucks, braking or bad road.", step, value, Amount.Create(weave.Low, "km/h"))];
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
        "v · 1 s + ∫ v/a dv at full and half charge on the level, and at half charge downhill. The rear axle loses grip as it brakes. How hard it stops is judged by brake.strength.",
        Sources.Mechanics,
        (e, needs) =>
        {
            var (brakes, descent) = (needs.Read(e.Brakes), needs.Read(e.Descent));
            var speed = needs.Read(e.Board.Brief.CruiseSpeed);
            var (hill, slow) = (needs.Read(e.Board.Brief.ClimbWanted), needs.Read(e.Board.Brief.ClimbSpeed));
            if (needs.Unmet)
                return null;
            static FormattableString Within(double? metres) => metres is null ? (FormattableString)$"never" : $"within {new Phrase(Way(metres))}";
            return brakes is { Half: not null, Full: not null } && descent.Stop is not null
                ? [BrakeStops!.Found(Level.Fine, $"From {speed:0 km/h} on the level {Way(brakes.Half)} at half charge and {Way(brakes.Full)} full; down the brief's {hill:0 %} from {slow:0 km/h} {Way(descent.Stop)} at half charge.", value: new Amount(brakes.Half.Value, "m"))]
                : [BrakeStops!.Found(Level.Stop, $"The board stops from {speed:0 km/h} on the level {Within(brakes.Half)} at half charge and {Within(brakes.Full)} full, down the brief's {hill:0 %} from {slow:0 km/h} {Within(descent.Stop)} at half charge.", $"Raise the braking currents if every part carries them, or fit another brake; until then ride only where a foot or a slide stops the board.")];
        });

    /// <summary>The electric brake stops the board hard enough.</summary>
    public static Rule<BoardAnalysis> BrakesHardEnough { get; } = new(
        "brake.strength", "limits.brake_phase_current", "The electric brake slows the board hard enough from cruise speed on the level.",
        "Mean deceleration v²/2s, without the second of reaction, at full and half charge against braking_least (1.54 m/s² where not given, what German rules ask of one brake alone). Below 1 m/s² at half charge nobody can rely on it; a full pack that takes too little back can be set out with less full.",
        Sources.SmallVehicleBrakes,
        (e, needs) =>
        {
            var brakes = needs.Read(e.Brakes);
            var speed = needs.Read(e.Board.Brief.CruiseSpeed);
            var least = needs.Read(e.Board.Brief.BrakingLeast, UsualBraking);
            // A board that never stops is for the rule above.
            if (needs.Unmet || brakes is not { Half: { } half, Full: { } full })
                return null;
            var v = speed.MetresPerSecond;
            Acceleration Mean(double metres) => Acceleration.FromMetresPerSecondSquared(v * v / (2 * (metres - v)));
            var weaker = full > half ? Mean(full) : Mean(half);
            var (value, limit) = (Amount.Create(weaker, "m/s2"), Amount.Create(least, "m/s2"));
            FormattableString ways = $"From {speed:0 km/h} on the level {Way(half)} at half charge and {Way(full)} full";
            return weaker >= least
                ? [BrakesHardEnough!.Found(Level.Fine, $"{new Phrase(ways)}, {weaker:0.00 m/s2}; {least:0.00 m/s2} are asked.", value: value, limit: limit)]
                : [BrakesHardEnough!.Found(Mean(half) < UnreliableBraking ? Level.Stop : Level.Fix, $"{new Phrase(ways)}: only {weaker:0.00 m/s2}{(full > half ? " with a full pack" : "")}; {least:0.00 m/s2} are asked.",
                    $"Raise the braking currents if every part carries them, gear lower, stand over the driven axle, drive both axles, or fit another brake{(full > half ? ", and do not set out with a full pack" : "")}; until then ride only where a foot or a slide stops the board.", value, limit)];
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
            if (needs.Unmet)
                return null;
            var (value, limit) = (Amount.Create(feed, "W"), Amount.Create(rated, "W"));
            return feed < rated
                ? [AdvertisedPower!.Found(Level.Fix, $"The motors are advertised with {rated:0 W} together; the pack can feed {feed:0 W}, {feed / rated:0 %} of that.", $"Promise {feed:0 W}, not {rated:0 W}; what the motors are called on their sheet is no power of the board.", value, limit)]
                : [AdvertisedPower!.Found(Level.Fine, $"The motors are advertised with {rated:0 W} together; the pack can feed {feed:0 W}.", value: value, limit: limit)];
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
        "Steady temperature of the windings at the climb's current, with the copper's own rise; where it is passed, the minutes until then. Above 250 °C no steady state is named: no enamel of IEC 60085's highest class lives there. Heat capacities and resistances that nobody measured are guesses: read the minutes as half to twice. Without a limit 120 °C warn, and never pass.",
        Sources.TwoNodeMotor,
        (e, needs) =>
        {
            var heat = needs.Read(e.ClimbHeat);
            var wanted = needs.Read(e.Board.Brief.ClimbWanted);
            var speed = needs.Read(e.Board.Brief.ClimbSpeed);
            if (needs.Unmet)
                return null;
            var stated = e.Board.Parts.Motor.WindingLimit;
            var limit = needs.Read(stated, SafeSideWinding);
            var most = Amount.Create(limit, "°C");
            if (heat.Settled is { } end && end.Winding <= limit)
            {
                if (stated.IsKnown)
                    return [MotorsStayCool!.Found(Level.Fine, $"On an endless {wanted:0 %} at {speed:0 km/h} the windings settle at {end.Winding:0 °C}; {limit:0 °C} are allowed.", value: Amount.Create(end.Winding, "°C"), limit: most)];
                return [Unstated(MotorsStayCool!, stated.Key, $"On an endless {wanted:0 %} at {speed:0 km/h} the windings settle at {end.Winding:0 °C}. What they bear is not in the file; even unmarked ones are taken to {limit:0 °C}.", Amount.Create(end.Winding, "°C"), most)];
            }

            var settles = heat.Outlived?.Winding;
            var value = settles is { } t ? Amount.Create(t, "°C") : (Amount?)null;
            FormattableString against = stated.IsKnown ? $"{limit:0 °C}" : (FormattableString)$"{limit:0 °C}, which unmarked windings are taken to,";
            if (!heat.IsTold)
            {
                return
                [
                    MotorsStayCool!.Found(Level.Fix, $"On {wanted:0 %} at {speed:0 km/h} the windings pass {new Phrase(against)}; when cannot be told, as winding and case have heat capacities too unlike.",
                        $"Look at motor.winding_capacity and motor.case_capacity again; gear lower, take larger motors, or climb slower.", value, most),
                ];
            }

            FormattableString until = heat.TimeToLimit is { } passed ? $" after {new Phrase(After(passed))}" : (FormattableString)$"";
            FormattableString hill = heat.TimeToLimit is { } time && Length.FromMetres(time.Seconds * speed.MetresPerSecond) is var way
                ? $"Fine for a hill of up to {way:0 m}, {way * wanted.Value:0 m} high. For longer ones gear" : (FormattableString)$"Gear";
            return
            [
                MotorsStayCool!.Found(Level.Fix,
                    settles is { } hot ? (FormattableString)$"On {wanted:0 %} at {speed:0 km/h} the windings would settle at {hot:0 °C}; they pass {new Phrase(against)}{new Phrase(until)}." : $"On {wanted:0 %} at {speed:0 km/h} the windings would never settle; they pass {new Phrase(against)}{new Phrase(until)}.",
                    $"{new Phrase(hill)} lower, take larger motors, or climb slower.", value, most),
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

    /// <summary>Magnets stay below their limit on the climb.</summary>
    public static Rule<BoardAnalysis> MagnetsStayCool { get; } = new(
        "heat.magnets", "motor.magnet_limit", "The magnets stay below their limit on the brief's climb.",
        "The magnets sit in the can, so they are as hot as the case: its steady temperature on the climb. Above their limit they lose strength for good. Without a limit 80 °C, what unmarked magnets bear, warn and never pass.",
        Sources.MagnetGrades,
        (e, needs) =>
        {
            var heat = needs.Read(e.ClimbHeat);
            var wanted = needs.Read(e.Board.Brief.ClimbWanted);
            var speed = needs.Read(e.Board.Brief.ClimbSpeed);
            if (needs.Unmet)
                return null;
            var stated = e.Board.Parts.Motor.MagnetLimit;
            var limit = needs.Read(stated, SafeSideMagnet);
            var most = Amount.Create(limit, "°C");
            var can = heat.Outlived?.Case;
            var value = can is { } t ? Amount.Create(t, "°C") : (Amount?)null;
            if (can is not { } settles || settles > limit)
            {
                FormattableString told = can is { } hot ? $"the cans would settle at {hot:0 °C}" : (FormattableString)$"the motors would never settle";
                return [MagnetsStayCool!.Found(Level.Fix, $"On an endless {wanted:0 %} at {speed:0 km/h} {new Phrase(told)}; the magnets {(stated.IsKnown ? "bear" : "are not marked, and then taken to bear")} {limit:0 °C}.", $"Gear lower, take larger motors or ones with magnets of a higher grade, or climb slower; on a short hill the cans stay cooler, so simulate the ride.", value, most)];
            }

            return stated.IsKnown
                ? [MagnetsStayCool!.Found(Level.Fine, $"On an endless {wanted:0 %} at {speed:0 km/h} the cans settle at {settles:0 °C}; the magnets bear {limit:0 °C}.", value: value, limit: most)]
                : [Unstated(MagnetsStayCool!, stated.Key, $"On an endless {wanted:0 %} at {speed:0 km/h} the cans settle at {settles:0 °C}. What the magnets bear is not in the file; even unmarked ones are taken to {limit:0 °C}.", value, most)];
        });

    // A limit of the safe side warns, but nothing is fine by it.
    static Finding Unstated(Rule<BoardAnalysis> rule, string key, FormattableString says, Amount? value, Amount? limit) =>
        rule.Found(Level.Measure, says, $"Ask the maker for {key}, and write it into the file.", value, limit) with { Needs = [key] };

    static FormattableString Way(double? metres) => metres is { } m ? (FormattableString)$"{Length.FromMetres(m):0.0 m}" : $"never";

    static FormattableString After(Duration time) => time.Minutes < 3 ? $"{time:0 s}" : (FormattableString)$"{time:0 min}";

    /// <summary>Every rule about the ride.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [BrakeHoldsDescent, BrakeStops, BrakesHardEnough, FailsafePresent, TopSpeedReached, SpeedLimitHeld, SteadyAtSpeed, ClimbHeld,
        RangeReached, CruiseHeld, MotorsStayCool, MagnetsStayCool, AdvertisedPower];
}
