using Boardwright.Lessons;
using Boardwright.Logs;

namespace Boardwright.Tests.Lessons;

/// <summary>
/// Coast-downs by another hand than <see cref="RolledRide"/>: walked in steps of way and energy, not of time; a road whose
/// slope swings along it; a wind that wanders and gusts with a memory; a rider who never stands quite alike; a sensor that
/// counts in whole tenths of a kilometre per hour, reads at uneven times and drops out; a wheel that is not as large as stated.
/// </summary>
sealed class StrangerRide
{
    readonly Random dice;

    public StrangerRide(int number, double slopeSwing, bool hasGusts, bool isWheelKnown)
    {
        dice = new Random(31_000 + number);
        Rolling = Even(0.011, 0.026);
        DragArea = Even(0.35, 0.70);
        Mass = Even(62, 112);
        Rotating = Mass * Even(0.012, 0.03);
        Density = Even(1.08, 1.29);
        Scale = isWheelKnown ? 1 : 1 + 0.01 * Bell();
        Log = Ridden(slopeSwing, hasGusts ? 1 : 0);
    }

    public double Rolling { get; }
    public double DragArea { get; }
    public double Mass { get; }
    public double Rotating { get; }
    public double Density { get; }
    public double Scale { get; }
    public RideLog Log { get; }

    public CoastDownConditions Conditions(double scaleSpread) =>
        new(Boardwright.Units.Mass.FromKilograms(Mass), Boardwright.Units.Mass.FromKilograms(Rotating),
        Density)
        { SpeedScaleSpread = scaleSpread };

    double Even(double low, double high) => low + (high - low) * dice.NextDouble();

    // The sum of twelve even numbers, less six.
    double Bell()
    {
        var sum = -6.0;
        for (var i = 0; i < 12; i++) sum += dice.NextDouble();
        return sum;
    }

    RideLog Ridden(double slopeSwing, double gusts)
    {
        const double Stride = 0.02;
        var (mean, wave, phase, wander) = (Even(-0.004, 0.004), Even(90, 260), Even(0, 6.28), Even(-2, 2));
        var rows = new List<(double Time, double Speed, double Place, double Amperes)>();
        var (time, next, silentUntil, gust) = (0.0, 0.0, -1.0, 0.0);
        double SlopeAt(double x) => mean + slopeSwing * Math.Sin(2 * Math.PI * x / wave + phase);
        void Look(double speed, double place, double amperes)
        {
            if (time < next) return;
            next = time + 0.2 + Even(-0.03, 0.03);
            if (time < silentUntil) return;
            if (dice.NextDouble() < 0.006) silentUntil = time + Even(0.6, 4);
            var shown = Math.Round(Math.Max(0, Scale * speed + 0.05 * Bell()) * 36) / 36;
            rows.Add((Math.Round(time, 3), shown, place, amperes + 0.1 * Bell()));
        }

        for (var run = 0; run < 16; run++)
        {
            var way = run % 2 == 0 ? 1 : -1;
            // Two marks on the road; nobody lets go exactly at them.
            var place = (way > 0 ? 0 : 160) + Even(-6, 6);
            var (rolling, area) = (Rolling * (1 + 0.01 * Bell()), DragArea * (1 + 0.015 * Bell()));
            var today = wander + gusts * 0.15 * Bell();
            var top = Even(29, 33) / 3.6;
            for (var speed = 0.4; speed < top; speed += 0.012)
            {
                time += 0.012 / 1.1;
                Look(speed, place, 14);
            }

            var energy = 0.5 * (Mass + Rotating) * top * top;
            var now = top;
            while (now > 1.1)
            {
                var air = now + way * (today + gust);
                var angle = Math.Atan(way * SlopeAt(place));
                var force = Mass * 9.80665 * (rolling * Math.Cos(angle) + Math.Sin(angle)) + 0.5 * Density * area * air * Math.Abs(air);
                energy -= force * Stride;
                var after = energy > 0 ? Math.Sqrt(2 * energy / (Mass + Rotating)) : 0;
                var step = 2 * Stride / (now + after);
                gust += -gust * step / 7 + gusts * 0.3 * Math.Sqrt(2 * step / 7) * Bell();
                (time, place, now) = (time + step, place + way * Stride, after);
                Look(now, place, 0.05);
                if (now > top + 0.5) break;
            }

            for (var speed = now; speed > 0; speed -= 0.03)
            {
                time += 0.02;
                Look(speed, place, -6);
            }

            for (var wait = 0; wait < 50; wait++)
            {
                time += 0.1;
                Look(0, place, 0.05);
            }
        }

        var kept = rows.Where((r, i) => i == 0 || r.Time > rows[i - 1].Time).ToArray();
        return new("stranger", [.. kept.Select(r => r.Time)], new Dictionary<Channel, double[]>
        {
            [Channel.Speed] = [.. kept.Select(r => r.Speed)],
            [Channel.PackCurrent] = [.. kept.Select(r => r.Amperes)],
            [Channel.Latitude] = [.. kept.Select(r => 0.91 + r.Place / 6_371_000)],
            [Channel.Longitude] = [.. kept.Select(_ => 0.1)],
        });
    }
}

/// <summary>Half an hour on a pack by another hand: two slow parts, cells that warm up, a current with a memory, meters that count in
/// tenths.</summary>
sealed class StrangerPack
{
    public StrangerPack(int number)
    {
        var dice = new Random(57_000 + number);
        double Even(double low, double high) => low + (high - low) * dice.NextDouble();
        double Bell() => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());
        Ohms = Even(0.035, 0.13);
        var (first, second, firstTau, secondTau) = (Ohms * Even(0.15, 0.35), Ohms * Even(0.1, 0.25), Even(8, 25), Even(80, 200));
        var (charge, capacity, warm) = (Even(0.7, 0.98), Even(5, 16) * 3600, 0.0);
        var (pull, mood, held, heldLong, time, ends) = (0.0, 0.0, 0.0, 0.0, 0.0, Even(1500, 2100));
        var (seconds, volts, amperes) = (new List<double>(), new List<double>(), new List<double>());
        while (time < ends)
        {
            const double Step = 0.05;
            if (dice.NextDouble() < Step / 12) mood = dice.NextDouble() < 0.3 ? 0 : Even(2, 24);
            if (time < 15) mood = 0;
            pull += (mood + (mood > 0 ? 2.5 * Bell() : 0) - pull) * Step / 0.7;
            held += (first * pull - held) * Step / firstTau;
            heldLong += (second * pull - heldLong) * Step / secondTau;
            charge -= pull * Step / capacity;
            warm += (pull * pull * Ohms - warm / 0.9) * Step / 1900;
            time += Step;
            if (seconds.Count > 0 && time - seconds[^1] < 0.2 - 1e-9) continue;
            if (dice.NextDouble() < 0.02) continue;
            var rest = 10 * (3.28 + 0.78 * charge + 0.1 * Math.Sin(5 * charge));
            seconds.Add(Math.Round(time, 2));
            volts.Add(Math.Round((rest - Ohms * (1 - 0.004 * warm) * pull - held - heldLong + 0.02 * Bell()) * 20) / 20);
            amperes.Add(Math.Round((pull + 0.08 * Bell()) * 10) / 10);
        }

        Warmed = warm;
        Log = new("stranger", seconds.ToArray(),
            new Dictionary<Channel, double[]> { [Channel.PackVoltage] = [.. volts], [Channel.PackCurrent] = [.. amperes] });
    }

    public double Ohms { get; }

    public double Warmed { get; }

    public RideLog Log { get; }
}

/// <summary>The fits on rides that were made by somebody who does not know them.</summary>
public sealed class StrangerRideTests(ITestOutputHelper output)
{
    // What the workshop asks for, in a steady wind: rolling within 5 %, drag area within 8 %, the truth inside nine times out of ten.
    static int Cases => Thorough.Cases(100);

    [Fact]
    public void Eight_runs_each_way_by_another_hand_tell_rolling_and_drag()
    {
        var (rolling, area, close, worst) = Fitted(0, hasGusts: false, isWheelKnown: false, Cases);

        Assert.Equal(Cases, close);
        Thorough.IsNineInTen(rolling, Cases);
        Thorough.IsNineInTen(area, Cases);
        Assert.InRange(worst, 0, 0.08);
    }

    // Gusts of 0.3 m/s that last seven seconds, and a mean wind that wanders by 0.15 m/s from run to run, are more than eight runs
    // average out in every case: some three in a hundred miss by more than the workshop wants, and the ranges know it.
    [Fact]
    public void In_a_gusty_wind_a_few_miss_and_the_ranges_still_hold_the_truth()
    {
        var (rolling, area, close, worst) = Fitted(0, hasGusts: true, isWheelKnown: false, Cases);

        Assert.InRange(close, 0.95 * Cases, Cases);
        Thorough.IsNineInTen(rolling, Cases);
        Thorough.IsNineInTen(area, Cases);
        Assert.InRange(worst, 0, 0.12);
    }

    // A slope that swings along the road looks like drag both ways. Nothing in the speeds tells it; where it is stated, the ranges hold it.
    [Fact]
    public void On_a_road_whose_slope_swings_the_ranges_hold_the_truth_where_that_is_stated()
    {
        var (rolling, area, _, worst) = Fitted(0.0005, hasGusts: false, isWheelKnown: true, Thorough.Cases(40), Fraction.FromValue(0.0005));

        Assert.InRange(worst, 0, 0.16);
        Assert.InRange(rolling, Thorough.Cases(40) * 33 / 40, Thorough.Cases(40));
        Assert.InRange(area, Thorough.Cases(40) * 33 / 40, Thorough.Cases(40));
    }

    (int Rolling, int Area, int Close, double Worst) Fitted(
        double slopeSwing, bool hasGusts, bool isWheelKnown, int count, Fraction swing = default)
    {
        var (rolling, area, close, worstRolling, worstArea, rollingSquares, areaSquares) = (0, 0, 0, 0.0, 0.0, 0.0, 0.0);
        for (var number = 0; number < count; number++)
        {
            var ride = new StrangerRide(number, slopeSwing, hasGusts, isWheelKnown);
            var answer = CoastDown.Fit(CoastDown.Find(ride.Log), ride.Conditions(isWheelKnown ? 0 : 0.01) with { SlopeSwing = swing });
            Assert.True(answer.Fit is not null, answer.Refusal);
            var (offRolling, offArea) =
                (answer.Fit.RollingResistance.Value.Value / ride.Rolling - 1, answer.Fit.DragArea.Value.SquareMetres / ride.DragArea - 1);
            (worstRolling, worstArea) = (Math.Max(worstRolling, Math.Abs(offRolling)), Math.Max(worstArea, Math.Abs(offArea)));
            rollingSquares += offRolling * offRolling / count;
            areaSquares += offArea * offArea / count;
            close += Math.Abs(offRolling) <= 0.05 && Math.Abs(offArea) <= 0.08 ? 1 : 0;
            rolling += answer.Fit.RollingResistance.Covers(Number.FromSi(ride.Rolling)) ? 1 : 0;
            area += answer.Fit.DragArea.Covers(Area.FromSi(ride.DragArea)) ? 1 : 0;
        }

        output.WriteLine(FormattableString.Invariant($"swing {slopeSwing}, gusts {hasGusts}, wheel known {isWheelKnown}: of {count} within 5 and 8 % {close}; inside Crr {rolling} CdA {area}; worst {worstRolling:P2} {worstArea:P2}; rms {Math.Sqrt(rollingSquares):P2} {Math.Sqrt(areaSquares):P2}"));
        return (rolling, area, close, worstArea);
    }

    [Fact]
    public void Half_an_hour_by_another_hand_tells_the_resistance_of_a_pack()
    {
        var (inside, worst) = (0, 0.0);
        for (var number = 0; number < Cases; number++)
        {
            var made = new StrangerPack(number);
            var found = PackFromRide.Fit(made.Log);
            Assert.NotNull(found);
            // What it is in the middle of the ride, half way warm.
            var truth = made.Ohms * (1 - 0.002 * made.Warmed);
            worst = Math.Max(worst, Math.Abs(found.Resistance.Value.Ohms / truth - 1));
            inside += found.Resistance.Covers(Resistance.FromOhms(truth)) ? 1 : 0;
        }

        output.WriteLine(FormattableString.Invariant($"pack: inside {inside} of {Cases}, worst {worst:P2}"));
        Assert.InRange(worst, 0, 0.05);
        Thorough.IsNineInTen(inside, Cases, mostOfHundred: 100);
    }
}
