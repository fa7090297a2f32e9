using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Tests.UsualValues;

/// <summary>A board as its parts really are, and the same board as listings print it.</summary>
/// <param name="Real">Every entry, as it really is.</param>
/// <param name="Listed">What listings print of it, and what the builder decides.</param>
sealed record ListingBoard(Board Real, Board Listed);

/// <summary>Boards drawn from tables of parts and from ranges of the road, never from the spread of a usual value.</summary>
/// <remarks>
/// Motors: the component set and the makers' nominal values that the handbook lists. Cells: three measured ones. Rolling, drag area, belt
/// and small masses: uniform over the ranges that the handbook's road page and common practice give.
/// </remarks>
static class ListingBoards
{
    // Speed constant, mΩ between leads, A at 10 V, kg, pole pairs; handbook, usual values, section 1, data Q1.
    static readonly (double Kv, double Milliohms, double Amperes, double Kilograms, int Pairs)[] DroneMotors =
    [
        (550, 31, 1.1, 0.218, 7), (720, 20, 1.6, 0.339, 7), (850, 14, 2.0, 0.221, 7), (580, 18, 1.9, 0.298, 7), (250, 76, 1.0, 0.304, 7),
        (500, 21, 2.0, 0.305, 7), (560, 16, 2.4, 0.300, 7), (250, 68, 1.0, 0.350, 7), (540, 14, 2.6, 0.355, 7), (230, 60, 1.4, 0.408, 7),
        (300, 32, 1.8, 0.405, 7), (450, 17, 2.5, 0.408, 7), (400, 78, 0.3, 0.245, 7), (425, 17, 1.2, 0.425, 5), (295, 18, 1.1, 0.695, 5),
        (455, 10, 2.2, 0.700, 5), (535, 9, 2.4, 0.560, 5), (400, 82, 1.2, 0.222, 7), (120, 80, 1.5, 0.772, 7), (280, 71, 0.5, 0.317, 7),
        (420, 33, 0.9, 0.296, 7), (490, 21, 1.1, 0.299, 7),
    ];

    // Speed constant, µH and mΩ of a phase, pole pairs, kg; the same, data Q2.
    static readonly (double Kv, double Microhenries, double Milliohms, int Pairs, double Kilograms)[] WoundMotors =
    [
        (150, 24, 39, 7, 0.890), (270, 16, 39, 7, 0.420), (330, 23, 37, 7, 0.230), (100, 9.9, 24, 20, 0.840), (90, 16.5, 25.5, 21, 0.731),
        (330, 15, 25, 7, 0.193), (150, 20, 43, 21, 0.273),
    ];

    // Exponent of the drag torque on speed in 27 families of motors; the same.
    static readonly double[] Exponents =
    [
        0.34, 0.77, 0.51, 0.55, 0.39, 0.37, 0.48, 0.41, 0.49, 0.37, 0.09, 0.24, -0.14, 0, 0.49, 0, 1.51, 0.60, 0.08, 0.07, 0, -1.18, -1.18,
        -0.24, 0.41, 0.19, 0.19,
    ];

    static readonly double[] Charges = [0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

    // Printed and measured capacity, rated current, mΩ at one second, half charge and -10, 0, 10, 25 °C, seconds of the tail, rest voltage:
    // LG HG2 (Kollmeyer 2020), LG M50 (Widanage 2021), and the rest voltage of a Sony VTC6 (Engelmann 2022), whose resistance is drawn
    // between the others' by the scatter of thirteen cells.
    static readonly (double Printed, double Measured, double Amperes, double[] Milliohms, double Tail, double[] Volts)[] Cells =
    [
        (3.0, 2.75, 20, [73, 43, 29.8, 20.4], 612,
            [2.853, 3.027, 3.184, 3.306, 3.47, 3.569, 3.657, 3.733, 3.827, 3.929, 4.024, 4.086, 4.186]),
        (5.0, 4.85, 7.3, [68, 44.7, 34.7, 30.9], 1080,
            [2.872, 3.028, 3.2, 3.324, 3.465, 3.569, 3.631, 3.693, 3.806, 3.907, 4.001, 4.085, 4.175]),
        (3.0, 3.0, 15, [60, 42, 30.5, 24], 660,
            [2.535, 2.921, 3.133, 3.268, 3.413, 3.559, 3.661, 3.753, 3.839, 3.923, 4.037, 4.091, 4.175]),
    ];

    // What listings print of each part.
    static readonly Dictionary<string, string> Printed = new(StringComparer.Ordinal)
    {
        ["deck"] = "mass length width thickness mounting wheelbase underside_flat_length underside_flat_width tail_overhang hole_pattern",
        ["front_truck"] = "mass hanger_width axle_diameter axle_overhang height kingpin lean_stop hole_pattern",
        ["rear_truck"] = "mass hanger_width axle_diameter axle_overhang height kingpin lean_stop hole_pattern hanger_profile",
        ["wheels"] = "count mass diameter width core durometer bearing",
        ["drive"] = "kind driven motors placement mount_angle",
        ["mount"] = "hanger_profile bolt_circle bolt bolt_count angles",
        ["motor"] = "mass kv power_rating line_resistance pole_pairs phase_current_peak can_diameter can_length shaft_diameter shaft_length bolt_circle bolt sensor lead_plug",
        ["motor_pulley"] = "profile teeth bore keyway_width face_width length fixing",
        ["wheel_pulley"] = "profile teeth face_width core",
        ["belt"] = "profile length width",
        ["controller"] = "mass motors voltage_min voltage_max phase_current_peak phase_current_continuous pack_current length width height pack_plug motor_plug remote_port",
        ["cell"] = "format mass capacity voltage_nominal voltage_full voltage_empty discharge_current charge_current diameter length",
        ["pack"] = "series parallel plug",
        ["charger"] = "voltage current",
        ["remote"] = "port",
        ["box"] = "inner_length inner_width inner_depth wall flange_width gasket_thickness",
    };

    /// <summary>A board of the tables.</summary>
    public static ListingBoard Draw(Random random)
    {
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        double Normal() => Sqrt(-2 * Log(1 - random.NextDouble())) * Cos(2 * PI * random.NextDouble());
        T One<T>(T[] of) => of[random.Next(of.Length)];
        string Text(double value, string unit) => FormattableString.Invariant($"{value:G7} {unit}").TrimEnd();

        // The motor: one of either table, its other half from a row of the other.
        double kv, ohms, kilograms, microhenries, amperes;
        int pairs;
        if (random.Next(2) == 0)
        {
            // Faster motors are not geared down by one belt.
            var row = One([.. DroneMotors.Where(m => m.Kv <= 330)]);
            (kv, ohms, amperes, kilograms, pairs) = (row.Kv, row.Milliohms, row.Amperes, row.Kilograms, row.Pairs);
            var like = One(WoundMotors[..3]);
            microhenries = like.Microhenries * Pow(like.Kv / kv, 2) * like.Kilograms / kilograms * like.Pairs / pairs;
        }
        else
        {
            var row = One(WoundMotors);
            (kv, ohms, microhenries, pairs, kilograms) = (row.Kv, 2 * row.Milliohms, row.Microhenries, row.Pairs, row.Kilograms);
            var like = One(DroneMotors);
            // Drag torque for each kilogram; flat motors with many poles drag two to three times as much.
            amperes = like.Amperes / like.Kv * kv / like.Kilograms * kilograms * (pairs > 10 ? Between(1, 3) : 1);
        }

        var exponent = One(Exponents);
        var cell = One(Cells);
        var rider = Between(55, 100);
        var series = random.Next(10, 14);
        var parallel = cell.Printed > 4 ? random.Next(2, 5) : random.Next(3, 7);
        var upright = random.Next(2) == 0;
        var smooth = random.Next(2) == 0;
        var shore = One([75, 78, 80, 83]);
        var diameter = Between(85, 110);
        var air = Between(5, 30);
        // Teeth for 35 to 55 km/h unloaded at half charge.
        var ratio = kv * series * 3.7 * 60 * PI * diameter * 1e-6 / Between(40, 60);
        var small = ratio > 3 ? 12 : 16;
        var large = Max(small, (int)Round(ratio * small));
        var peak = Between(50, 90);
        var modulus = (double hardness) => (56 + 7.62336 * hardness) / (254 - 2.54 * hardness);
        var newtons = 9.81 * (rider + 15) / 4;
        var rolling = Between(0.012, 0.020) * Pow(97 / diameter, 0.7) * Pow(newtons / 240, 0.4) * (1 - Between(0.007, 0.017) * (air - 20))
            * (smooth ? Sqrt(modulus(78) / modulus(shore)) : Between(1.3, 1.9));
        var scatter = cell.Volts[0] < 2.7 ? Exp(0.23 * Normal()) : 1;
        double Off(double part) => 1 + Between(-part, part);

        // What is printed, and what the builder decides.
        (string, string)[] both =
        [
            ("brief.rider_mass", Text(rider, "kg")), ("brief.gear_mass", Text(Between(3, 8), "kg")), ("brief.stance", upright ? "upright" : "crouched"),
            ("brief.cruise_speed", Text(Between(18, 30), "km/h")), ("brief.climb_speed", Text(Between(10, 15), "km/h")),
            ("brief.temperature", Text(air, "°C")), ("brief.surface", smooth ? "smooth asphalt" : "rough asphalt"),
            ("wheels.durometer", $"{shore}A"), ("motor.pole_pairs", $"{pairs}"), ("motor_pulley.teeth", $"{small}"), ("wheel_pulley.teeth", $"{large}"),
            ("pack.series", $"{series}"), ("pack.parallel", $"{parallel}"), ("controller.phase_current_peak", Text(peak, "A")),
            ("cell.discharge_current", Text(cell.Amperes, "A")), ("limits.phase_current", Text(peak * Between(0.5, 0.9), "A")),
            ("limits.pack_current", Text(Min(cell.Amperes * parallel, Between(30, 60)), "A")),
            ("limits.taper_start", "3.2 V"), ("limits.taper_end", "2.9 V"), ("charger.current", Text(Between(2, 5), "A")),
            ("charger.voltage", Text(4.2 * series, "V")), ("cell.voltage_full", "4.2 V"), ("cell.voltage_empty", "2.5 V"), ("cell.voltage_nominal", "3.6 V"),
            ("cell.format", cell.Printed > 4 ? "21700" : "18650"), ("belt.length", "280 mm"),
        ];
        (string Key, double Value, string Unit, double Part)[] printed =
        [
            ("motor.kv", kv, "rpm/V", 0.08), ("motor.mass", kilograms, "kg", 0.03), ("wheels.diameter", diameter, "mm", 0.006),
            ("deck.mass", Between(1.6, 2.8), "kg", 0.04), ("front_truck.mass", Between(0.35, 0.55), "kg", 0.03), ("rear_truck.mass", Between(0.35, 0.6), "kg", 0.03),
            ("wheels.mass", Between(0.2, 0.45), "kg", 0.03), ("controller.mass", Between(0.15, 0.5), "kg", 0.03), ("cell.mass", cell.Printed > 4 ? 0.0695 : 0.0465, "kg", 0.03),
        ];
        // What is not printed, or is printed as another value.
        (string, string)[] hidden =
        [
            .. printed.Select(p => (p.Key, Text(p.Value * Off(p.Part), p.Unit))),
            ("cell.capacity", Text(cell.Measured * Off(0.015), "Ah")), ("motor.phase_inductance", Text(microhenries, "uH")),
            ("motor.rotor_inertia", Text(One([0.233, 0.279, 0.238]) * kilograms * 0.063 * 0.063 / 4, "kg m2")),
            ("wheels.inertia", Text(Between(0.5, 0.7) * 0.3 * diameter * diameter / 4 * 1e-6, "kg m2")),
            ("brief.drag_area", Text(
                0.65 * (1 + 0.077 * Normal()) * Pow(rider / 80, 0.425) * Between(0.83, 1.1) * (upright ? 1 : Between(0.65, 0.85)), "m2")),
            ("drive.efficiency", Text(Between(0.90, 0.975), "")), ("drive.weight_share", Text(Between(40, 60), "%")),
            ("controller.bridge_resistance", Text(Between(0.08, 0.3) / peak * 1000, "mohm")), ("controller.switching_time", Text(Between(50, 200), "ns")),
            ("controller.switching_frequency", Text(Between(15, 30), "kHz")), ("controller.idle_power", Text(Between(1.5, 5), "W")),
            ("pack.links", Text(series * Between(0.8, 2) / parallel + Between(0.8, 3), "mohm")),
            ("pack.mass_extra", Text(series * parallel * (cell.Printed > 4 ? 0.0695 : 0.0465) * Between(0.07, 0.2), "kg")),
            ("cell.charge_tail", Text(cell.Tail * (1 + (25 - air) / 25) * Off(0.15), "s")), ("charger.end_current", Text(Between(0.1, 0.5), "A")),
            ("mount.mass", Text(Between(0.1, 0.28), "kg")), ("motor_pulley.mass", Text(Disc(small) * 7.85 * Between(0.5, 0.95), "g")),
                ("wheel_pulley.mass", Text(Disc(large) * 2.7 * Between(0.45, 0.9), "g")),
            ("pack.protection.mass", Text(Between(50, 140), "g")), ("remote.mass", Text(Between(80, 180), "g")),
                ("box.mass", Text(Shell(Boards.Tern.Parts.Box) * Between(0.95, 1.8), "kg")),
            ("fuse.mass", Text(Between(10, 40), "g")),
        ];
        var bare = Boards.Tern.With([("motor.phase_resistance", ""), ("controller.electrical_speed_limit", ""), ("wheels.rolling_resistance", ""), .. both]);
        var listed = Stripped(bare.With(
            [.. printed.Select(p => (p.Key, Text(p.Value, p.Unit))), ("cell.capacity", Text(cell.Printed, "Ah")),
            ("motor.line_resistance", random.Next(2) == 0 ? "" : Text(ohms, "mohm")),
            .. random.Next(2) == 0 ? [("wheels.durometer", "")] : Array.Empty<(string, string)>()]));
        var strayed = ohms * Exp(0.14 * Normal());
        var real = bare.With([.. hidden, ("motor.line_resistance", Text(strayed, "mohm"))]);
        var current = (double volts) => amperes * Pow(volts / 10, exponent);
        return new(
            real with
            {
                Parts = real.Parts with
                {
                    Motor = real.Parts.Motor with
                    {
                        NoLoadCurrent = default,
                        NoLoadVoltage = default,
                        NoLoadTests = new Curve<Voltage, Current>([(10, current(10)), (25, current(25)), (40, current(40))]),
                    },
                    Wheels = real.Parts.Wheels with
                    {
                        RollingResistance = new RollingTable(
                        Number.FromValue(rolling), new Dictionary<Surface, Number>())
                    },
                    Cell = real.Parts.Cell with
                    {
                        RestVoltage = new Curve<Fraction, Voltage>(Charges.Zip(cell.Volts)),
                        Resistance = ResistanceOf(cell.Milliohms, scatter),
                        Polarisation = new(),
                    },
                },
            },
            listed);
    }

    // A toothed disc of 5 mm pitch and 21 mm width, cm³.
    static double Disc(int teeth) => PI / 4 * Pow(0.5 * teeth / PI, 2) * 2.1;

    // Walls, floor and flange of a box, dm³.
    static double Shell(Box box) => 1000 * box.Wall.Value.Metres
        * (box.InnerLength.Value.Metres * box.InnerWidth.Value.Metres + 2 * (box.InnerLength.Value.Metres + box.InnerWidth.Value.Metres)
        * (box.InnerDepth.Value.Metres + box.FlangeWidth.Value.Metres));

    static ResistanceTable ResistanceOf(double[] milliohms, double times)
    {
        (double Charge, double Times)[] over = [(0.1, 1.25), (0.2, 1.06), (0.5, 1), (0.9, 1.05), (1, 1.15)];
        double[] celsius = [-10, 0, 10, 25];
        return new(
            [.. over.Select(o => Fraction.FromPercent(100 * o.Charge))], [.. celsius.Select(Temperature.FromCelsius)],
            [.. over.Select(o => (IReadOnlyList<Resistance>)[.. milliohms.Select(m => Resistance.FromOhms(1e-3 * m * o.Times * times))])]);
    }

    /// <summary>A board without all that listings do not print.</summary>
    public static Board Stripped(Board board)
    {
        var parts = (Fitted)board.Parts.With(Entry.ListEntries(typeof(Fitted))
            .Where(place => Printed.ContainsKey(place.Key))
            .Select(place => (place, (object)Only((Sheet)place.Read(board.Parts), Printed[place.Key].Split(' ')))));
        return (board with
        {
            Brief = board.Brief with { DragArea = default, Altitude = default, Headwind = default },
            Parts = parts with
            {
                Fittings = [.. parts.Fittings.Select(f => f with { Mass = default })],
                Fuse = parts.Fuse with { Mass = default }
            },
        }).WithNames();
    }

    static Sheet Only(Sheet sheet, string[] keys)
    {
        var blank = (Sheet)Activator.CreateInstance(sheet.GetType())!;
        return sheet.With(Entry.ListEntries(sheet.GetType())
            .Where(e => !keys.Contains(e.Key) && e.Key is not ("name" or "protection"))
            .Select(e => (e, e.Read(blank))));
    }
}
