using Boardwright.Findings;
using Boardwright.Numerics;
using Boardwright.Parts;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>A cell from two discharge curves at different constant currents, as a maker's sheet shows them: R(q) = (V1 − V2)/(I2 − I1),
/// E(q) = V1 + I1·R.</summary>
/// <remarks>Before both curves have begun, and behind the end of the shorter one, the resistance stays as it was last known; the rest
/// voltage never falls with charge.</remarks>
/// <validity>The temperature of the curves, for means over minutes. Its one resistance holds slow polarisation, so that short bursts come
/// out too weak.</validity>
/// <error>Drives at 25 °C: 29 to 73 mV RMS, and 1.7 to 3.1 % too little energy (handbook, battery, section 3).</error>
/// <source cref="Sources.Plett"/>
sealed record TwoCurveModel
{
    const int Places = 40;

    TwoCurveModel(Cell cell, Current slow, Current fast) =>
        (Cell, Model, SlowCurrent, FastCurrent) = (cell, CellModel.Compute(cell).Value, slow, fast);

    /// <summary>The cell as a shelf part, without polarisation.</summary>
    public Cell Cell { get; }
    /// <summary>The cell as a model.</summary>
    public CellModel Model { get; }
    /// <summary>Current of the slower discharge.</summary>
    public Current SlowCurrent { get; }
    /// <summary>Current of the faster discharge.</summary>
    public Current FastCurrent { get; }

    /// <summary>Reads a cell from two discharges.</summary>
    /// <param name="id">Id of the shelf part.</param>
    /// <param name="one">One discharge at constant current, from the full cell.</param>
    /// <param name="other">The other.</param>
    /// <exception cref="ArgumentException">The currents are within a third of each other, or a discharge has fewer than four rows of
    /// current.</exception>
    public static TwoCurveModel Create(string id, CellMeasurement one, CellMeasurement other)
    {
        var (slow, fast) = (Discharge.Create(one), Discharge.Create(other));
        if (slow.Amperes > fast.Amperes) (slow, fast) = (fast, slow);
        if (fast.Amperes < 4.0 / 3 * slow.Amperes)
            throw new ArgumentException("The two discharges need currents further apart: at least a third.", nameof(other));
        var capacity = slow.Volts.End;
        var (from, to) = (Max(slow.Volts.Start, fast.Volts.Start), Min(slow.Volts.End, fast.Volts.End));
        double OhmsAt(double coulombs)
        {
            var at = Clamp(coulombs, from, to);
            return Max((slow.Volts.At(at) - fast.Volts.At(at)) / (fast.Amperes - slow.Amperes), 1e-4);
        }

        var points = new List<(double Charge, double Volts, double Ohms)>();
        for (var (i, least) = (0, 0.0); i <= Places; i++)
        {
            var charge = (double)i / Places;
            var coulombs = (1 - charge) * capacity;
            var early = Min(coulombs - slow.Volts.Start, 0) * slow.Volts.Slope(slow.Volts.Start);
            least = Max(least + 1e-5, slow.Volts.At(coulombs) + early + slow.Amperes * OhmsAt(coulombs));
            points.Add((charge, least, OhmsAt(coulombs)));
        }

        Known<T> Measured<T>(T value)
            where T : notnull => new(value, from: Origin.Measured);
        return new TwoCurveModel(
            new Cell
            {
                Id = id,
                Capacity = Measured(Charge.FromCoulombs(capacity)),
                RestVoltage = Measured(new Curve<Fraction, Voltage>(points.Select(p => (p.Charge, p.Volts)))),
                Resistance = Measured(new ResistanceTable(
                    [.. points.Select(p => Fraction.FromValue(p.Charge))], [],
                    [.. points.Select(p => (IReadOnlyList<Resistance>)[Resistance.FromOhms(p.Ohms)])])),
            },
            Current.FromAmperes(slow.Amperes),
            Current.FromAmperes(fast.Amperes));
    }

    /// <summary>A discharge at constant current: its voltage over the charge taken out, in coulombs.</summary>
    sealed record Discharge(double Amperes, Polyline Volts)
    {
        public static Discharge Create(CellMeasurement measured)
        {
            var rows = measured.Stretches.Select(
                s => (s.CoulombsAfter, measured.Readings[s.Reading].Amperes, measured.Readings[s.Reading].Volts)).ToArray();
            var most = rows.Max(r => r.Amperes);
            var loaded = new List<(double Coulombs, double Amperes, double Volts)>();
            foreach (var row in rows)
            {
                if (row.Amperes > 0.9 * most && (loaded.Count == 0 || row.CoulombsAfter > loaded[^1].Coulombs)) loaded.Add(row);
            }

            if (!(most > 0) || loaded.Count < 4)
                throw new ArgumentException($"'{measured.Name}' is not a discharge at constant current.", nameof(measured));
            return new Discharge(loaded.Average(r => r.Amperes),
                new Polyline([.. loaded.Select(r => r.Coulombs)], [.. loaded.Select(r => r.Volts)]));
        }
    }
}
