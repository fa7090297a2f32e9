using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>A cell with two branches fitted to pulses and constant-current discharges of one or several temperatures.</summary>
/// <remarks>
/// For given time constants the voltage is linear in the values of rest voltage, R0, R1 and R2 at fixed states of charge, so they follow
/// from one
/// bounded linear least squares: the rest voltage never falls with charge, the resistances stay above a floor. The time constants
/// are the pair of a grid with the least sum of squares. Every sample counts the same. Differences of neighbouring resistances are held
/// together
/// by a weak spring, so that states the measurement never loads take the value of their neighbours.
/// With several temperatures the rest voltage comes from the one nearest 25 °C, and each temperature gets resistances of its own; the time
/// constants are shared.
/// Within a temperature R follows exp(B(1/T − 1/T0)) with the temperature of the case: B from the neighbouring temperatures, or 2500 K
/// where there is only one.
/// </remarks>
/// <validity>Measurements that begin with the full, rested cell and count charge from there. States and temperatures that were not measured
/// are not covered: the tables end at the coldest and warmest case seen.</validity>
/// <error>Drives that were not used: at 25 °C 9 to 14 mV RMS and at most 0.2 % of the energy, at 0 °C 21 to 40 mV and up to 1.2 %
/// (handbook, battery, section 3); what the fit itself leaves is in <see cref="Replays"/>.</error>
/// <source cref="Sources.Plett"/>
public sealed record CellFit
{
    // Slope of ln R over 1/T where only one temperature was measured, in kelvin: the middle of what an 18650 cell showed between −20 and 40
    // °C.
    const double UsualActivation = 2500;

    // Measurements that begin within this many kelvin of each other are of one temperature.
    const double SameTemperature = 6;

    // Ampere for which a difference of neighbouring resistances counts as one more sample; a few hundred samples of some amperes stand
    // against it.
    const double Spring = 10;
    const double RestSpring = 0.1;

    static readonly double[] RestPlaces =
    [
        0, 0.015, 0.03, 0.05, 0.075, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5,
        0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.925, 0.95, 0.965, 0.98, 0.99, 1,
    ];

    static readonly double[] OhmPlaces = [0, 0.03, 0.07, 0.125, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1];
    static readonly double[] FirstSeconds = [0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24];
    static readonly double[] SecondSeconds = [30, 40, 60, 80, 120, 160, 240, 320, 480, 640];

    /// <summary>The least charge that the measurements must take out of the cell: 10 mAh.</summary>
    public static Charge LeastCapacity { get; } = Charge.FromCoulombs(36);

    CellFit(Cell cell, CellModel model) => (Cell, Model) = (cell, model);

    /// <summary>The cell as a shelf part.</summary>
    public Cell Cell { get; }
    /// <summary>The cell as a model.</summary>
    public CellModel Model { get; }
    /// <summary>The temperatures that were fitted, each the mean of its measurements, coldest first.</summary>
    public IReadOnlyList<Temperature> Temperatures { get; private init; } = [];
    /// <summary>Slopes of ln R over 1/T that were used, in kelvin: one between each two temperatures, or the usual one alone.</summary>
    public IReadOnlyList<double> Activations { get; private init; } = [];
    /// <summary>Whether the slope over temperature was assumed, because there is one temperature only.</summary>
    public bool ActivationIsAssumed => Temperatures.Count < 2;
    /// <summary>What the finished model leaves of each measurement it was fitted to.</summary>
    public IReadOnlyList<CellReplay> Replays { get; private init; } = [];
    /// <summary>Root of the mean square over all samples of all measurements, in volts.</summary>
    public double RmsVolts => Sqrt(Replays.Sum(r => r.RmsVolts * r.RmsVolts * r.Rows) / Replays.Sum(r => r.Rows));
    /// <summary>The measurement with the largest single error.</summary>
    public CellReplay Worst => Replays.MaxBy(r => Abs(r.WorstVolts))!;
    /// <summary>Rows of the measurements that were not used, as their test had ended before.</summary>
    public int RowsLeftOut { get; private init; }
    /// <summary>How many of the resistances lie at their floor or ceiling: signs of a measurement that cannot tell them apart.</summary>
    public int Held { get; private init; }
    /// <summary>How many resistances were fitted.</summary>
    public int Resistances { get; private init; }
    /// <summary>Time constants tried and the root of the mean square that each pair left, in volts, best first.</summary>
    public IReadOnlyList<(double First, double Second, double RmsVolts)> Tried { get; private init; } = [];
    /// <summary>Whether the best pair of time constants lies at an edge of the grid.</summary>
    public bool AtGridEdge { get; private init; }
    /// <summary>What the charges that were given say of the tail, where there were any.</summary>
    public IReadOnlyList<MeasuredCharge> Charges { get; private init; } = [];

    /// <summary>Fits a cell.</summary>
    /// <param name="id">Id of the shelf part.</param>
    /// <param name="measurements">Samples of pulses and constant current, at least one; charges among them give the tail of a
    /// charge.</param>
    /// <param name="timeConstants">The two time constants, where they are not to be searched.</param>
    /// <exception cref="ArgumentException">There are no samples, a measurement is of means, or hardly any charge was taken out.</exception>
    public static CellFit Fit(
        string id, IReadOnlyList<CellMeasurement> measurements, (Duration First, Duration Second)? timeConstants = null)
    {
        if (measurements.FirstOrDefault(m => m.Kind == CellRecordKind.Means) is { } means)
            throw new ArgumentException($"'{means.Name}' holds means over time, from which a resistance at once cannot be told.", nameof(measurements));
        var teachers = measurements.Where(m => m.CanTeach).ToArray();
        if (teachers.Length == 0)
            throw new ArgumentException("A fit needs samples of pulses or of constant current.", nameof(measurements));
        var capacity = teachers.Max(m => m.Stretches.Max(s => s.CoulombsAfter));
        if (!(capacity >= LeastCapacity.Coulombs))
            throw new ArgumentException("The measurements take less than 10 mAh out of the cell.", nameof(measurements));

        var groups = ReadingGroup.Sorted(teachers, capacity);
        var home = groups.MinBy(g => Abs(g.Kelvins - 298.15))!;
        var activations = groups.Count == 1 ? [UsualActivation] : Enumerable.Repeat(UsualActivation, groups.Count - 1).ToArray();
        var search = new CellSearch(groups, home);
        var (first, second) = timeConstants is { } given
            ? (given.First.Seconds, given.Second.Seconds)
            : search.Best(activations);
        var solved = search.Solve(first, second, activations);
        if (groups.Count > 1)
        {
            activations = [.. Enumerable.Range(0, groups.Count - 1)
                .Select(k => Activation(groups[k], solved.Ohms[k], groups[k + 1], solved.Ohms[k + 1]))];
            solved = search.Solve(first, second, activations);
        }

        Known<T> Measured<T>(T value)
            where T : notnull => new(value, from: Origin.Measured);
        var tables = Enumerable.Range(0, 3).Select(b => Table(groups, activations, [.. solved.Ohms.Select(o => o[b])])).ToArray();
        var charges = measurements.Where(m => m.Kind == CellRecordKind.Charge).Select(MeasuredCharge.Measure).OfType<MeasuredCharge>()
            .ToArray();
        var cell = new Cell
        {
            Id = id,
            Capacity = Measured(Charge.FromCoulombs(capacity)),
            RestVoltage = Measured(solved.Rest),
            Resistance = Measured(tables[0]),
            Polarisation = new Polarisation
            {
                R1 = Measured(tables[1]),
                Tau1 = Measured(Duration.FromSeconds(first)),
                R2 = Measured(tables[2]),
                Tau2 = Measured(Duration.FromSeconds(second)),
            },
            ChargeTail = charges.Length > 0 ? Measured(Duration.FromSeconds(charges.Average(c => c.Decay.Seconds))) : default,
        };
        var model = CellModel.Compute(cell).Value;
        return new CellFit(cell, model)
        {
            Temperatures = [.. groups.Select(g => Temperature.FromKelvins(g.Kelvins))],
            Activations = activations,
            Replays = [.. teachers.Select(m => CellReplay.Replay(model, m))],
            RowsLeftOut = teachers.Sum(m => m.RowsLeftOut),
            Held = solved.Held,
            Resistances = 3 * OhmPlaces.Length * groups.Count,
            Tried = search.Tried,
            AtGridEdge = timeConstants is null
                && (first == FirstSeconds[0] || first == FirstSeconds[^1] || second == SecondSeconds[0] || second == SecondSeconds[^1]),
            Charges = charges,
        };
    }

    static double Activation(ReadingGroup cold, double[][] coldOhms, ReadingGroup warm, double[][] warmOhms)
    {
        // The well-measured middle of the charge, all three resistances together.
        static double Whole(double[][] ohms) =>
            Enumerable.Range(0, OhmPlaces.Length).Where(i => OhmPlaces[i] is >= 0.25 and <= 0.95).Sum(i => ohms.Sum(o => o[i]));
        return Clamp(Log(Whole(coldOhms) / Whole(warmOhms)) / (1 / cold.Kelvins - 1 / warm.Kelvins), 0, 8000);
    }

    static ResistanceTable Table(IReadOnlyList<ReadingGroup> groups, double[] activations, double[][] ohms)
    {
        var columns = groups.Select((g, k) => (g.Kelvins, Group: k)).ToList();
        // Whole degrees outside the coldest and warmest case, so that everything seen is covered and nothing else.
        var (coldest, warmest) = (Floor(groups.Min(g => g.Coldest) - 273.15) + 273.15,
            Ceiling(groups.Max(g => g.Warmest) - 273.15) + 273.15);
        if (groups.Count == 1) columns.Clear();
        if (columns.Count == 0 || coldest < columns[0].Kelvins - 0.5) columns.Insert(0, (coldest, 0));
        if (columns.Count == 1 || warmest > columns[^1].Kelvins + 0.5) columns.Add(
            (Max(warmest, columns[0].Kelvins + 1), groups.Count - 1));
        return new ResistanceTable(
            [.. OhmPlaces.Select(Fraction.FromValue)],
            [.. columns.Select(c => Temperature.FromKelvins(c.Kelvins))],
            [.. OhmPlaces.Select((_, i) =>
            (IReadOnlyList<Resistance>)[.. columns.Select(
            c => Resistance.FromOhms(ohms[c.Group][i] * groups[c.Group].Warmth(c.Kelvins, activations)))])]);
    }

    /// <summary>Measurements of one temperature.</summary>
    sealed class ReadingGroup
    {
        readonly int place;
        readonly CellMeasurement[] measurements;
        readonly double capacity;

        ReadingGroup(int place, CellMeasurement[] measurements, double capacity)
        {
            (this.place, this.measurements, this.capacity) = (place, measurements, capacity);
            var kelvins = measurements.SelectMany(m => m.Stretches.Select(s => m.Readings[s.Reading].Kelvins)).ToArray();
            (Coldest, Warmest) = (kelvins.Min(), kelvins.Max());
            Kelvins = Round(kelvins.Average() - 273.15) + 273.15;
        }

        public double Kelvins { get; }

        public double Coldest { get; }

        public double Warmest { get; }

        public int Rows => measurements.Sum(m => m.Stretches.Count);

        public static IReadOnlyList<ReadingGroup> Sorted(CellMeasurement[] measurements, double capacity)
        {
            var groups = new List<List<CellMeasurement>>();
            foreach (var one in measurements.OrderBy(m => m.Readings[0].Kelvins))
            {
                if (groups.Count > 0 && one.Readings[0].Kelvins - groups[^1][0].Readings[0].Kelvins < SameTemperature) groups[^1].Add(one);
                else groups.Add([one]);
            }

            return [.. groups.Select((g, k) => new ReadingGroup(k, [.. g], capacity))];
        }

        /// <summary>Resistance at a temperature as a multiple of that at the group's own.</summary>
        public double Warmth(double kelvins, double[] activations)
        {
            var between = kelvins < Kelvins ? place - 1 : place;
            return Exp(activations[Clamp(between, 0, activations.Length - 1)] * (1 / kelvins - 1 / Kelvins));
        }

        /// <summary>Fits the group: rest voltage and resistances, or resistances alone on a given rest voltage.</summary>
        public LeastSquaresSolution Solve(double first, double second, double[] activations, Curve<Fraction, Voltage>? rest)
        {
            var (open, count) = (rest is null ? RestPlaces.Length : 0, OhmPlaces.Length);
            var unknowns = open + 3 * count;
            var problem = new LeastSquares(unknowns);
            var row = new double[unknowns];
            var (fast, slow, weights) = (new double[count], new double[count], new double[RestPlaces.Length]);
            foreach (var measured in measurements)
            {
                Array.Clear(fast);
                Array.Clear(slow);
                var before = 0.0;
                foreach (var stretch in measured.Stretches)
                {
                    var reading = measured.Readings[stretch.Reading];
                    var warmth = Warmth(reading.Kelvins, activations);
                    var (charge, middle) = (1 - stretch.CoulombsAfter / capacity, 1 - (before + stretch.CoulombsAfter) / (2 * capacity));
                    before = stretch.CoulombsAfter;
                    Feed(fast, Exp(-stretch.Seconds / first), middle, warmth * stretch.Amperes);
                    Feed(slow, Exp(-stretch.Seconds / second), middle, warmth * stretch.Amperes);
                    Array.Clear(row);
                    if (open > 0)
                    {
                        Smooth(charge, weights);
                        // The unknowns are the lowest voltage and the rises from place to place, so that a bound keeps it from falling.
                        var above = 0.0;
                        for (var j = open - 1; j >= 0; j--) row[j] = above += weights[j];
                    }

                    var (i, along) = Between(charge);
                    row[open + i] -= (1 - along) * warmth * reading.Amperes;
                    row[open + i + 1] -= along * warmth * reading.Amperes;
                    for (var j = 0; j < count; j++)
                    {
                        row[open + count + j] = -fast[j];
                        row[open + 2 * count + j] = -slow[j];
                    }

                    problem.Add(row, rest is null ? reading.Volts : reading.Volts - rest.At(charge));
                }
            }

            AddSprings(problem, row, open);
            var (least, greatest) = (new double[unknowns], new double[unknowns]);
            // The rest voltage rises by at least 0.1 mV, the resistances keep off zero, where their logarithm could not be read between
            // temperatures.
            least.AsSpan(0, open).Fill(1e-4);
            greatest.AsSpan(0, open).Fill(6);
            least.AsSpan(open).Fill(5e-4);
            greatest.AsSpan(open).Fill(5);
            return problem.Solve(least, greatest);
        }

        static void AddSprings(LeastSquares problem, double[] row, int open)
        {
            for (var part = 0; part < 3; part++)
            {
                for (var j = 1; j < OhmPlaces.Length; j++)
                {
                    Array.Clear(row);
                    var at = open + part * OhmPlaces.Length + j;
                    (row[at - 1], row[at]) = (-Spring, Spring);
                    problem.Add(row, 0);
                }
            }

            for (var j = 2; j < open; j++)
            {
                Array.Clear(row);
                var (left, right) = (RestPlaces[j - 1] - RestPlaces[j - 2], RestPlaces[j] - RestPlaces[j - 1]);
                (row[j - 1], row[j]) = (-RestSpring * right / left, RestSpring);
                problem.Add(row, 0);
            }
        }

        static void Feed(double[] held, double kept, double charge, double amperes)
        {
            // What has died away is dropped, before it gets so small that it is slow to compute with.
            for (var j = 0; j < held.Length; j++) held[j] = Abs(held[j]) < 1e-12 ? 0 : held[j] * kept;
            var (i, along) = Between(charge);
            held[i] += (1 - kept) * (1 - along) * amperes;
            held[i + 1] += (1 - kept) * along * amperes;
        }

        static (int Place, double Along) Between(double charge)
        {
            var i = 0;
            while (i < OhmPlaces.Length - 2 && charge >= OhmPlaces[i + 1]) i++;
            return (i, Clamp((charge - OhmPlaces[i]) / (OhmPlaces[i + 1] - OhmPlaces[i]), 0, 1));
        }

        /// <summary>Weights of the places in a cubic through them with the slopes of parabolas, which is what <see cref="MonotoneCubic"/>
        /// lays where it need not hold back a slope.</summary>
        static void Smooth(double charge, double[] weights)
        {
            Array.Clear(weights);
            var s = Clamp(charge, 0, 1);
            var i = 0;
            while (i < RestPlaces.Length - 2 && s >= RestPlaces[i + 1]) i++;
            var width = RestPlaces[i + 1] - RestPlaces[i];
            var t = (s - RestPlaces[i]) / width;
            weights[i] += (1 + 2 * t) * (1 - t) * (1 - t);
            weights[i + 1] += t * t * (3 - 2 * t);
            Slope(i, width * t * (1 - t) * (1 - t), weights);
            Slope(i + 1, width * t * t * (t - 1), weights);
        }

        static void Slope(int place, double times, double[] weights)
        {
            // The parabola through a place and its neighbours; at an end, through the three outermost places.
            var middle = Clamp(place, 1, RestPlaces.Length - 2);
            var (left, right) = (RestPlaces[middle] - RestPlaces[middle - 1], RestPlaces[middle + 1] - RestPlaces[middle]);
            var (onLeft, onRight) = place < middle ? (1 + left / (left + right), -left / (left + right))
                : place > middle ? (-right / (left + right), 1 + right / (left + right))
                : (right / (left + right), left / (left + right));
            weights[middle - 1] -= times * onLeft / left;
            weights[middle] += times * (onLeft / left - onRight / right);
            weights[middle + 1] += times * onRight / right;
        }
    }

    sealed record Solved(Curve<Fraction, Voltage> Rest, double[][][] Ohms, int Held, double SumOfSquares);

    /// <summary>The groups solved for pairs of time constants.</summary>
    sealed class CellSearch(IReadOnlyList<ReadingGroup> groups, ReadingGroup home)
    {
        readonly Dictionary<(int, int), double> seen = [];

        public IReadOnlyList<(double First, double Second, double RmsVolts)> Tried =>
            [.. seen.Select(p => (FirstSeconds[p.Key.Item1], SecondSeconds[p.Key.Item2], Sqrt(p.Value / groups.Sum(g => g.Rows))))
            .OrderBy(t => t.Item3)];

        public Solved Solve(double first, double second, double[] activations)
        {
            var atHome = home.Solve(first, second, activations, null);
            var volts = 0.0;
            var rest = new Curve<Fraction, Voltage>(RestPlaces.Select((place, j) => (place, volts += atHome.Values[j])));
            var (ohms, held, squares) = (new double[groups.Count][][], 0, 0.0);
            for (var k = 0; k < groups.Count; k++)
            {
                var isHome = groups[k] == home;
                var solution = isHome ? atHome : groups[k].Solve(first, second, activations, rest);
                var open = isHome ? RestPlaces.Length : 0;
                ohms[k] = [.. Enumerable.Range(0, 3)
                    .Select(b => solution.Values.Skip(open + b * OhmPlaces.Length).Take(OhmPlaces.Length).ToArray())];
                held += solution.Held.Count(i => i >= open);
                squares += solution.SumOfSquares;
            }

            return new Solved(rest, ohms, held, squares);
        }

        /// <summary>Walks the grid from its middle to the better neighbour until there is none.</summary>
        public (double First, double Second) Best(double[] activations)
        {
            var at = (Array.IndexOf(FirstSeconds, 4), Array.IndexOf(SecondSeconds, 120));
            while (true)
            {
                var next = at;
                for (var i = Max(0, at.Item1 - 1); i <= Min(FirstSeconds.Length - 1, at.Item1 + 1); i++)
                {
                    for (var j = Max(0, at.Item2 - 1); j <= Min(SecondSeconds.Length - 1, at.Item2 + 1); j++)
                    {
                        if (Squares(i, j) < Squares(next.Item1, next.Item2)) next = (i, j);
                    }
                }

                if (next == at) return (FirstSeconds[at.Item1], SecondSeconds[at.Item2]);
                at = next;
            }

            double Squares(int i, int j)
            {
                if (!seen.TryGetValue((i, j), out var squares))
                    seen[(i, j)] = squares = Solve(FirstSeconds[i], SecondSeconds[j], activations).SumOfSquares;
                return squares;
            }
        }
    }
}
