using Boardwright.Drivetrains;
using Boardwright.Motors;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Wiring;
using static System.Math;

namespace Boardwright.Files.Boards;

/// <summary>Parts that go together, derived from what a builder answered: a place to begin, not a design. Lengths are in mm, currents in
/// A, masses in kg.</summary>
/// <remarks>
/// The drive is laid out so that the wheels turn half as fast again as at cruise with an average charge, the belt carries the phase
/// current with half as much to spare, and the motors stand clear of wheels and road. Currents are those that hill and top speed ask
/// for, and each part between cells and motors is chosen to carry them.
/// </remarks>
/// <source cref="Findings.Sources.CommonPractice"/>
public sealed record StartPlan
{
    const double Gear = 5, CellVolts = 3.6, LoadedCellVolts = 3.3, Modulation = 0.95, Efficiency = 0.85, DragArea = 0.6, AirDensity = 1.2;

    // The wheels in the air turn this much faster than at cruise, so that cruise is still held when the charge runs low.
    const double FreeOverCruise = 1.6;

    // Of the belt's pull, so that its rating is left with the service factor that makers recommend.
    const double BeltReserve = 1.6;
    const int MeshedTeeth = 6, LeastMotorTeeth = 15, MostMotorTeeth = 22;
    const double BeltWidthStep = 5, LeastBeltWidth = 15, MostBeltWidth = 25;
    const double CarriedByPlug = 45;

    // N m for each kilogram of motor, for a short time.
    const double PeakTorquePerKilogram = 4.7;

    static readonly int[] WheelPulleys = [28, 30, 32, 36, 40, 44, 48, 52, 56, 60, 62];
    static readonly double[] Fuses = [20, 25, 30, 40, 50, 60, 80, 100];
    static readonly double[] Protections = [20, 30, 40, 60, 80, 100];
    static readonly double[] Windows = [30, 45, 60, 75, 100];

    /// <summary>What was answered.</summary>
    public required StartAnswers Answers { get; init; }
    /// <summary>Speed on the hill, km/h.</summary>
    public double ClimbSpeed { get; private init; }
    /// <summary>Width of a wheel.</summary>
    public double WheelWidth { get; private init; }
    /// <summary>Mass of a wheel.</summary>
    public double WheelMass { get; private init; }
    /// <summary>Diameter of the motor's can.</summary>
    public int CanDiameter { get; private init; }
    /// <summary>Length of the motor's can.</summary>
    public int CanLength { get; private init; }
    /// <summary>Mass of a motor.</summary>
    public double MotorMass { get; private init; }
    /// <summary>Angle of the mount above the horizontal, degrees: small wheels keep a large can off the road only when it is
    /// lifted.</summary>
    public int MountAngle => Answers.Diameter.Millimetres is >= 80 and < 90 ? 5 : 0;
    /// <summary>Speed constant, rpm/V.</summary>
    public int Kv { get; private init; }
    /// <summary>Resistance between two leads, mΩ.</summary>
    public double LineMilliohms { get; private init; }
    /// <summary>Peak phase current of motor and controller.</summary>
    public double PhasePeak { get; private init; }
    /// <summary>Teeth of the motor pulley.</summary>
    public int MotorTeeth { get; private init; }
    /// <summary>Teeth of the wheel pulley.</summary>
    public int WheelTeeth { get; private init; }
    /// <summary>Teeth of the belt.</summary>
    public int BeltTeeth { get; private init; }
    /// <summary>Width of the belt.</summary>
    public double BeltWidth { get; private init; }
    /// <summary>Distance between motor shaft and axle.</summary>
    public double Centre { get; private init; }
    /// <summary>Phase current to set for each motor, driving and braking.</summary>
    public double PhaseCurrent { get; private init; }
    /// <summary>Pack current to set.</summary>
    public double PackCurrent { get; private init; }
    /// <summary>Braking pack current to set.</summary>
    public double RegenCurrent { get; private init; }
    /// <summary>Whether the cells are of the kind for high currents.</summary>
    public bool IsStrongCell { get; private init; }
    /// <summary>Current that a cell gives for ever.</summary>
    public double CellCurrent => IsStrongCell ? 30 : 15;
    /// <summary>Current that a cell may be charged with.</summary>
    public double CellCharge => IsStrongCell ? 8 : 5;
    /// <summary>Capacity of a cell, Ah.</summary>
    public double CellCapacity => IsStrongCell ? 4.2 : 5.0;
    /// <summary>Rating of the main fuse.</summary>
    public double Fuse { get; private init; }
    /// <summary>Continuous current of the protection.</summary>
    public double Protection { get; private init; }
    /// <summary>Greatest voltage of the controller.</summary>
    public double ControllerVolts { get; private init; }
    /// <summary>Current of the charger.</summary>
    public double ChargeCurrent { get; private init; }
    /// <summary>Gauge of the wire between pack and controller.</summary>
    public string PackWire { get; private init; } = "";
    /// <summary>Gauge of the motor leads.</summary>
    public string MotorWire { get; private init; } = "";
    /// <summary>Plug of the motor leads.</summary>
    public string MotorPlug { get; private init; } = "";
    /// <summary>Layers of cells in the pack.</summary>
    public int Layers { get; private init; }
    /// <summary>Length of the pack.</summary>
    public double PackLength { get; private init; }
    /// <summary>Height of the pack.</summary>
    public double PackHeight { get; private init; }
    /// <summary>Inner length of the box.</summary>
    public double BoxLength { get; private init; }
    /// <summary>Inner depth of the box.</summary>
    public double BoxDepth { get; private init; }
    /// <summary>Bolts of the box.</summary>
    public int BoxBolts { get; private init; }
    /// <summary>Flat of the deck's underside.</summary>
    public double Flat { get; private init; }
    /// <summary>Distance between the axles.</summary>
    public double Wheelbase { get; private init; }

    /// <summary>Derives the parts.</summary>
    public static StartPlan Derive(StartAnswers answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var plan = new StartPlan { Answers = answers };
        plan = plan.WithWheelsAndMotor();
        plan = plan.WithDrive();
        plan = plan.WithCurrents();
        return plan.WithBox();
    }

    double Radius => Answers.Diameter.Metres / 2;

    // Board with cells and motors, rider and what the rider wears.
    double Mass => Answers.Rider.Kilograms + Gear + 6 + 0.09 * Answers.Cells.Series * Answers.Cells.Parallel + 1.2 * Answers.Motors;

    /// <summary>Rolling resistance on the answered road, for the sums here; a guess.</summary>
    double Rolling => Answers.Wheels switch { WheelKind.Urethane => 0.016, WheelKind.Rubber => 0.028, _ => 0.022 }
        * Answers.Surface switch { Surface.SmoothAsphalt => 1, Surface.RoughAsphalt => 1.5, Surface.Paving => 1.9, _ => 2.6 };

    double RoadForce(double grade, double metresPerSecond) =>
        Mass * RoadLoad.Gravity * (Rolling + grade) + 0.5 * AirDensity * DragArea * metresPerSecond * metresPerSecond;

    StartPlan WithWheelsAndMotor()
    {
        var across = Answers.Diameter.Millimetres;
        var (width, mass) = Answers.Wheels switch
        {
            WheelKind.Urethane => (Round(0.6 * across), 0.26 * Pow(across / 100, 3)),
            WheelKind.Rubber => (50.0, 0.40 * Pow(across / 150, 2)),
            _ => (45.0, 0.65 * Pow(across / 175, 2)),
        };
        // The can stays 13 mm off the road.
        var (can, length, motor) = (across < 80, Answers.Motors, Answers.Rider.Kilograms > 75) switch
        {
            (true, _, _) => (50, 65, 0.42),
            (_, 1, true) => (63, 100, 1.2),
            (_, 2, false) => (63, 54, 0.6),
            _ => (63, 74, 0.85),
        };
        return this with
        {
            ClimbSpeed = Min(8, Round(Answers.Cruise.KilometresPerHour / 2)),
            WheelWidth = width,
            WheelMass = Round(mass, 2),
            CanDiameter = can,
            CanLength = length,
            MotorMass = motor,
        };
    }

    StartPlan WithDrive()
    {
        var profile = ToothProfile.Htd5M;
        // The wheel pulley with the belt on it stays 15 mm off the road.
        var largest = PI * 2 * (Radius * 1000 - 15) / profile.Pitch.Millimetres;
        var wheel = new PulleyGeometry(WheelPulleys.Last(teeth => teeth <= Max(largest, WheelPulleys[0])), profile);
        for (var teeth = LeastMotorTeeth; ; teeth++)
        {
            var motor = new PulleyGeometry(teeth, profile);
            // The flange of the motor pulley passes the wheel, and the can the hanger.
            var least = Max(Max(Radius * 1000 + motor.PitchDiameter.Millimetres / 2 + 7, CanDiameter / 2.0 + 28),
                (wheel.OutsideDiameter + motor.OutsideDiameter).Millimetres / 2 + 5);
            var path = profile.StockLengths.Select(stock => BeltPath.Fitting(stock.PitchLength, motor, wheel))
                .First(laid => laid is not null && laid.CentreDistance.Millimetres >= least)!;
            if (path.WholeTeethInMesh < MeshedTeeth && teeth < MostMotorTeeth)
                continue;
            var turns = Answers.Cruise.MetresPerSecond * FreeOverCruise / (2 * PI * Radius) * 60 * path.Ratio;
            var kv = turns / (Answers.Cells.Series * CellVolts * Modulation);
            var step = kv < 100 ? 5 : 10;
            var chosen = (int)Clamp(Ceiling(kv / step) * step, 60, 400);
            // What a motor of this mass is good for: torque for each root of a watt of heat.
            var goodness = 0.31 * Pow(MotorMass, 0.8);
            return this with
            {
                MotorTeeth = teeth,
                WheelTeeth = wheel.Teeth,
                BeltTeeth = (int)Round(path.PitchLength / profile.Pitch),
                Centre = path.CentreDistance.Millimetres,
                Kv = chosen,
                LineMilliohms = Round(1000 * Pow(1 / SpeedConstant.FromRpmPerVolt(chosen).RadiansPerSecondPerVolt / goodness, 2)),
            };
        }
    }

    StartPlan WithCurrents()
    {
        var cells = Answers.Cells;
        var (climb, speed) = (ClimbSpeed / 3.6, Answers.Cruise.MetresPerSecond);
        var uphill = RoadForce(Answers.Climb.Value, climb);
        // A hill with a third to spare, or a brisk start on the level.
        var force = Max(1.35 * uphill, Mass * (1.6 + RoadLoad.Gravity * Rolling));
        var (motor, wheel) = (new PulleyGeometry(MotorTeeth, ToothProfile.Htd5M), new PulleyGeometry(WheelTeeth, ToothProfile.Htd5M));
        var pull = force * Radius / (wheel.PitchDiameter.Metres / 2) / Answers.Motors / Modulation;
        var path = BeltPath.Fitting(BeltTeeth, motor, wheel)!;
        double Carried(double width) =>
            new BeltStrength(ToothProfile.Htd5M, Length.FromMillimetres(width)).AllowedPull(path).Newtons / BeltReserve;
        var belt = LeastBeltWidth;
        while (belt < MostBeltWidth && Carried(belt) < pull)
            belt += BeltWidthStep;
        var constant = new MotorConstants(SpeedConstant.FromRpmPerVolt(Kv), 7).NewtonMetresPerPeakAmpere;
        var peak = Ceiling(MotorMass * PeakTorquePerKilogram / constant / 5) * 5;
        var phase = Max(5, Floor(Min(Min(pull, Carried(belt)) * motor.PitchDiameter.Metres / 2 / constant, 0.85 * peak)));

        // Power at the pack for the hill and for a third more than cruise on the level.
        var watts = Max(uphill * climb, RoadForce(0, speed * 1.3) * speed * 1.3) / Efficiency;
        var needed = watts / (cells.Series * LoadedCellVolts) * 1.25;
        // Current back into the pack for a firm stop from cruise.
        var braking = Mass * 1.3 * speed * Efficiency / (cells.Series * 3.9);
        var strong = needed / cells.Parallel > 13 || braking / cells.Parallel > 4.5;
        var pack = Max(10, Floor(Min(Min(Max(needed, 20), CarriedByPlug), 0.9 * cells.Parallel * (strong ? 30 : 15))));
        var fuse = Fuses.First(rating => rating >= pack * 1.2);
        var chosen = this with { IsStrongCell = strong };
        return chosen with
        {
            BeltWidth = belt,
            PhaseCurrent = phase,
            PhasePeak = peak,
            PackCurrent = pack,
            RegenCurrent = Floor(Min(pack, cells.Parallel * chosen.CellCharge)),
            Fuse = fuse,
            Protection = Protections.First(rating => rating >= pack * 1.2),
            ControllerVolts = Windows.First(most => most >= cells.Series * 4.2 + 3),
            ChargeCurrent = cells.Parallel <= 2 ? 2 : 4,
            PackWire = GaugeFor(fuse * 1.1, 12),
            MotorWire = GaugeFor(phase / Sqrt(2) * 1.25, 14),
            MotorPlug = phase > 60 ? "bullet 5.5 mm" : "bullet 4 mm",
        };
    }

    StartPlan WithBox()
    {
        const double across = 21.2, wrap = 4;
        var cells = Answers.Cells.Series * Answers.Cells.Parallel;
        double LengthOf(int layers) => Ceiling(Ceiling(cells / (2.0 * layers)) * across + wrap);
        var layers = LengthOf(1) <= 300 ? 1 : LengthOf(2) <= 480 ? 2 : 3;
        var height = Ceiling(layers * across + wrap);
        // The controller behind the pack, and room for hands, fuse and fittings at both ends.
        var box = Ceiling((LengthOf(layers) + ControllerLength + 100) / 10) * 10;
        var outer = box + 29;
        return this with
        {
            Layers = layers,
            PackLength = LengthOf(layers),
            PackHeight = height,
            BoxLength = box,
            // Foam above and below, and a deck that bends into the box.
            BoxDepth = Max(height, ControllerHeight) + 10,
            // Two of them in the ends.
            BoxBolts = 2 + 2 * ((int)Ceiling((outer - 14) / 190) + 1),
            Flat = Ceiling((outer + 40) / 10) * 10,
            Wheelbase = Max(720, Ceiling((outer + 130) / 10) * 10),
        };
    }

    /// <summary>Length of the controller.</summary>
    public double ControllerLength => Answers.Motors == 1 ? 80 : 110;
    /// <summary>Width of the controller.</summary>
    public double ControllerWidth => Answers.Motors == 1 ? 55 : 74;
    /// <summary>Height of the controller.</summary>
    public double ControllerHeight { get; } = 26;

    /// <summary>The thinnest wire that stays below 105 °C in still summer air, no thinner than is usual.</summary>
    static string GaugeFor(double amperes, int thinnest)
    {
        var air = Air.At(default, Temperature.FromCelsius(30));
        for (var number = thinnest; number > 2; number -= 2)
        {
            var conductor = new Conductor(new WireGauge(number).Section);
            var wire = new WireTemperature(conductor, conductor.GuessedOuterDiameter, air);
            if (wire.LargestCurrent(HarnessRun.UsualLimit).Amperes >= amperes)
                return new WireGauge(number).Name;
        }

        return new WireGauge(2).Name;
    }
}
