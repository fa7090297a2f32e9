using Boardwright.Analyses;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Traction;

namespace Boardwright.Rules;

/// <summary>What a toothed belt, its pulleys and its key must satisfy.</summary>
static class BeltRules
{
    const int FullMesh = 6;
    static readonly Speed GreatestBeltSpeed = Speed.FromMetresPerSecond(33);
    static readonly Length HalfMillimetre = Length.FromMillimetres(0.5);

    /// <summary>The belt can be put on and tensioned.</summary>
    public static Rule<BoardAnalysis> BeltSitsInSlot { get; } = new(
        "belt.slot", "belt.teeth", "The belt is taut inside the mount's slot, with take-up left to tension it.",
        "The exact distance of shaft and axle at which the belt is taut must lie in centre_min … centre_max, with 0.4 % of it left above for tensioning. One tooth more moves it by about half a pitch.",
        Sources.OptibeltManual,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var mount = e.Board.Parts.Mount;
            var pulleys = BeltDrive.Pulleys(needs, e.Board);
            var teeth = needs.Read(e.BeltTeeth);
            var (least, most) = (needs.Read(mount.CentreMin), needs.Read(mount.CentreMax));
            if (needs.Unmet || pulleys is not { } pair)
                return null;
            var others = Others(pair, least, most);
            FormattableString remedy = others.Count > 0
                ? (FormattableString)$"{Sentence(others, least, most)}"
                : $"No belt lies in {least:0.0 mm} to {most:0.0 mm} with these pulleys: one more or one fewer tooth on the wheel pulley moves the axle by about {pair.Motor.Profile.Pitch / 4:0.0 mm}.";
            var mend = others.Count > 0 ? new Change("belt.teeth", $"{others[0].Teeth}") : null;
            if (BeltPath.Fitting(teeth.Teeth, pair.Motor, pair.Wheel) is not { } path)
                return [BeltSitsInSlot!.Found(Level.Stop, $"A belt of {teeth.Teeth} teeth does not reach around a pulley of {pair.Wheel.Teeth} and one of {pair.Motor.Teeth}.", remedy, Amount.Plain(teeth.Teeth), mend: mend)];
            var centre = path.CentreDistance;
            var value = Amount.Create(centre, "mm");
            var takeUp = BeltTension.TakeUp(centre);
            if (path.Gap.Si <= 0)
                return [BeltSitsInSlot!.Found(Level.Stop, $"At {centre:0.0 mm} the pulleys run into each other by {-path.Gap:0.0 mm}.", remedy, value, mend: mend)];
            if (centre < least)
                return [BeltSitsInSlot!.Found(Level.Stop, $"A belt of {teeth.Teeth} teeth is taut at {centre:0.0 mm}; the slot begins at {least:0.0 mm}: the belt is too short to put on by {least - centre:0.0 mm}.", remedy, value, Amount.Create(least, "mm"), mend: mend)];
            if (centre > most)
                return [BeltSitsInSlot!.Found(Level.Stop, $"A belt of {teeth.Teeth} teeth is taut at {centre:0.0 mm}; the slot ends at {most:0.0 mm}: the belt hangs loose by {centre - most:0.0 mm}.", remedy, value, Amount.Create(most, "mm"), mend: mend)];
            if (most - centre < takeUp)
                return [BeltSitsInSlot!.Found(Level.Fix, $"The belt is taut at {centre:0.0 mm} with {most - centre:0.00 mm} of slot left; tensioning takes {takeUp:0.00 mm}.", remedy, value, Amount.Create(most - takeUp, "mm"), mend: mend)];
            return [BeltSitsInSlot!.Found(Level.Fine, $"The belt of {teeth.Teeth} teeth is taut at {centre:0.0 mm} in a slot of {least:0.0 mm} to {most:0.0 mm}; {most - centre:0.0 mm} are left to tension it, and {centre - least:0.0 mm} to put it on.", value: value, limit: Amount.Create(most - takeUp, "mm"))];
        });

    /// <summary>The belt's length is one that a belt can have.</summary>
    public static Rule<BoardAnalysis> LengthIsWhole { get; } = new(
        "belt.length", "belt.length", "The belt's length is a whole number of its teeth.",
        "Length over pitch, to 0.01 mm; where the file says the teeth as well, both must be the same belt.",
        Sources.OptibeltManual,
        (e, needs) =>
        {
            var belt = e.Board.Parts.Belt;
            if (!e.Board.Parts.Drive.TurnsBelts(needs) || !belt.Length.IsKnown)
                return null;
            var (length, name) = (needs.Read(belt.Length), needs.Read(belt.Profile));
            if (needs.Unmet)
                return null;
            if (ToothProfile.Parse(name) is not { } profile)
                return [NameRules.Unknown(LengthIsWhole!, belt.Profile.Key, name, "tooth profile", NameRules.Profiles)];
            var teeth = length / profile.Pitch;
            var value = Amount.Plain(teeth);
            if (profile.TeethOf(length) is not { } whole)
                return [LengthIsWhole!.Found(Level.Stop, $"{length:0.0 mm} are {teeth:0.0} teeth of {profile.Name}: no belt is made so.", $"Read the belt's mark again: {profile.Pitch * Math.Floor(teeth):0 mm} and {profile.Pitch * Math.Ceiling(teeth):0 mm} lie next to it.", value)];
            return belt.Teeth.IsKnown && needs.Read(belt.Teeth) != whole
                ? [LengthIsWhole!.Found(Level.Stop, $"{length:0 mm} are {whole} teeth of {profile.Name}; the file says {belt.Teeth.Value}.", $"Count the teeth, and write one of the two.", value, Amount.Plain(belt.Teeth.Value))]
                : [LengthIsWhole!.Found(Level.Fine, $"{length:0 mm} are {whole} teeth of {profile.Name}.", value: value)];
        });

    /// <summary>Enough teeth carry the load.</summary>
    public static Rule<BoardAnalysis> EnoughTeethInMesh { get; } = new(
        "belt.mesh", "motor_pulley.teeth", "At least 6 teeth of the motor pulley are in mesh.",
        "Each whole tooth fewer than six takes a fifth off the belt's rating (Tsubaki is stricter: 0.7 at five, 0.5 at four).",
        Sources.SdpSiTimingBelts,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var path = needs.Read(e.Belt);
            if (needs.Unmet)
                return null;
            var (whole, teeth) = (path.Path.WholeTeethInMesh, path.Path.TeethInMesh);
            var (value, limit) = (Amount.Plain(whole), Amount.Plain(FullMesh));
            // Each tooth more on the small pulley brings a little less than half a tooth into mesh.
            var more = (int)Math.Ceiling((FullMesh - teeth) * path.Path.Small.Teeth / teeth);
            return whole >= FullMesh
                ? [EnoughTeethInMesh!.Found(Level.Fine, $"{teeth:0.0} teeth are in mesh.", value: value, limit: limit)]
                : [EnoughTeethInMesh!.Found(Level.Fix, $"Only {teeth:0.0} teeth are in mesh: {whole} count, and the rating falls to {1 - 0.2 * (FullMesh - whole):0 %}.",
                    $"Take a motor pulley with {path.Path.Small.Teeth + more} teeth (ratio {(double)path.Path.Large.Teeth / (path.Path.Small.Teeth + more):0.00}), or a longer belt where the slot allows.", value, limit)];
        });

    /// <summary>The small pulley is not smaller than the profile allows.</summary>
    public static Rule<BoardAnalysis> PulleyLargeEnough { get; } = new(
        "belt.least_teeth", "motor_pulley.teeth", "The motor pulley has at least as many teeth as the profile's rating begins with.",
        "Below it the belt is bent more sharply than its maker rates; for a 5 mm round-toothed belt that is 14 teeth.",
        Sources.OptibeltManual,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var pulleys = BeltDrive.Pulleys(needs, e.Board);
            if (needs.Unmet || pulleys is not { } pair)
                return null;
            var (teeth, least) = (pair.Motor.Teeth, pair.Motor.Profile.LeastTeeth);
            return teeth >= least
                ? [PulleyLargeEnough!.Found(Level.Fine, $"{teeth} teeth; the rating begins at {least}.", value: Amount.Plain(teeth), limit: Amount.Plain(least))]
                : [PulleyLargeEnough!.Found(Level.Fix, $"{teeth} teeth are fewer than the {least} at which the belt's rating begins.", $"Take a motor pulley with {least} teeth, and a wheel pulley with {(int)Math.Round((double)pair.Wheel.Teeth / teeth * least)} to keep the ratio.", Amount.Plain(teeth), Amount.Plain(least))];
        });

    /// <summary>The belt carries the peak pull.</summary>
    public static Rule<BoardAnalysis> BeltCarriesPeak { get; } = new(
        "belt.rating", "belt.width", "The belt's pull at the phase current limit, times a service factor, stays within its working tension.",
        "F_e = 2 T/d at the peak torque that the limits allow, times the service factor (1.5 where not given: shocks, frequent starts and braking), against the continuous working tension by width (cut edge cords taken off) and by teeth in mesh, a fifth off for each below six. Above it the belt wears or jumps teeth. Speed takes nothing off here: the peak pulls from a stand.",
        Sources.SdpSiServiceFactor,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var load = needs.Read(e.BeltLoad);
            var belt = needs.Read(e.Belt);
            var limits = needs.Read(e.PhaseLimits);
            var width = needs.Read(e.Board.Parts.Belt.Width);
            var service = e.Board.Parts.Belt.Service(needs).Value;
            if (needs.Unmet || load.Rating is not { } rating)
                return null;
            var pull = load.PeakPull * service;
            var (value, limit) = (Amount.Create(pull, "N"), Amount.Create(rating, "N"));
            if (pull <= rating)
                return [BeltCarriesPeak!.Found(Level.Fine, $"{load.PeakPull:0 N} at the peak, {pull:0 N} with a service factor of {service:0.0#}, against {rating:0 N}; {rating - pull:0 N} are left.", value: value, limit: limit)];
            var amperes = Current.FromAmperes(Math.Floor(limits.Enforced.Current.Amperes * (rating / pull)));
            var wider = new[] { 9.0, 15, 20, 25 }.Select(Length.FromMillimetres).Cast<Length?>()
                .FirstOrDefault(w => w > width && new BeltStrength(belt.Profile, w!.Value).AllowedPull(belt.Path) is { } carried
                && carried >= pull);
            return
            [
                BeltCarriesPeak!.Found(Level.Fix, $"The peak pulls {load.PeakPull:0 N}, {pull:0 N} with a service factor of {service:0.0#}, on a belt whose working tension is {rating:0 N}: {pull / rating - 1:0 %} over it.",
                    wider is { } w ? (FormattableString)$"Set the phase current to {amperes:0 A}, or take a belt and pulleys of {w:0 mm}." : $"Set the phase current to {amperes:0 A}, or a motor pulley with more teeth.",
                    value, limit, mend: new Change("limits.phase_current", $"{amperes.Amperes:0} A")),
            ];
        });

    /// <summary>The tension to set and the note to tune to.</summary>
    public static Rule<BoardAnalysis> TensionKnown { get; } = new(
        "belt.tension", "belt", "The belt's tension can be set by the note of its free span.",
        "Tension of each span 0.55 F_e, and at least half of the braking pull; f = √(T/(4 k t²)). The belt's mass k is one maker's, so a tension set by the note is good to some 15 %; short spans read high.",
        Sources.OptibeltManual,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var load = needs.Read(e.BeltLoad);
            var belt = needs.Read(e.Belt);
            return needs.Unmet ? null :
                [TensionKnown!.Found(Level.Fine, $"Set {load.StaticTension:0 N} in each span: the free {belt.Path.Span:0 mm} then sound at {load.Frequency:0 Hz}. The motor shaft carries {load.ShaftLoad:0 N} at rest.", value: Amount.Create(load.StaticTension, "N"))];
        });

    /// <summary>No span goes slack under braking.</summary>
    public static Rule<BoardAnalysis> NoSlackUnderBrake { get; } = new(
        "belt.slack", "limits.brake_phase_current", "Neither span of the belt goes slack when braking at the limit.",
        "In a reversing drive the looser span keeps T0 − F_brake/2. At the tension of 0.55 F_drive it goes slack when the brake pulls more than 1.1 times the drive; the belt then jumps teeth.",
        Sources.OptibeltManual,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var load = needs.Read(e.BeltLoad);
            var brake = needs.Read(e.BrakePhaseLimits);
            if (needs.Unmet)
                return null;
            var fromDrive = BeltTension.Installation(load.PeakPull);
            var (value, limit) = (Amount.Create(load.BrakePull, "N"), Amount.Create(fromDrive * 2, "N"));
            if (load.BrakePull / 2 <= fromDrive)
                return [NoSlackUnderBrake!.Found(Level.Fine, $"At the braking limit the looser span keeps {load.SlackWhenBraking:0 N}.", value: value, limit: limit)];
            var amperes = Current.FromAmperes(Math.Floor(brake.Enforced.Current.Amperes * (fromDrive * 2 / load.BrakePull)));
            return
            [
                NoSlackUnderBrake!.Found(Level.Fix, $"Braking pulls {load.BrakePull:0 N}: at the {fromDrive:0 N} that driving needs one span goes slack by {load.BrakePull / 2 - fromDrive:0 N}.",
                    $"Set {load.StaticTension:0 N} instead, which loads the motor bearings more, or a braking phase current of {amperes:0 A}.", value, limit, mend: new Change("limits.brake_phase_current", $"{amperes.Amperes:0} A")),
            ];
        });

    /// <summary>The belt does not run too fast.</summary>
    public static Rule<BoardAnalysis> BeltNotTooFast { get; } = new(
        "belt.speed", "motor_pulley.teeth", "The belt runs at no more than 33 m/s with the wheels in the air.",
        "Above it pulleys have to be balanced and the belt's own mass pulls on its cords.",
        Sources.BeltSpeedFromMemory,
        (e, needs) =>
        {
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var speed = needs.Read(e.BeltSpeedAtTop);
            if (needs.Unmet)
                return null;
            var (value, limit) = (Amount.Create(speed, "m/s"), Amount.Create(GreatestBeltSpeed, "m/s"));
            return speed <= GreatestBeltSpeed
                ? [BeltNotTooFast!.Found(Level.Fine, $"{speed:0.0 m/s} at most.", value: value, limit: limit)]
                : [BeltNotTooFast!.Found(Level.Fix, $"The belt runs at {speed:0.0 m/s}.", $"A motor pulley {1 - GreatestBeltSpeed / speed:0 %} smaller, or a motor with that much less KV.", value, limit)];
        });

    /// <summary>The key carries the peak torque.</summary>
    public static Rule<BoardAnalysis> KeyCarriesPeak { get; } = new(
        "key.strength", "motor.key_width", "The key carries the peak torque in shear and in the pulley's keyway.",
        "F = 2 T/d; shear F/(b l) against half the yield of key steel (C45+C, 430 MPa) with a safety of 2, bearing F/((h − t1) l) against the yield of an aluminium hub (240 MPa) with 1.5; l the pulley's seat, at most 1.5 d.",
        Sources.Din6885,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!e.Board.Parts.Drive.TurnsBelts(needs) || parts.MotorPulley.Fixing is { IsKnown: true, Value: Fixing.SetScrew })
                return null;
            var torque = needs.Read(Traction.CurrentLimits.PeakTorqueOf(e.MotorConstants, e.PhaseLimits));
            var shaft = needs.Read(parts.Motor.ShaftDiameter);
            var width = needs.Read(parts.Motor.KeyWidth);
            var height = parts.Motor.KeyHeight.IsKnown ? needs.Read(parts.Motor.KeyHeight) : width;
            var length = needs.Read(parts.Motor.ShaftLength) - needs.Read(parts.Mount.PlateThickness);
            var pulley = needs.Read(parts.MotorPulley.Length);
            if (needs.Unmet || length.Si <= 0 || width.Si <= 0 || height.Si <= 0)
                return null;
            var seat = new[] { length, pulley, shaft * 1.5 }.MinBy(l => l.Si);
            // Where no standard size fits, a little more than half of the key stands in the shaft.
            var depth = KeySize.ForShaft(shaft) is { } size && Math.Abs((size.Height - height).Millimetres) < 0.05 ? size.ShaftDepth
                : height * 0.6;
            var key = new ParallelKey(width, height, depth, seat);
            var (shear, bearing) = (key.Shear(torque, shaft), key.HubBearing(torque, shaft));
            var (shearLimit, bearingLimit) =
                (ParallelKey.AllowableShear(Pressure.FromMegapascals(430), 2),
                ParallelKey.AllowableBearing(Pressure.FromMegapascals(240), 1.5));
            var use = Math.Max(shear / shearLimit, bearing / bearingLimit);
            var (value, limit) = (Amount.Create(bearing, "MPa"), Amount.Create(bearingLimit, "MPa"));
            return use <= 1
                ? [KeyCarriesPeak!.Found(Level.Fine, $"At {torque:0.0 N·m} the key of {width:0.# mm} by {height:0.# mm} is sheared with {shear:0 MPa} of {shearLimit:0 MPa} and pressed with {bearing:0 MPa} of {bearingLimit:0 MPa} over {seat:0 mm}.", value: value, limit: limit)]
                : [KeyCarriesPeak!.Found(Level.Fix, $"At {torque:0.0 N·m} the key of {width:0.# mm} by {height:0.# mm} is sheared with {shear:0 MPa} of {shearLimit:0 MPa} and pressed with {bearing:0 MPa} of {bearingLimit:0 MPa} over {seat:0 mm}: {use - 1:0 %} too much.",
                    $"A key {seat * use:0 mm} long, a steel pulley, or a phase current {1 - 1 / use:0 %} lower.", value, limit)];
        });

    /// <summary>The key is the one its standard gives.</summary>
    public static Rule<BoardAnalysis> KeyIsStandard { get; } = new(
        "key.standard", "motor.key_width", "The key has the size that its standard gives for the shaft.",
        "DIN 6885-1. Motors of the trade often carry another one; then the pulley must be bought for the key, not for the shaft.",
        Sources.Din6885,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!e.Board.Parts.Drive.TurnsBelts(needs) || parts.MotorPulley.Fixing is { IsKnown: true, Value: Fixing.SetScrew })
                return null;
            var (shaft, width) = (needs.Read(parts.Motor.ShaftDiameter), needs.Read(parts.Motor.KeyWidth));
            if (needs.Unmet || KeySize.ForShaft(shaft) is not { } size)
                return null;
            var (value, limit) = (Amount.Create(width, "mm"), Amount.Create(size.Width, "mm"));
            return Math.Abs((size.Width - width).Millimetres) < 0.06
                ? [KeyIsStandard!.Found(Level.Fine, $"{width:0.# mm} by {size.Height:0.# mm} on {shaft:0.# mm}, as the standard gives.", value: value, limit: limit)]
                : [KeyIsStandard!.Found(Level.Measure, $"The key is {width:0.# mm} wide where the standard gives {size.Width:0.# mm} by {size.Height:0.# mm} for a shaft of {shaft:0.# mm}.", $"Measure key and slot with a caliper, and buy the pulley for the key.", value, limit)];
        });

    /// <summary>A reversing shaft is not held by a set screw alone.</summary>
    public static Rule<BoardAnalysis> NotSetScrewAlone { get; } = new(
        "key.set_screw_alone", "motor_pulley.fixing", "The motor pulley is held by more than a set screw.",
        "A shaft that drives and brakes turns a set screw loose: its holding torque counts with a dynamic factor of 4 to 8.",
        Sources.SetScrewChart,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var fixing = needs.Read(parts.MotorPulley.Fixing);
            if (needs.Unmet)
                return null;
            if (fixing != Fixing.SetScrew)
                return [NotSetScrewAlone!.Found(Level.Fine, $"Held by {(fixing == Fixing.Key ? "a key" : "a key and set screws")}.")];
            var torque = needs.Read(Traction.CurrentLimits.PeakTorqueOf(e.MotorConstants, e.PhaseLimits));
            var shaft = needs.Read(parts.Motor.ShaftDiameter);
            if (needs.Unmet)
                return null;
            var screw = Length.FromMillimetres(Math.Clamp(Math.Round(shaft.Millimetres / 2), 3, 6));
            var holds = SetScrew.HoldingForce(screw) is { } force ? SetScrew.DynamicTorque(force, shaft)
                : ((Torque Least, Torque Greatest)?)null;
            return
            [
                NotSetScrewAlone!.Found(Level.Fix,
                    holds is { } h ? (FormattableString)$"A set screw alone: an M{screw.Millimetres:0} on {shaft:0.# mm} holds {h.Least:0.0 N·m} to {h.Greatest:0.0 N·m} when the torque reverses; the peak is {torque:0.0 N·m}." : $"A set screw alone has to hold {torque:0.0 N·m} that reverses at every brake.",
                    $"Take a pulley with a keyway for the motor's key; a flat and thread lock only delay it.",
                    Amount.Create(torque, "N·m"), holds is { } held ? Amount.Create(held.Greatest, "N·m") : null),
            ];
        });

    /// <summary>The motor's bolts engage enough and do not bottom.</summary>
    public static Rule<BoardAnalysis> BoltsEngage { get; } = new(
        "bolt.motor", "mount.bolt_length", "The motor's bolts engage at least one diameter and stay half a millimetre off the bottom of their holes.",
        "Engagement = bolt length − plate − washer. Too long a bolt runs into the winding; too short a one strips the thread. Tightening torque K F d with K = 0.2 and 75 % of the proof load of the bolts' class, A2-70 where not given.",
        Sources.Iso898,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (e.IsHub || !parts.Mount.IsChosen)
                return null;
            var name = needs.Read(parts.Motor.Bolt);
            var depth = needs.Read(parts.Motor.BoltDepth);
            var plate = needs.Read(parts.Mount.PlateThickness);
            if (needs.Unmet)
                return null;
            if (BoltThread.Parse(name) is not { } thread)
                return [NameRules.Unknown(BoltsEngage!, parts.Motor.Bolt.Key, name, "screw", NameRules.Screws)];
            var strength = parts.Mount.BoltClass;
            if (MotorBolts.Compute(parts) is not { } bolts)
                return [NameRules.Unknown(BoltsEngage!, strength.Key, strength.Value, "bolt class", NameRules.Classes)];
            var tighten = $"{bolts.Strength.Name} to {bolts.TorqueText}";
            var longest = plate + thread.Washer.Thickness + depth - HalfMillimetre;
            var shortest = plate + thread.Washer.Thickness + thread.Diameter;
            var right = new[] { 6.0, 8, 10, 12, 14, 16, 18, 20, 22, 25, 30, 35, 40 }.Select(Length.FromMillimetres)
                .Where(l => l <= longest && l >= shortest).OrderByDescending(l => l.Si).Cast<Length?>().FirstOrDefault();
            FormattableString take = right is { } r ? $"Take {name}×{r.Millimetres:0} bolts" : (FormattableString)$"No standard length fits between {shortest:0.0 mm} and {longest:0.0 mm}: cut one to {longest:0.0 mm}";
            if (!parts.Mount.BoltLength.IsKnown)
            {
                return [BoltsEngage!.Found(Level.Measure, $"The length of the motor's bolts is not in the file; it must be {shortest:0.0 mm} to {longest:0.0 mm} under the head.",
                    $"{new Phrase(take)}; tighten {tighten} with thread lock.")];
            }

            var length = needs.Read(parts.Mount.BoltLength);
            var engaged = length - plate - thread.Washer.Thickness;
            var (value, limit) = (Amount.Create(engaged, "mm"), Amount.Create(depth - HalfMillimetre, "mm"));
            FormattableString remedy = $"{new Phrase(take)}.";
            if (length > longest)
                return [BoltsEngage!.Found(Level.Stop, $"Bolts of {length:0 mm} reach {engaged:0.0 mm} into holes {depth:0.0 mm} deep: they bottom, or meet the winding.", remedy, value, limit)];
            return length < shortest
                ? [BoltsEngage!.Found(Level.Fix, $"Bolts of {length:0 mm} engage only {engaged:0.0 mm} of an {name} thread.", remedy, value, Amount.Create(thread.Diameter, "mm"))]
                : [BoltsEngage!.Found(Level.Fine, $"{engaged:0.0 mm} of {name} engage in {depth:0.0 mm}; tighten {tighten} with thread lock.", value: value, limit: limit)];
        });

    /// <summary>Every rule about belts, keys and the motor's bolts.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [BeltSitsInSlot, LengthIsWhole, EnoughTeethInMesh, PulleyLargeEnough, BeltCarriesPeak, TensionKnown, NoSlackUnderBrake,
        BeltNotTooFast, KeyCarriesPeak, KeyIsStandard, NotSetScrewAlone, BoltsEngage];

    static Phrase Sentence(List<(int Teeth, Length Centre)> others, Length least, Length most) => others.Count > 1
        ? (FormattableString)$"A belt of {others[0].Teeth} teeth puts the axle at {others[0].Centre:0.0 mm}, one of {others[1].Teeth} at {others[1].Centre:0.0 mm}; the slot takes {least:0.0 mm} to {most:0.0 mm}."
        : (FormattableString)$"A belt of {others[0].Teeth} teeth puts the axle at {others[0].Centre:0.0 mm}, inside the slot of {least:0.0 mm} to {most:0.0 mm}.";

    /// <summary>Belts that sit in the slot with room to tension, the most central first.</summary>
    static List<(int Teeth, Length Centre)> Others((PulleyGeometry Motor, PulleyGeometry Wheel) pulleys, Length least, Length most)
    {
        var middle = (least + most) / 2;
        var found = new List<(int Teeth, Length Centre)>();
        for (var teeth = pulleys.Wheel.Teeth; teeth < 400; teeth++)
        {
            if (BeltPath.Fitting(teeth, pulleys.Motor, pulleys.Wheel) is not { } path || path.CentreDistance < least || path.Gap.Si <= 0)
                continue;
            if (path.CentreDistance + BeltTension.TakeUp(path.CentreDistance) > most)
                break;
            found.Add((teeth, path.CentreDistance));
        }

        return [.. found.OrderBy(f => Math.Abs((f.Centre - middle).Si))];
    }
}
