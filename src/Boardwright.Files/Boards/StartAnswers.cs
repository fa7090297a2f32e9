using System.Collections.Immutable;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Files.Boards;

/// <summary>What a wheel is made of, as far as it decides how it rolls and how large it is.</summary>
public enum WheelKind
{
    /// <summary>Cast urethane.</summary>
    Urethane,
    /// <summary>Solid rubber.</summary>
    Rubber,
    /// <summary>A tyre with air in it.</summary>
    Air,
}

/// <summary>What a builder answers when a board is begun.</summary>
public sealed record StartAnswers
{
    // Energy at the cells for a kilometre, Wh: at a walk, and more with the square of the speed; common practice, no source.
    const double WattHoursAtRest = 7, WattHoursByAir = 0.012;

    // Fewer cells side by side than this brake and climb poorly.
    const int LeastParallel = 2, MostParallel = 8;

    /// <summary>Mass of the rider.</summary>
    public Mass Rider { get; init; } = Mass.FromKilograms(80);
    /// <summary>What the road is made of.</summary>
    public Surface Surface { get; init; } = Surface.SmoothAsphalt;
    /// <summary>How far the board should ride on a charge.</summary>
    public Length Range { get; init; } = Length.FromKilometres(20);
    /// <summary>How fast it cruises.</summary>
    public Speed Cruise { get; init; } = Speed.FromKilometresPerHour(25);
    /// <summary>Steepest hill on the way.</summary>
    public Fraction Climb { get; init; } = Fraction.FromPercent(6);
    /// <summary>What the wheels are made of.</summary>
    public WheelKind Wheels { get; init; } = WheelKind.Urethane;
    /// <summary>Diameter of the wheels.</summary>
    public Length Diameter { get; init; } = Length.FromMillimetres(107);
    /// <summary>How many motors.</summary>
    public int Motors { get; init; } = 2;
    /// <summary>Cells of the pack, where they were answered.</summary>
    public CellCount? Pack { get; init; }
    /// <summary>The questions that were answered, by name; what nobody answered is a guess.</summary>
    public ImmutableHashSet<string> Answered { get; init; } = [];

    /// <summary>The pack: the answered one, or one that should carry as far as was asked, of twelve cells in series.</summary>
    public CellCount Cells => Pack ?? new CellCount(12, CellsFor(12));

    int CellsFor(int series)
    {
        var kilometresPerHour = Cruise.KilometresPerHour;
        var soft = Wheels == WheelKind.Urethane ? 1.0 : 1.5;
        var perKilometre = WattHoursAtRest * soft * (Rider.Kilograms + 20) / 100 + WattHoursByAir * kilometresPerHour * kilometresPerHour;
        // A tenth stays in the pack, and nobody rides as steadily as a sum.
        var cells = Range.Kilometres * perKilometre * 1.35 / (3.6 * 5.0);
        return (int)Clamp(Ceiling(cells / series), LeastParallel, MostParallel);
    }
}
