using System.Runtime.InteropServices;
using Boardwright.Numerics;
using Boardwright.Road;
using static System.Math;

namespace Boardwright.Lessons;

/// <content>The law that the runs follow, and the drift on top of it.</content>
public static partial class CoastDown
{
    /// <summary>
    /// What a fit leaves of the speeds, as a drift with a memory and the sensor's own noise on top: gusts and a rider who moves
    /// push the speed off its law for some seconds, and readings within that time tell the same thing twice. Each reading then
    /// counts by what it says beyond those before it: the innovations of a Kalman filter.
    /// </summary>
    /// <param name="Memory">Time in which the drift fades, s.</param>
    /// <param name="Share">Variance of the drift over that of the sensor's noise.</param>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Drift(double Memory, double Share)
    {
        /// <summary>The likeliest drift in what a fit leaves.</summary>
        /// <returns>The drift; <c>null</c> where the sensor's noise alone explains it as well.</returns>
        public static Drift? Estimate(List<CoastDownPart> parts, IReadOnlyList<double> left)
        {
            // Twice the logarithm of the likelihood has to gain this much for two unknowns more, which chance does once in 150 times.
            const double Clearly = 10;
            var values = left.ToArray();
            var (best, likeliest) = (default(Drift?), Unlikeliness(null, parts, values) - Clearly);
            foreach (var memory in (ReadOnlySpan<double>)[1, 2, 4, 8, 16, 32])
            {
                foreach (var share in (ReadOnlySpan<double>)[0.03, 0.1, 0.3, 1, 3, 10, 30, 100])
                {
                    Drift tried = new(memory, share);
                    var unlikely = Unlikeliness(tried, parts, values);
                    if (unlikely < likeliest) (best, likeliest) = (tried, unlikely);
                }
            }

            return best;
        }

        static double Unlikeliness(Drift? drift, List<CoastDownPart> parts, double[] left)
        {
            var (row, squares, logarithms) = (0, 0.0, 0.0);
            foreach (var part in parts)
            {
                var count = part.Run.Seconds.Length;
                var own = left.AsSpan(row, count).ToArray();
                if (drift is { } some) logarithms += some.Whiten(part.Run.Seconds, own, 1);
                foreach (var value in own) squares += value * value;
                row += count;
            }

            return row * Log(squares) + logarithms;
        }

        /// <summary>Turns values at times into innovations of even size.</summary>
        /// <returns>Sum of the logarithms of the innovations' variances.</returns>
        public double Whiten(ReadOnlySpan<double> seconds, Span<double> values, int stride)
        {
            var (state, variance, logarithms) = (0.0, Share, 0.0);
            for (var k = 0; k < seconds.Length; k++)
            {
                if (k > 0)
                {
                    var kept = Exp(-(seconds[k] - seconds[k - 1]) / Memory);
                    (state, variance) = (state * kept, variance * kept * kept + Share * (1 - kept * kept));
                }

                var whole = variance + 1;
                ref var value = ref values[k * stride];
                var news = value - state;
                state += variance / whole * news;
                variance /= whole;
                value = news / Sqrt(whole);
                logarithms += Log(whole);
            }

            return logarithms;
        }
    }

    /// <summary>The speeds of all runs under four shared unknowns and one speed through the air for each run.</summary>
    sealed class Model
    {
        readonly List<CoastDownPart> parts;
        readonly int[] firsts;
        readonly double scale;
        readonly double weight;
        readonly double halfDensity;
        readonly double moved;
        readonly int count;
        readonly Drift? drift;

        public Model(List<CoastDownPart> parts, CoastDownConditions conditions, Drift? drift)
        {
            this.parts = parts;
            this.drift = drift;
            scale = conditions.SpeedScale;
            weight = conditions.Mass.Kilograms * RoadLoad.Gravity;
            halfDensity = conditions.AirDensityKilogramsPerCubicMetre / 2;
            moved = conditions.Mass.Kilograms + conditions.RotatingMass.Kilograms;
            count = Shared + parts.Count;
            firsts = new int[parts.Count + 1];
            for (var i = 0; i < parts.Count; i++) firsts[i + 1] = firsts[i] + parts[i].Run.Seconds.Length;
            var twoWays = parts.Exists(p => p.IsThere) && parts.Exists(p => !p.IsThere);
            var wind = conditions.Headwind?.Si;
            var slope = conditions.Slope?.Value ?? (twoWays ? null : (double?)0);
            var (least, greatest) = (new double[count], new double[count]);
            Start = new double[count];
            Bound(Rolling, 0, 0.3, 0.018);
            Bound(Drag, 0, 3, 0.5);
            Bound(Grade, slope ?? -0.15, slope ?? 0.15, slope ?? 0);
            Bound(Wind, wind ?? -10, wind ?? 10, wind ?? 0);
            for (var i = 0; i < parts.Count; i++)
                Bound(Shared + i, 0, 60, parts[i].Run.Speeds[0] / scale);
            Problem = new(firsts[^1], Left) { Slopes = Slopes, Least = least, Greatest = greatest };

            void Bound(int unknown, double low, double high, double start) =>
                (least[unknown], greatest[unknown], Start[unknown]) = (low, high, start);
        }

        public double[] Start { get; }

        public NonlinearProblem Problem { get; }

        /// <summary>What the unknowns leave of the readings as they are.</summary>
        public double[] Plain(double[] x)
        {
            var left = new double[firsts[^1]];
            for (var i = 0; i < parts.Count; i++) Left(i, x, x[Shared + i], left);
            return left;
        }

        void Left(ReadOnlySpan<double> x, Span<double> left)
        {
            for (var i = 0; i < parts.Count; i++)
            {
                Left(i, x, x[Shared + i], left);
                drift?.Whiten(parts[i].Run.Seconds, left[firsts[i]..], 1);
            }
        }

        void Left(int run, ReadOnlySpan<double> x, double startSpeed, Span<double> left)
        {
            var seconds = parts[run].Run.Seconds;
            var speeds = parts[run].Run.Speeds;
            var way = parts[run].IsThere ? 1 : -1;
            var cosine = 1 / Sqrt(1 + x[Grade] * x[Grade]);
            var rolling = weight * cosine * (x[Rolling] + way * x[Grade]);
            var wind = way * x[Wind];
            var rates = new Glide(rolling / moved, halfDensity * x[Drag] / moved);
            for (var k = 0; k < seconds.Length; k++)
                left[firsts[run] + k] = rates.After(startSpeed + wind, seconds[k]) - wind - speeds[k] / scale;
        }

        void Slopes(ReadOnlySpan<double> x, Span<double> slopes)
        {
            double[] steps = [1e-6, 1e-5, 1e-6, 1e-4];
            var (above, below, place) = (new double[firsts[^1]], new double[firsts[^1]], x.ToArray());
            for (var j = 0; j < Shared; j++)
            {
                var (high, low) = (x[j] + steps[j], Max(x[j] - steps[j], j <= Drag ? 0 : double.NegativeInfinity));
                place[j] = high;
                Left(place, above);
                place[j] = low;
                Left(place, below);
                place[j] = x[j];
                for (var row = 0; row < above.Length; row++) slopes[row * count + j] = (above[row] - below[row]) / (high - low);
            }

            const double Step = 1e-4;
            for (var i = 0; i < parts.Count; i++)
            {
                Left(i, x, x[Shared + i] + Step, above);
                Left(i, x, x[Shared + i] - Step, below);
                for (var row = firsts[i]; row < firsts[i + 1]; row++) slopes[row * count + Shared + i] = (above[row] - below[row])
                    / (2 * Step);
                drift?.Whiten(parts[i].Run.Seconds, slopes[(firsts[i] * count + Shared + i)..], count);
            }
        }
    }

    /// <summary>du/dt = −a − b u|u| in closed form, for speeds through the air of either sign.</summary>
    /// <param name="Steady">a, m/s², either sign.</param>
    /// <param name="Drag">b, 1/m, 0 or more.</param>
    [StructLayout(LayoutKind.Auto)]
    readonly record struct Glide(double Steady, double Drag)
    {
        public double After(double start, double seconds)
        {
            // With u → −u and a → −a the law is the same.
            if (start < 0 || (start == 0 && Steady > 0))
                return -new Glide(-Steady, Drag).AfterForward(-start, seconds);
            return AfterForward(start, seconds);
        }

        double AfterForward(double start, double seconds)
        {
            if (Drag < 1e-12)
                return start - Steady * seconds;
            if (Steady == 0)
                return start / (1 + Drag * start * seconds);
            var rate = Sqrt(Abs(Steady) * Drag);
            var balance = Sqrt(Abs(Steady) / Drag);
            if (Steady < 0)
            {
                var growth = Tanh(rate * seconds);
                return balance * (start + balance * growth) / (balance + start * growth);
            }

            var untilStill = Atan(start / balance) / rate;
            if (seconds > untilStill)
                return -new Glide(-Steady, Drag).AfterForward(0, seconds - untilStill);
            var tangent = Tan(rate * seconds);
            return (start - balance * tangent) / (1 + start / balance * tangent);
        }
    }
}
