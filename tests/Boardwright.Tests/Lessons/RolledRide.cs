using Boardwright.Lessons;
using Boardwright.Logs;

namespace Boardwright.Tests.Lessons;

/// <summary>Random numbers of its own: SplitMix64, and normal ones by Box and Muller's polar way.</summary>
sealed class Chance(ulong seed)
{
    ulong state = seed;

    public double Even()
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1ul << 53));
    }

    public double Between(double low, double high) => low + (high - low) * Even();

    public double Normal()
    {
        while (true)
        {
            var (u, v) = (2 * Even() - 1, 2 * Even() - 1);
            var s = u * u + v * v;
            if (s is > 0 and < 1) return u * Math.Sqrt(-2 * Math.Log(s) / s);
        }
    }
}

/// <summary>
/// A test ride up and down one road, walked in steps of a hundredth of a second by Runge and Kutta's rule: pushes up to
/// speed, rolls out, brakes by motor, turns round. The force is written out here anew, so that nothing of the fit is in it.
/// </summary>
sealed record RolledRide
{
    public double Rolling { get; init; } = 0.016;
    public double DragArea { get; init; } = 0.55;
    public double Mass { get; init; } = 90;
    public double Rotating { get; init; } = 1.9;
    public double Density { get; init; } = 1.2;
    public double Slope { get; init; }
    public double Wind { get; init; }
    public double Gusts { get; init; }
    public double Scale { get; init; } = 1;
    public double Noise { get; init; } = 0.1;
    public double Hertz { get; init; } = 5;
    public double Gaps { get; init; }
    public double Lost { get; init; }
    public int Pairs { get; init; } = 8;
    public double TopSpeed { get; init; } = 30 / 3.6;
    public bool HasPositions { get; init; }
    public bool HasCurrents { get; init; } = true;
    public bool OneWay { get; init; }
    public ulong Seed { get; init; } = 1;

    public RideLog Ridden()
    {
        const double Step = 0.01;
        var chance = new Chance(Seed);
        var (seconds, speeds, amperes, phase, north) =
            (new List<double>(), new List<double>(), new List<double>(), new List<double>(), new List<double>());
        var (time, next, place, gapUntil) = (0.0, 0.0, 0.0, -1.0);
        for (var run = 0; run < 2 * Pairs; run++)
        {
            var way = OneWay || run % 2 == 0 ? 1 : -1;
            var wind = Wind + Gusts * chance.Normal();
            var top = TopSpeed * chance.Between(1.0, 1.12);
            var (speed, phaseOfRun, stood) = (0.0, 0, 0.0);
            while (phaseOfRun < 4)
            {
                var push = phaseOfRun switch { 0 => 90.0, 2 => -160.0, _ => 0 };
                double Rate(double v) => v <= 0 && push <= 0 && phaseOfRun != 1 ? 0
                    : (push - Mass * 9.80665 * (Rolling * Math.Cos(Math.Atan(Slope)) + way * Math.Sin(Math.Atan(Slope)))
                        - 0.5 * Density * DragArea * (v + way * wind) * Math.Abs(v + way * wind)) / (Mass + Rotating);
                var k1 = Rate(speed);
                var k2 = Rate(speed + Step / 2 * k1);
                var k3 = Rate(speed + Step / 2 * k2);
                var k4 = Rate(speed + Step * k3);
                speed = Math.Max(0, speed + Step / 6 * (k1 + 2 * k2 + 2 * k3 + k4));
                time += Step;
                place += way * speed * Step;
                if (phaseOfRun == 0 && speed >= top) phaseOfRun = 1;
                else if (phaseOfRun == 1 && speed <= 3.8 / 3.6) phaseOfRun = 2;
                else if (phaseOfRun == 2 && speed <= 0.01) phaseOfRun = 3;
                else if (phaseOfRun == 3 && (stood += Step) > 6) phaseOfRun = 4;
                if (time < next) continue;
                next += 1 / Hertz;
                if (time < gapUntil) continue;
                if (chance.Even() < Gaps / Hertz) gapUntil = time + chance.Between(0.5, 3);
                if (chance.Even() < Lost) continue;
                seconds.Add(Math.Round(time, 2));
                speeds.Add(Math.Max(0, Scale * speed + Noise * chance.Normal()));
                amperes.Add(push * speed / 0.8 / 44 + 0.05 + 0.15 * chance.Normal());
                phase.Add(push * 0.25 + 0.3 * chance.Normal());
                north.Add(place);
            }
        }

        var channels = new Dictionary<Channel, double[]> { [Channel.Speed] = [.. speeds] };
        if (HasCurrents)
        {
            channels[Channel.PackCurrent] = [.. amperes];
            channels[Channel.PhaseCurrent] = [.. phase];
        }

        if (HasPositions)
        {
            channels[Channel.Latitude] = [.. north.Select(n => 0.93 + n / 6_371_000)];
            channels[Channel.Longitude] = [.. north.Select(_ => -0.1)];
        }

        return new RideLog("rolled", [.. seconds], channels);
    }

    public CoastDownConditions Conditions(double scaleSpread) =>
        new(Boardwright.Units.Mass.FromKilograms(Mass), Boardwright.Units.Mass.FromKilograms(Rotating),
        Density)
        { SpeedScaleSpread = scaleSpread };

    /// <summary>Another board, rider, road and day for each number.</summary>
    public static RolledRide Case(int number)
    {
        var chance = new Chance(900_000 + (ulong)number);
        return new()
        {
            Rolling = chance.Between(0.012, 0.028),
            DragArea = chance.Between(0.4, 0.68),
            Mass = chance.Between(65, 110),
            Rotating = chance.Between(1, 3),
            Density = chance.Between(1.1, 1.27),
            Slope = chance.Between(-0.005, 0.005),
            Wind = chance.Between(-2, 2),
            Noise = chance.Between(0.06, 0.12),
            Gaps = 0.02,
            Lost = 0.03,
            Seed = 40_000 + (ulong)number,
            HasPositions = number % 2 == 0,
        };
    }
}
