using Boardwright.Findings;
using Boardwright.Numerics;

namespace Boardwright.Drivetrains;

/// <summary>What a polyurethane belt with steel cord and 5 mm curvilinear teeth carries: kept as a check on the size of
/// <see cref="BeltStrength"/> and on how ratings fall with speed.</summary>
/// <validity>0 to 10 000 r/min; another construction than the moulded rubber loops of boards.</validity>
/// <error>The printed curve has a kink at 200 to 300 r/min, likely a misprint of about 1 N/cm; straight lines between the printed
/// points.</error>
/// <source cref="Sources.ElatechCatalogue"/>
public static class SteelCordBelt
{
    /// <summary>Most teeth in mesh that count on a belt welded to a loop.</summary>
    public const int MostTeethWelded = 6;
    /// <summary>Most teeth in mesh that count on an open length.</summary>
    public const int MostTeethOpen = 12;

    static readonly Polyline ToothForces = new(
        [
            0, 20, 40, 60, 80, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1100, 1200, 1300, 1400, 1440, 1500, 1600, 1700, 1800,
                1900,
            2000, 2200, 2400, 2600, 2800, 3000, 3200, 3400, 3600, 3800, 4000, 4500, 5000, 5500, 6000, 6500, 7000, 7500, 8000, 8500, 9000,
                9500, 10000,
        ],
        [
            36.80, 36.25, 35.75, 35.30, 34.89, 34.52, 33.13, 30.87, 30.10, 29.31, 28.56, 27.86, 27.21, 26.61, 26.05, 25.52, 25.03, 24.56,
                24.13, 23.96, 23.71, 23.32, 22.94, 22.58, 22.24,
            21.91, 21.30, 20.72, 20.19, 19.69, 19.23, 18.78, 18.37, 17.97, 17.59, 17.23, 16.40, 15.64, 14.95, 14.32, 13.74, 13.19, 12.68,
                12.20, 11.75, 11.33, 10.92, 10.53,
        ]);

    /// <summary>Allowed pull: specific tooth force, which falls with the small pulley's speed, times teeth in mesh times width in
    /// centimetres.</summary>
    /// <param name="speed">Speed of the small pulley, either way round; beyond 10 000 r/min the last value holds.</param>
    /// <param name="teethInMesh">Teeth in mesh, at least 0.</param>
    /// <param name="width">Width of the belt.</param>
    /// <param name="mostTeeth">Most teeth that count: <see cref="MostTeethWelded"/> or <see cref="MostTeethOpen"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of teeth is negative.</exception>
    public static Force AllowedPull(AngularSpeed speed, double teethInMesh, Length width, int mostTeeth = MostTeethWelded)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(teethInMesh);
        return Force.FromNewtons(ToothForces.At(Math.Abs(speed.Rpm)) * Math.Min(teethInMesh, mostTeeth) * width.Centimetres);
    }
}
