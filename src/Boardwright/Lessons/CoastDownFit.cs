using Boardwright.Findings;
using Boardwright.Numerics;
using static System.Math;

namespace Boardwright.Lessons;

/// <summary>What must be known of board, rider and day before forces can be told from speeds.</summary>
/// <param name="Mass">Mass of rider, gear and board m, above 0.</param>
/// <param name="RotatingMass">What turning wheels and rotors add to the mass when it slows down, 0 or more.</param>
/// <param name="AirDensityKilogramsPerCubicMetre">Density of the air ρ, above 0.</param>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownConditions(Mass Mass, Mass RotatingMass, double AirDensityKilogramsPerCubicMetre)
{
    /// <summary>Speed by the sensor over true speed; 1 where the wheel's diameter is right.</summary>
    public double SpeedScale { get; init; } = 1;
    /// <summary>Standard deviation of <see cref="SpeedScale"/>; 0.01 where nobody has measured it over a known distance.</summary>
    public double SpeedScaleSpread { get; init; } = 0.01;
    /// <summary>Standard deviation of the mass, as a part of it.</summary>
    public double MassSpread { get; init; }
    /// <summary>Standard deviation of the air's density, as a part of it.</summary>
    public double AirSpread { get; init; }
    /// <summary>Wind against the first run's way, where it is known; runs of one direction only cannot do without.</summary>
    public Speed? Headwind { get; init; }
    /// <summary>Rise of the road in the first run's way, where it is known; level for runs of one direction only where it is not
    /// stated.</summary>
    public Fraction? Slope { get; init; }
    /// <summary>By how much the slope swings along the road about its mean, as an amplitude; 0 for a road of one slope. It widens the
    /// ranges, since nothing in the speeds tells it from drag.</summary>
    public Fraction SlopeSwing { get; init; }
    /// <summary>Whether each run goes the first one's way, in their order; empty to tell it by the headings, or without those as there and
    /// back in turn.</summary>
    public IReadOnlyList<bool> GoesThere { get; init; } = [];
}

/// <summary>One run as the fit sees it.</summary>
/// <param name="Run">The run.</param>
/// <param name="IsThere">Whether it goes the first run's way.</param>
/// <param name="Left">Root mean square of what the fit leaves of its speeds; not a number where it was not fitted.</param>
/// <param name="LeftOut">Why it was left out; empty where it was not.</param>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownPart(CoastDownRun Run, bool IsThere, Speed Left, string LeftOut);

/// <summary>What coast-downs tell.</summary>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownFit
{
    /// <summary>Rolling coefficient, with the drag of bearings, belts and motors that turn along in it.</summary>
    public required Estimate<Number> RollingResistance { get; init; }
    /// <summary>Drag area.</summary>
    public required Estimate<Area> DragArea { get; init; }
    /// <summary>Rise of the road in the first run's way.</summary>
    public required Estimate<Fraction> Slope { get; init; }
    /// <summary>Wind against the first run's way.</summary>
    public required Estimate<Speed> Headwind { get; init; }
    /// <summary>Correlation of rolling coefficient and drag area, −1 to 1; near −1 as a rule.</summary>
    public required double Correlation { get; init; }
    /// <summary>What readings scatter about the fit.</summary>
    public required Speed Left { get; init; }
    /// <summary>Standard deviations of rolling coefficient and drag area (m²) by the scatter of readings.</summary>
    public required (double Rolling, double DragArea) ByReadings { get; init; }
    /// <summary>The same by the scatter from run to run; <c>null</c> for fewer runs than it takes.</summary>
    public required (double Rolling, double DragArea)? ByRuns { get; init; }
    /// <summary>How hard the unknowns are to tell apart; see <see cref="NonlinearFit.Condition"/>.</summary>
    public required double Condition { get; init; }
    /// <summary>Every run, also those left out.</summary>
    public required IReadOnlyList<CoastDownPart> Parts { get; init; }
    /// <summary>What to be wary of, in sentences.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>The border of the region in which both values lie nine times out of ten: an ellipse, as points.</summary>
    /// <param name="count">How many points, at least 3.</param>
    public IReadOnlyList<(Number Rolling, Area DragArea)> Ellipse(int count = 48)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        // 4.605 is the 90 % quantile of χ² with two degrees of freedom.
        var reach = Sqrt(4.605170185988091);
        var (a, b) = (RollingResistance.Deviation, DragArea.Deviation);
        var points = new (Number, Area)[count];
        for (var i = 0; i < count; i++)
        {
            var (u, v) = (Cos(2 * PI * i / count), Sin(2 * PI * i / count));
            points[i] = (
                Number.FromSi(RollingResistance.Value.Si + reach * a * u),
                Area.FromSi(DragArea.Value.Si + reach * b * (Correlation * u + Sqrt(Max(0, 1 - Correlation * Correlation)) * v)));
        }

        return points;
    }
}

/// <summary>A fit, or the reason why there is none.</summary>
/// <param name="Fit">The fit, or <c>null</c>.</param>
/// <param name="Refusal">Why there is none and what to do about it; empty where there is one.</param>
/// <source cref="Sources.TwoWayCoastDown"/>
public sealed record CoastDownAnswer(CoastDownFit? Fit, string Refusal);
