using Boardwright.Findings;
using Boardwright.Heat;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Rides;

/// <summary>Heat given off by a motor's case for each kelvin above the air, over the speed of the board: one number, or a table.</summary>
/// <remarks>
/// The correlations of <see cref="CanCooling"/> cost more than all the rest of a step, so they are tabulated once for each
/// ride, up to 25 m/s and 160 K above the air, and read off straight between. The places lie evenly over the roots of speed
/// and rise, over which the correlations run nearly straight.
/// </remarks>
/// <validity>Beyond the table's ends its end values hold.</validity>
/// <error>0.1 % of the correlation at a walk and faster, 6 % below that; the correlation itself is good to 30 %.</error>
/// <source cref="Sources.ChurchillBernstein"/>
public sealed class CaseCooling
{
    const int Speeds = 26;
    const int Rises = 17;
    const double Fastest = 25;
    const double Hottest = 160;

    readonly double[] table;
    readonly double ambient;

    CaseCooling(double[] table, double ambient) => (this.table, this.ambient) = (table, ambient);

    /// <summary>The same at every speed.</summary>
    public static CaseCooling Fixed(double wattsPerKelvin) => new([wattsPerKelvin], 0);

    /// <summary>A can in the wind of the ride.</summary>
    public static CaseCooling Create(Can can, Air air, double shielding = 1)
    {
        var filled = new double[Speeds * Rises];
        for (var i = 0; i < Speeds; i++)
        {
            for (var j = 0; j < Rises; j++)
            {
                var (x, y) = ((double)i / (Speeds - 1), (double)j / (Rises - 1));
                var cooling = CanCooling.Riding(can, Speed.FromMetresPerSecond(Fastest * x * x), air, shielding);
                filled[i * Rises + j] = 1 / cooling.At(Temperature.FromKelvins(air.Temperature.Kelvins + Hottest * y * y)).KelvinsPerWatt;
            }
        }

        return new(filled, air.Temperature.Kelvins);
    }

    /// <summary>Conductance to the air, W/K.</summary>
    /// <param name="metresPerSecond">Speed of the board.</param>
    /// <param name="kelvins">Temperature of the case.</param>
    public double At(double metresPerSecond, double kelvins)
    {
        if (table.Length == 1)
            return table[0];
        var x = Sqrt(Clamp(metresPerSecond / Fastest, 0, 1)) * (Speeds - 1);
        var y = Sqrt(Clamp((kelvins - ambient) / Hottest, 0, 1)) * (Rises - 1);
        var (i, j) = (Min((int)x, Speeds - 2), Min((int)y, Rises - 2));
        var (dx, dy) = (x - i, y - j);
        var at = i * Rises + j;
        var slow = table[at] + (table[at + 1] - table[at]) * dy;
        var fast = table[at + Rises] + (table[at + Rises + 1] - table[at + Rises]) * dy;
        return slow + (fast - slow) * dx;
    }

    internal CaseCooling Times(double factor) => new(Array.ConvertAll(table, g => g * factor), ambient);
}

/// <summary>The warm bodies of a board: capacities in J/K, conductances in W/K, temperatures in K.</summary>
/// <remarks>
/// Motors are alike, so one pair of winding and case stands for all; so do controllers. The cells are one body in a closed box:
/// UA = U · surface of the pack, U = 3.75 W/(m² K), still air inside (5) and moving air outside (15) in series.
/// Heat of the controllers does not reach the cells, nor the heat of reaction.
/// </remarks>
/// <validity>Each body has one temperature.</validity>
/// <error>Where C or UA is guessed, a factor of 1.6 either way; see <see cref="Guessed"/>.</error>
/// <source cref="Sources.TwoNodeMotor"/>
public sealed record RideHeat
{
    /// <summary>Factor either way of a guessed capacity or conductance.</summary>
    public const double GuessFactor = 1.6;

    /// <summary>Heat transfer through the lid of a closed box, W/(m² K).</summary>
    /// <source cref="Sources.CommonPractice"/>
    public const double BoxWattsPerSquareMetreKelvin = 3.75;

    /// <summary>Temperature of the air.</summary>
    public required double Ambient { get; init; }
    /// <summary>Heat capacity of one winding.</summary>
    public required double WindingCapacity { get; init; }
    /// <summary>Heat capacity of one case.</summary>
    public required double CaseCapacity { get; init; }
    /// <summary>Conductance from winding to case.</summary>
    public required double WindingToCase { get; init; }
    /// <summary>Conductance from case to air.</summary>
    public required CaseCooling CaseToAir { get; init; }
    /// <summary>Heat capacity of all cells.</summary>
    public required double CellCapacity { get; init; }
    /// <summary>Conductance from the cells to the air.</summary>
    public required double PackToAir { get; init; }
    /// <summary>Heat capacity of one controller.</summary>
    public required double ControllerCapacity { get; init; }
    /// <summary>Conductance from one controller to the air.</summary>
    public required double ControllerToAir { get; init; }
    /// <summary>Number of controllers.</summary>
    public required int Controllers { get; init; }
    /// <summary>Temperature at which a controller's phase current begins to fade; infinite where it does not.</summary>
    public required double FadeStart { get; init; }
    /// <summary>Temperature at which it is gone.</summary>
    public required double FadeEnd { get; init; }
    /// <summary>Greatest temperature of the winding; infinite where nobody says.</summary>
    public required double WindingLimit { get; init; }
    /// <summary>What magnets without a letter bear; taken where nobody says.</summary>
    /// <source cref="Sources.MagnetGrades"/>
    public static Temperature UnmarkedMagnets { get; } = Temperature.FromCelsius(80);

    /// <summary>Greatest temperature of the magnets, which are as hot as the case.</summary>
    public double MagnetLimit { get; init; } = UnmarkedMagnets.Kelvins;
    /// <summary>Whether nobody says what the magnets bear.</summary>
    public bool AreMagnetsUnmarked { get; init; }
    /// <summary>Greatest temperature of the cells; infinite where nobody says.</summary>
    public required double CellLimit { get; init; }
    /// <summary>Which of the values are guesses.</summary>
    public required HeatGuess Guessed { get; init; }
    /// <summary>Part of the phase current that a controller allows at its temperature, 0 to 1.</summary>
    public double Fade(double controller) => controller <= FadeStart ? 1 : Max(0, (FadeEnd - controller) / (FadeEnd - FadeStart));

    /// <summary>The guesses moved by factors, everything else as it is.</summary>
    public RideHeat WithGuesses(double capacities, double conductances)
    {
        double C(double value, HeatGuess which) => Guessed.HasFlag(which) ? value * capacities : value;
        double G(double value, HeatGuess which) => Guessed.HasFlag(which) ? value * conductances : value;
        return this with
        {
            WindingCapacity = C(WindingCapacity, HeatGuess.WindingCapacity),
            CaseCapacity = C(CaseCapacity, HeatGuess.CaseCapacity),
            WindingToCase = G(WindingToCase, HeatGuess.WindingToCase),
            CaseToAir = Guessed.HasFlag(HeatGuess.CaseToAir) ? CaseToAir.Times(conductances) : CaseToAir,
            CellCapacity = C(CellCapacity, HeatGuess.CellCapacity),
            PackToAir = G(PackToAir, HeatGuess.PackToAir),
            ControllerCapacity = C(ControllerCapacity, HeatGuess.ControllerCapacity),
            ControllerToAir = G(ControllerToAir, HeatGuess.ControllerToAir),
        };
    }

    /// <summary>Of a board in the brief's air.</summary>
    public static Answer<RideHeat> Compute(Board board, Answer<Air> air) => Answer<RideHeat>.Ask("", needs =>
    {
        var (motor, controller, cell, pack) = (board.Parts.Motor, board.Parts.Controller, board.Parts.Cell, board.Parts.Pack);
        var around = needs.Read(air);
        HeatGuess guessed = default;

        T Known<T>(Known<T> known, HeatGuess which)
            where T : notnull
        {
            if (known.From is Origin.Guess or Origin.Usual)
                guessed |= which;
            return needs.Read(known);
        }

        var winding = Known(motor.WindingCapacity, HeatGuess.WindingCapacity);
        var shell = Known(motor.CaseCapacity, HeatGuess.CaseCapacity);
        var between = Known(motor.WindingToCase, HeatGuess.WindingToCase);
        var outside = motor.CaseToAir.IsKnown ? Known(motor.CaseToAir, HeatGuess.CaseToAir) : default;
        var can = motor.CaseToAir.IsKnown ? default : new Can(needs.Read(motor.CanDiameter), needs.Read(motor.CanLength));
        var shielding = motor.CaseToAir.IsKnown ? 1 : ClimbHeat.ShieldingOf(needs, board);
        if (!motor.CaseToAir.IsKnown)
            guessed |= HeatGuess.CaseToAir;
        var cells = needs.Read(pack.Series) * needs.Read(pack.Parallel);
        var each = Known(cell.HeatCapacity, HeatGuess.CellCapacity);
        var surface = Box(needs.Read(pack.Length), needs.Read(pack.Width), needs.Read(pack.Height));
        var metal = Known(controller.HeatCapacity, HeatGuess.ControllerCapacity);
        var cooling = Known(controller.CaseToAir, HeatGuess.ControllerToAir);
        var fades = controller.TaperTemperatureStart.IsKnown && controller.TaperTemperatureEnd.IsKnown;
        var (start, end) = fades ? (needs.Read(controller.TaperTemperatureStart), needs.Read(controller.TaperTemperatureEnd)) : default;
        return needs.Unmet ? null : new RideHeat
        {
            Ambient = around.Temperature.Kelvins,
            WindingCapacity = winding.JoulesPerKelvin,
            CaseCapacity = shell.JoulesPerKelvin,
            WindingToCase = 1 / between.KelvinsPerWatt,
            CaseToAir = motor.CaseToAir.IsKnown ? CaseCooling.Fixed(1 / outside.KelvinsPerWatt)
                : CaseCooling.Create(can, around, shielding),
            CellCapacity = cells * each.JoulesPerKelvin,
            PackToAir = BoxWattsPerSquareMetreKelvin * surface,
            ControllerCapacity = metal.JoulesPerKelvin,
            ControllerToAir = 1 / cooling.KelvinsPerWatt,
            Controllers = PartSlot.ControllerCount(board.Parts),
            FadeStart = fades && start < end ? start.Kelvins : double.PositiveInfinity,
            FadeEnd = fades && start < end ? end.Kelvins : double.PositiveInfinity,
            WindingLimit = motor.WindingLimit.IsKnown ? needs.Read(motor.WindingLimit).Kelvins : double.PositiveInfinity,
            MagnetLimit = needs.Read(motor.MagnetLimit, UnmarkedMagnets).Kelvins,
            AreMagnetsUnmarked = !motor.MagnetLimit.IsKnown,
            CellLimit = cell.DischargeTemperatureMax.IsKnown ? needs.Read(cell.DischargeTemperatureMax).Kelvins : double.PositiveInfinity,
            Guessed = guessed | HeatGuess.PackToAir,
        };
    });

    /// <summary>Surface of a box, m².</summary>
    static double Box(Length length, Length width, Length height) =>
        2 * (length.Metres * width.Metres + length.Metres * height.Metres + width.Metres * height.Metres);
}

/// <summary>Thermal values that may be guesses.</summary>
[Flags]
public enum HeatGuess
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>Heat capacity of the winding.</summary>
    WindingCapacity = 1,
    /// <summary>Heat capacity of the case.</summary>
    CaseCapacity = 2,
    /// <summary>From winding to case.</summary>
    WindingToCase = 4,
    /// <summary>From case to air.</summary>
    CaseToAir = 8,
    /// <summary>Heat capacity of the cells.</summary>
    CellCapacity = 16,
    /// <summary>From the cells through the box to the air.</summary>
    PackToAir = 32,
    /// <summary>Heat capacity of a controller.</summary>
    ControllerCapacity = 64,
    /// <summary>From a controller to the air.</summary>
    ControllerToAir = 128,
}
