using Boardwright.Findings;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.UsualValues;

/// <summary>Usual values of wheels, rider and road.</summary>
static class RoadValues
{
    public static IReadOnlyList<UsualValue> All { get; } =
    [
        UsualValue.Table(
            "wheels.rolling_resistance", "wheels.diameter, wheels.durometer, wheels.count, brief.rider_mass, brief.gear_mass, brief.surface, brief.temperature",
            "warm urethane on smooth asphalt 0.016 (97 mm/D)^0.7 (N/240 N)^0.4 √(E(78A)/E), less 1.2 % for each kelvin above 20 °C; rough × 1.55, paving × 2.1, gravel × 3.0 whatever the hardness; tyres of 140 mm and more 0.023, rough × 1.15, paving × 1.4, gravel × 1.7",
            1.25, "×/÷ 1.35 where the hardness is not known, 1.3 rough, 1.4 paving, 1.6 gravel, 1.45 tyres; cold wheels roll half again as hard for half an hour; not thane of unknown make below 70 mm",
            Sources.RollingPractice,
            b => b.Parts.Wheels.RollingResistance,
            (b, v) => b with { Parts = b.Parts with { Wheels = b.Parts.Wheels with { RollingResistance = v } } },
            Rolling),
        UsualValue.Quantity(
            "wheels.inertia", "wheels.mass, wheels.diameter", "0.58 m D²/4; tyres of 140 mm and more 0.65 m D²/4", 1.08, "×/÷ 1.12 for tyres",
            Sources.Geometry,
            b => b.Parts.Wheels.Inertia,
            (b, v) => b with { Parts = b.Parts with { Wheels = b.Parts.Wheels with { Inertia = v } } },
            b => b.Parts.Wheels is { Mass: { IsKnown: true, Value.Kilograms: var mass }, Diameter: { IsKnown: true, Value: var diameter } }
                ? InertiaOf(mass, diameter, b.Parts.Wheels.IsTyre(new Needs())) : null),
        UsualValue.Quantity(
            "brief.drag_area", "brief.stance, brief.rider_mass",
            "c · 1.955 m² (m/80 kg)^0.425: c 0.307 upright, 0.230 crouched, 0.154 tucked, 0.270 where the stance is not known", 1.13,
            "×/÷ 1.16 crouched, 1.22 tucked, 1.25 unknown; loose clothes up to 30 % more; a rider of 1.75 m", Sources.StandingDrag,
            b => b.Brief.DragArea, (b, v) => b with { Brief = b.Brief with { DragArea = v } },
            b => b.Brief.RiderMass is { IsKnown: true } rider ? DragArea(rider.Value, b.Brief.Stance) : null),
        UsualValue.Quantity(
            "drive.weight_share", "", "half of the weight on the driven axle", 1.1, "not for wobble; not for the limit of a brake: stand on two scales",
            Sources.CommonPractice,
            b => b.Parts.Drive.WeightShare, (b, v) => b with { Parts = b.Parts with { Drive = b.Parts.Drive with { WeightShare = v } } },
            _ => new(Fraction.FromPercent(50))),
        UsualValue.Quantity(
            "drive.efficiency", "drive.kind", "0.94 for a belt, 0.95 for gears: loss ×/÷ 1.5", 1.026,
            "a belt that is straight, clean and rightly taut", Sources.BeltLoss,
            b => b.Parts.Drive.Efficiency, (b, v) => b with { Parts = b.Parts with { Drive = b.Parts.Drive with { Efficiency = v } } },
            b => b.Parts.Drive.IsBelt ? new(Number.FromValue(0.94))
                : b.Parts.Drive.IsGear && !b.Parts.Gearbox.Efficiency.IsKnown ? new(Number.FromValue(0.95)) : null),
    ];

    static UsualEstimate<Inertia> InertiaOf(double kilograms, Length diameter, bool isTyre) =>
        new(Inertia.FromKilogramSquareMetres((isTyre ? 0.65 : 0.58) * kilograms * Pow(diameter.Metres, 2) / 4), isTyre ? 1.12 : null);

    static UsualEstimate<Area>? DragArea(Mass rider, Known<Stance> stance)
    {
        var (part, factor) = !stance.IsKnown ? (0.270, 1.25) : stance.Value switch
        {
            Stance.Tucked => (0.154, 1.22),
            Stance.Crouched => (0.230, 1.16),
            _ => (0.307, 1.13),
        };
        return new(Area.FromSquareMetres(part * 1.955 * Pow(rider.Kilograms / 80, 0.425)), factor);
    }

    static UsualEstimate<RollingTable>? Rolling(Board board)
    {
        var (wheels, brief) = (board.Parts.Wheels, board.Brief);
        if (!wheels.Diameter.IsKnown || !brief.RiderMass.IsKnown)
            return null;
        var surface = brief.Surface.Or(Surface.SmoothAsphalt);
        if (wheels.IsTyre(new Needs()))
            return new(Table(0.023, 0.023, 1.15, 1.4, 1.7), 1.45);
        const double BoardKilograms = 10;
        var newtons = 9.81 * (brief.RiderMass.Value.Kilograms + brief.GearMass.Or(default).Kilograms + BoardKilograms) / wheels.Count.Or(4);
        var warmth = brief.Temperature.IsKnown ? Clamp(1 - 0.012 * (brief.Temperature.Value.Celsius - 20), 0.7, 1.5) : 1;
        var soft = 0.016 * Pow(97 / wheels.Diameter.Value.Millimetres, 0.7) * Pow(newtons / 240, 0.4) * warmth;
        var shore = ShoreA(wheels.Durometer);
        var smooth = shore is { } hardness ? soft * Sqrt(Modulus(78) / Modulus(hardness)) : soft;
        return new(Table(smooth, soft, 1.55, 2.1, 3.0), surface switch
        {
            Surface.RoughAsphalt => 1.3,
            Surface.Paving => 1.4,
            Surface.PackedGravel => 1.6,
            _ => shore is null ? 1.35 : 1.25,
        });
    }

    static RollingTable Table(double smooth, double level, double rough, double paving, double gravel) =>
        new(null, new Dictionary<Surface, Number>
        {
            [Surface.SmoothAsphalt] = Number.FromValue(smooth),
            [Surface.RoughAsphalt] = Number.FromValue(level * rough),
            [Surface.Paving] = Number.FromValue(level * paving),
            [Surface.PackedGravel] = Number.FromValue(level * gravel),
        });

    /// <summary>Young's modulus of an elastomer by its hardness on Shore's A scale, MPa.</summary>
    /// <source cref="Sources.Gent"/>
    internal static double Modulus(double shoreA) => 0.0981 * (56 + 7.62336 * shoreA) / (0.137505 * (254 - 2.54 * shoreA));

    static double? ShoreA(Known<string> durometer)
    {
        var text = durometer.Or("").Trim().TrimEnd('A', 'a').Trim();
        return double.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var value) && value is >= 60 and <= 97 ? value
            : null;
    }
}
