using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.UsualValues;

/// <summary>Usual masses of small parts, and how far a deck bends.</summary>
static class BuildValues
{
    const double Wood = 700;
    const double Steel = 7850;
    const double Aluminium = 2700;

    public static IReadOnlyList<UsualValue> All { get; } =
    [
        UsualValue.Quantity(
            "deck.bend_per_kg", "deck.wheelbase, deck.width, deck.thickness, deck.material",
            "g L³/(48 E · 1.3 w t³/12), L the wheelbase; E 9 GPa maple and where nothing is known, 8.5 birch, 13 bamboo with glass, 25 carbon", 1.3,
            "×/÷ 1.5 carbon and where the material is not known; not the clearance under the box: load it and measure", Sources.DeckBend,
            b => b.Parts.Deck.BendPerKg, (b, v) => WithDeck(b, d => d with { BendPerKg = v }), b => Bend(b.Parts.Deck)),
        Mass(
            "deck.mass", "deck.length, deck.width, deck.thickness", "700 kg/m³ · 0.85 L w t", 1.12, p => p.Deck,
            (p, v) => p with { Deck = p.Deck with { Mass = v } },
            p => p.Deck is { Length: { IsKnown: true, Value.Metres: var l }, Width: { IsKnown: true, Value.Metres: var w },
            Thickness: { IsKnown: true, Value.Metres: var t } }
                ? Wood * 0.85 * l * w * t : null),
        Mass(
            "mount.mass", "", "170 g", 1.4, p => p.Mount, (p, v) => p with { Mount = p.Mount with { Mass = v } }, _ => 0.170),
        Mass(
            "motor_pulley.mass", "motor_pulley.profile, teeth, length and bore", "7850 kg/m³ · 0.9 of the tip disc less the bore", 1.25, p => p.MotorPulley,
            (p, v) => p with { MotorPulley = p.MotorPulley with { Mass = v } },
            p => Disc(p.MotorPulley) is { } disc ? 0.9 * Steel * (disc.Tip - disc.Bore) : null),
        Mass(
            "wheel_pulley.mass", "wheel_pulley.profile, teeth and face_width", "2700 kg/m³ · 0.6 of the pitch disc: pockets and the wheel's core", 1.3, p => p.WheelPulley,
            (p, v) => p with { WheelPulley = p.WheelPulley with { Mass = v } },
            p => Disc(p.WheelPulley) is { } disc ? 0.6 * Aluminium * disc.Pitch : null),
        Mass(
            "pack.protection.mass", "pack.protection.discharge_current", "25 g and 1 g for each ampere", 1.4, p => p.Pack.Protection,
            (p, v) => p with { Pack = p.Pack with { Protection = p.Pack.Protection with { Mass = v } } },
            p => 0.025 + 0.001 * p.Pack.Protection.DischargeCurrent.Or(default).Amperes),
        Mass("remote.mass", "", "120 g", 1.4, p => p.Remote, (p, v) => p with { Remote = p.Remote with { Mass = v } }, _ => 0.120),
        Mass("fuse.mass", "", "20 g with its holder", 1.4, p => p.Fuse, (p, v) => p with { Fuse = p.Fuse with { Mass = v } }, _ => 0.020),
        Mass(
            "box.mass", "box.inner_length, inner_width, inner_depth, wall and flange_width", "1.1 g/cm³ · wall · surface without the lid", 1.4, p => p.Box,
            (p, v) => p with { Box = p.Box with { Mass = v } }, p => Shell(p.Box)),
        UsualValue.OfList(
            "fittings.mass", "", "20 g each: gland, socket, switch", 1.4, "", Sources.CommonPractice, (stated, filled) =>
            {
                var fittings = stated.Parts.Fittings;
                return fittings.All(f => f.Mass.IsKnown) ? filled : filled with
                {
                    Parts = filled.Parts with
                    {
                        Fittings = [.. fittings.Select(
                            f => f.Mass.IsKnown ? f : f with { Mass = Usual(Units.Mass.FromKilograms(0.020), 1.4, f.Mass.Key) })],
                    },
                };
            }),
    ];

    static UsualEstimate<BendPerMass>? Bend(Deck deck)
    {
        if (!deck.Wheelbase.IsKnown || !deck.Width.IsKnown || !deck.Thickness.IsKnown)
            return null;
        var (span, width, thickness) = (deck.Wheelbase.Value.Items[0].Metres, deck.Width.Value.Metres, deck.Thickness.Value.Metres);
        var material = deck.Material.Or("");
        bool Is(string name) => material.Contains(name, StringComparison.OrdinalIgnoreCase);
        var (gigapascals, factor) = Is("carbon") ? (25.0, 1.5) : Is("bamboo") ? (13, 1.3) : Is("birch") ? (8.5, 1.3) : Is("maple") ? (9, 1.3) : (9, 1.5);
        return new(
            BendPerMass.FromSi(9.81 * Pow(span, 3) / (48 * gigapascals * 1e9 * 1.3 * width * Pow(thickness, 3) / 12)), factor);
    }

    /// <summary>Volumes of a pulley's tip disc, its pitch disc and its bore, m³.</summary>
    static (double Tip, double Pitch, double Bore)? Disc(Pulley pulley)
    {
        var profile = pulley.Profile.IsKnown ? Drivetrains.ToothProfile.Parse(pulley.Profile.Value) : null;
        var width = pulley.Length.IsKnown ? pulley.Length : pulley.FaceWidth;
        if (profile is null || !pulley.Teeth.IsKnown || !width.IsKnown)
            return null;
        var pitch = profile.Pitch.Metres * pulley.Teeth.Value / PI;
        double Volume(double diameter) => PI / 4 * diameter * diameter * width.Value.Metres;
        return (Volume(pitch - 2 * profile.PitchLineDifferential.Metres), Volume(pitch), Volume(pulley.Bore.Or(default).Metres));
    }

    static double? Shell(Box box)
    {
        if (!box.InnerLength.IsKnown || !box.InnerWidth.IsKnown || !box.InnerDepth.IsKnown || !box.Wall.IsKnown)
            return null;
        var (length, width, depth) = (box.InnerLength.Value.Metres, box.InnerWidth.Value.Metres, box.InnerDepth.Value.Metres);
        var flange = 2 * (length + width) * box.FlangeWidth.Or(default).Metres;
        return 1100 * box.Wall.Value.Metres * (length * width + 2 * depth * (length + width) + flange);
    }

    static UsualValue Mass(
        string key, string inputs, string equation, double factor, Func<Fitted, Part> place, Func<Fitted, Known<Mass>, Fitted> with,
        Func<Fitted, double?> kilograms) =>
        UsualValue.Quantity(
            key, inputs, equation, factor, "", Sources.CommonPractice, b => place(b.Parts).Mass,
            (b, v) => b with { Parts = with(b.Parts, v) },
            b => place(b.Parts).IsChosen && kilograms(b.Parts) is { } mass ? new(Units.Mass.FromKilograms(mass)) : null);

    static Known<Mass> Usual(Mass mass, double factor, string key) => new(mass, mass.Si * Log(factor), Origin.Usual, key);

    static Board WithDeck(Board board, Func<Deck, Deck> change) =>
        board with { Parts = board.Parts with { Deck = change(board.Parts.Deck) } };
}
