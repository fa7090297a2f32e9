using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Tests.Files;

/// <summary>Answers over the whole range that a builder may give, and what a sheet never prints, filled in.</summary>
static class StartGrid
{
    static readonly double[] Riders = [50, 80, 110];
    static readonly CellCount[] Packs = [new(6, 2), new(10, 3), new(12, 4), new(14, 6)];
    static readonly int[] Motors = [1, 2];

    static readonly (int, WheelKind)[] Wheels =
        [(83, WheelKind.Urethane), (107, WheelKind.Urethane), (150, WheelKind.Rubber), (175, WheelKind.Air)];

    public static IEnumerable<StartAnswers> Answers() =>
        from rider in Riders
        from pack in Packs
        from motors in Motors
        from wheels in Wheels
        select new StartAnswers
        {
            Rider = Mass.FromKilograms(rider),
            Pack = pack,
            Motors = motors,
            Diameter = Length.FromMillimetres(wheels.Item1),
            Wheels = wheels.Item2,
            Range = Length.FromKilometres(pack.Series * pack.Parallel / 5.0),
            Climb = Fraction.FromPercent(4),
        };
}
