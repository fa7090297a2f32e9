using Boardwright.Analyses;
using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Fits;
using Boardwright.Parts;

namespace Boardwright.Rules;

/// <summary>Parts that meet must have the same interface, by name and by size.</summary>
static class InterfaceRules
{
    static readonly Length SameBore = Length.FromMillimetres(0.06);
    static readonly Length SameAxle = Length.FromMillimetres(0.1);
    static readonly Length SameCircle = Length.FromMillimetres(0.3);

    /// <summary>The mount grips the driven truck's hanger.</summary>
    public static Rule<BoardAnalysis> MountGripsHanger { get; } = Names(
        "fit.hanger_profile", "mount.hanger_profile", "The mount grips the hanger of the driven truck.",
        "A mount is cut for one hanger profile; on another it slips or does not go on at all. The two names are compared.",
        (e, _) => e.Board.Parts.Mount.IsChosen, e => e.Board.Parts.Mount.HangerProfile,
        e => DrivenAxle.TruckOf(e.Board.Parts).HangerProfile,
        "mount", "hanger");

    /// <summary>The wheel pulley grips the wheel's core.</summary>
    public static Rule<BoardAnalysis> PulleyGripsCore { get; } = Names(
        "fit.core", "wheel_pulley.core", "The wheel pulley grips the wheel's core.",
        "A wheel pulley turns its wheel through the openings of one kind of core. The two names are compared.",
        (e, needs) => e.Board.Parts.Drive.TurnsBelts(needs), e => e.Board.Parts.WheelPulley.Core, e => e.Board.Parts.Wheels.Core,
        "wheel pulley", "wheel");

    /// <summary>The front truck bolts to the deck.</summary>
    public static Rule<BoardAnalysis> FrontTruckBoltsOn { get; } = Names(
        "fit.hole_pattern_front", "front_truck.hole_pattern", "The front truck's holes match the deck's.",
        "The names of the two hole patterns are compared.",
        (_, _) => true, e => e.Board.Parts.FrontTruck.HolePattern, e => e.Board.Parts.Deck.HolePattern, "front truck", "deck");

    /// <summary>The rear truck bolts to the deck.</summary>
    public static Rule<BoardAnalysis> RearTruckBoltsOn { get; } = Names(
        "fit.hole_pattern_rear", "rear_truck.hole_pattern", "The rear truck's holes match the deck's.",
        "The names of the two hole patterns are compared.",
        (_, _) => true, e => e.Board.Parts.RearTruck.HolePattern, e => e.Board.Parts.Deck.HolePattern, "rear truck", "deck");

    /// <summary>The receiver plugs into the controller.</summary>
    public static Rule<BoardAnalysis> ReceiverPlugsIn { get; } = Names(
        "fit.remote_port", "remote.port", "The remote's receiver plugs into the controller.",
        "The names of the two ports are compared.",
        (e, _) => e.Board.Parts.Remote.IsChosen, e => e.Board.Parts.Remote.Port, e => e.Board.Parts.Controller.RemotePort, "remote's receiver", "controller");

    /// <summary>The motor's holes lie under the mount's.</summary>
    public static Rule<BoardAnalysis> BoltCirclesMatch { get; } = new(
        "fit.bolt_circle", "mount.bolt_circle", "The motor's bolt circle lies under the mount's slots.",
        "One of the mount's bolt circles must equal one of the motor's to 0.3 mm, and both must be made for the same bolt.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!parts.Mount.IsChosen)
                return null;
            var mount = needs.Read(parts.Mount.BoltCircle);
            var motor = needs.Read(parts.Motor.BoltCircle);
            var bolts = (Mount: needs.Read(parts.Mount.Bolt), Motor: needs.Read(parts.Motor.Bolt));
            if (needs.Unmet)
                return null;
            var pairs = from a in mount.Items from b in motor.Items orderby Math.Abs((a - b).Si) select (Mount: a, Motor: b);
            var nearest = pairs.First();
            var apart = Length.FromMetres(Math.Abs((nearest.Mount - nearest.Motor).Metres));
            if (apart > SameCircle)
            {
                return
                [
                    BoltCirclesMatch!.Found(Level.Stop,
                        $"The mount takes a bolt circle of {nearest.Mount:0.0 mm}, the motor has {nearest.Motor:0.0 mm}.",
                        $"Take a motor with a {nearest.Mount:0.0 mm} circle, or a mount whose slots reach {nearest.Motor:0.0 mm}; drilled halfway between, the slots would be {apart / 2:0.0 mm} off.",
                        Amount.Create(nearest.Motor, "mm"), Amount.Create(nearest.Mount, "mm")),
                ];
            }

            return Same(bolts.Mount, bolts.Motor)
                ? [BoltCirclesMatch!.Found(
                Level.Fine, $"Mount and motor share a bolt circle of {nearest.Motor:0.0 mm} with {bolts.Motor}.", value: Amount.Create(nearest.Motor, "mm"), limit: Amount.Create(nearest.Mount, "mm"))]
                : [BoltCirclesMatch!.Found(Level.Stop, $"The mount is drilled for {bolts.Mount}, the motor is threaded {bolts.Motor}.", IsThinner(bolts.Motor, bolts.Mount) ? (FormattableString)$"Fill the mount's holes with sleeves for {bolts.Motor}, or take a motor threaded {bolts.Mount}; thin bolts in wide holes shift under the belt." : $"Drill the mount's holes for {bolts.Motor}, or take a motor threaded {bolts.Mount}.", where: "mount.bolt")];
        });

    /// <summary>The bearings go on the axles.</summary>
    public static Rule<BoardAnalysis> BearingsFitAxles { get; } = new(
        "fit.bearing_bore", "wheels.bearing", "The bearings' bore is the diameter of both axles.",
        "Bore of the bearing after ISO 15, by its name, against the axle's diameter to 0.1 mm: a thicker axle does not go in, on a thinner one the wheel runs out of true and wears it.",
        Sources.SkfCatalogue,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            var name = needs.Read(parts.Wheels.Bearing);
            var axles = new[] { (Name: "front", Truck: parts.FrontTruck), (Name: "rear", Truck: parts.RearTruck) }
                .Where(t => !e.IsHub || !ReferenceEquals(t.Truck, DrivenAxle.TruckOf(parts)))
                .Select(t => (t.Name, t.Truck.AxleDiameter, Diameter: needs.Read(t.Truck.AxleDiameter))).ToArray();
            if (!parts.Wheels.Bearing.IsKnown)
                return null;
            if (BallBearing.Parse(name) is not { } bearing)
                return [NameRules.Unknown(BearingsFitAxles!, parts.Wheels.Bearing.Key, name, "bearing", NameRules.Bearings)];
            return axles.Where(axle => axle.AxleDiameter.IsKnown).Select(axle =>
            {
                var over = axle.Diameter - bearing.Bore;
                var (value, limit) = (Amount.Create(axle.Diameter, "mm"), Amount.Create(bearing.Bore, "mm"));
                var right = BallBearing.All.FirstOrDefault(b => Math.Abs((b.Bore - axle.Diameter).Si) <= SameAxle.Si);
                var instead = right is not null ? FormattableString.Invariant($"bearings for {axle.Diameter.Millimetres:0.#} mm, such as {right.Name}, if the wheel's seat takes them") : FormattableString.Invariant($"wheels with bearings for {axle.Diameter.Millimetres:0.#} mm");
                var wrong = over.Si > 0 ? "it does not go on" : "it runs out of true";
                return Math.Abs(over.Si) <= SameAxle.Si
                    ? BearingsFitAxles!.Found(Level.Fine, $"A {bearing.Name} has a bore of {bearing.Bore:0.0 mm}, the {axle.Name} axle {axle.Diameter:0.0 mm}.", value: value, limit: limit, where: axle.AxleDiameter.Key)
                    : BearingsFitAxles!.Found(Level.Stop, $"A {bearing.Name} has a bore of {bearing.Bore:0.0 mm}, the {axle.Name} axle {axle.Diameter:0.0 mm}: {wrong}.", $"Take {instead}, or trucks with an axle of {bearing.Bore:0.0 mm}.", value, limit, axle.AxleDiameter.Key);
            });
        });

    /// <summary>The motor pulley's bore is the shaft's diameter.</summary>
    public static Rule<BoardAnalysis> BoreFitsShaft { get; } = new(
        "fit.bore", "motor_pulley.bore", "The motor pulley's bore is the motor shaft's diameter.",
        "A smaller bore does not go on; a larger one runs out of true and loads the key on its edge. Equal means within 0.06 mm, more than an H7/h6 fit allows.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var bore = needs.Read(parts.MotorPulley.Bore);
            var shaft = needs.Read(parts.Motor.ShaftDiameter);
            if (needs.Unmet)
                return null;
            var over = bore - shaft;
            var (value, limit) = (Amount.Create(bore, "mm"), Amount.Create(shaft, "mm"));
            if (Math.Abs(over.Si) <= SameBore.Si)
                return [BoreFitsShaft!.Found(Level.Fine, $"Bore {bore:0.00 mm} on a shaft of {shaft:0.00 mm}.", value: value, limit: limit)];
            return over.Si < 0
                ? [BoreFitsShaft!.Found(Level.Stop, $"The bore of {bore:0.00 mm} does not go on a shaft of {shaft:0.00 mm}; {-over:0.00 mm} are missing.", $"Take a pulley with a {shaft:0.0 mm} bore, or have this one bored and broached to {shaft:0.0 mm} H7.", value, limit)]
                : [BoreFitsShaft!.Found(Level.Stop, $"The bore of {bore:0.00 mm} is {over:0.00 mm} larger than the shaft of {shaft:0.00 mm}: the pulley would run out of true.", $"Take a pulley with a {shaft:0.0 mm} bore, or a motor with a {bore:0.0 mm} shaft; a sleeve has no keyway and does not serve.", value, limit)];
        });

    /// <summary>The key fits the pulley's keyway.</summary>
    public static Rule<BoardAnalysis> KeyFitsKeyway { get; } = new(
        "fit.key_width", "motor_pulley.keyway_width", "The motor's key fits the pulley's keyway.",
        "A key that is narrower than its keyway hammers at every change from drive to brake; a wider one does not go in. Widths are compared to 0.06 mm.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!e.Board.Parts.Drive.TurnsBelts(needs) || parts.MotorPulley.Fixing is { IsKnown: true, Value: Fixing.SetScrew })
                return null;
            var way = needs.Read(parts.MotorPulley.KeywayWidth);
            var key = needs.Read(parts.Motor.KeyWidth);
            if (needs.Unmet)
                return null;
            var over = way - key;
            var (value, limit) = (Amount.Create(key, "mm"), Amount.Create(way, "mm"));
            return Math.Abs(over.Si) <= SameBore.Si
                ? [KeyFitsKeyway!.Found(Level.Fine, $"Key and keyway are both {key:0.0 mm} wide.", value: value, limit: limit)]
                : over.Si < 0
                    ? [KeyFitsKeyway!.Found(Level.Stop, $"The key is {key:0.0 mm} wide, the keyway only {way:0.0 mm}.", $"Have the keyway broached to {key:0.0 mm}, or take a pulley with a {key:0.0 mm} keyway.", value, limit)]
                    : [KeyFitsKeyway!.Found(Level.Stop, $"The key is {key:0.0 mm} wide in a keyway of {way:0.0 mm}: {over:0.0 mm} of play hammers at every brake.", $"Take a pulley with a {key:0.0 mm} keyway; a stepped key of {key:0.0 mm} to {way:0.0 mm} is the way out if the shaft's slot allows.", value, limit)];
        });

    /// <summary>Belt and pulleys have the same teeth.</summary>
    public static Rule<BoardAnalysis> ToothProfilesMatch { get; } = new(
        "fit.belt_profile", "belt.profile", "Belt and both pulleys have the same tooth profile.",
        "At a pitch of 3 mm and 5 mm the round-toothed profiles do not run in each other's pulleys. The names are compared.",
        Sources.SdpSiTimingBelts,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var belt = needs.Read(parts.Belt.Profile);
            (string Name, string? Profile)[] pulleys =
                [("motor pulley", needs.Read(parts.MotorPulley.Profile)), ("wheel pulley", needs.Read(parts.WheelPulley.Profile))];
            if (needs.Unmet)
                return null;
            // A profile has several spellings, and not all differ by hyphens alone.
            var odd = pulleys.Where(p => !Same(ToothProfile.Parse(p.Profile!)?.Name ?? p.Profile!, ToothProfile.Parse(belt)?.Name ?? belt))
                .ToArray();
            return odd.Length == 0
                ? [ToothProfilesMatch!.Found(Level.Fine, $"Belt and pulleys are all {belt}.")]
                : odd.Select(p => ToothProfilesMatch!.Found(Level.Stop, $"The belt is {belt}, the {p.Name} is {p.Profile}.", $"Take a {p.Name} cut {belt}, or a belt and its other pulley in {p.Profile}."));
        });

    /// <summary>The belt is no wider than the pulleys' faces.</summary>
    public static Rule<BoardAnalysis> BeltFitsFaces { get; } = new(
        "fit.belt_width", "belt.width", "The belt is no wider than the faces of both pulleys.",
        "A belt wider than the face rides up on the flanges. Width is compared with the face between the flanges.",
        Sources.Geometry,
        (e, needs) =>
        {
            var parts = e.Board.Parts;
            if (!e.Board.Parts.Drive.TurnsBelts(needs))
                return null;
            var belt = needs.Read(parts.Belt.Width);
            (string Name, Length Face)[] pulleys =
                [("motor pulley", needs.Read(parts.MotorPulley.FaceWidth)), ("wheel pulley", needs.Read(parts.WheelPulley.FaceWidth))];
            if (needs.Unmet)
                return null;
            var narrow = pulleys.Where(p => p.Face < belt).ToArray();
            var least = pulleys.MinBy(p => p.Face.Si);
            return narrow.Length == 0
                ? [BeltFitsFaces!.Found(Level.Fine, $"The belt of {belt:0.0 mm} has {least.Face - belt:0.0 mm} to spare on the {least.Name}.", value: Amount.Create(belt, "mm"), limit: Amount.Create(least.Face, "mm"))]
                : narrow.Select(p => BeltFitsFaces!.Found(Level.Stop, $"The belt is {belt:0.0 mm} wide, the {p.Name}'s face only {p.Face:0.0 mm}.",
                    $"Take a belt of at most {p.Face:0.0 mm}, or a {p.Name} with a face of at least {belt + Length.FromMillimetres(1):0.0 mm}.", Amount.Create(belt, "mm"), Amount.Create(p.Face, "mm")));
        });

    /// <summary>Every rule about interfaces.</summary>
    public static IReadOnlyList<Rule<BoardAnalysis>> All { get; } =
        [MountGripsHanger, PulleyGripsCore, FrontTruckBoltsOn, RearTruckBoltsOn, BoltCirclesMatch, BearingsFitAxles, BoreFitsShaft,
        KeyFitsKeyway, ToothProfilesMatch, BeltFitsFaces, ReceiverPlugsIn];

    internal static bool Same(string a, string b) => TradeName.Same(a, b);

    static bool IsThinner(string bolt, string other) =>
        BoltThread.Parse(bolt) is { } one && BoltThread.Parse(other) is { } two && one.Diameter < two.Diameter;

    static Rule<BoardAnalysis> Names(
        string id, string where, string claim, string why, Func<BoardAnalysis, Needs, bool> applies,
        Func<BoardAnalysis, Known<string>> mine, Func<BoardAnalysis, Known<string>> theirs, string my, string their)
    {
        Rule<BoardAnalysis>? rule = null;
        rule = new(id, where, claim, why, Sources.MakersSheet, (e, needs) =>
        {
            if (!applies(e, needs))
                return null;
            var (a, b) = (needs.Read(mine(e)), needs.Read(theirs(e)));
            if (needs.Unmet)
                return null;
            return Same(a, b)
                ? [rule!.Found(Level.Fine, $"Both are \u201c{b}\u201d.")]
                : [rule!.Found(Level.Stop, $"The {my} is made for \u201c{a}\u201d, the {their} has \u201c{b}\u201d.", $"Take a {my} made for \u201c{b}\u201d, or a {their} with \u201c{a}\u201d.")];
        });
        return rule;
    }
}
