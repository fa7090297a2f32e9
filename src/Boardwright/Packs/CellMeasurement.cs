using System.Runtime.InteropServices;
using Boardwright.Findings;

namespace Boardwright.Packs;

/// <summary>What the rows of a measured file are.</summary>
public enum CellRecordKind
{
    /// <summary>Samples at an instant, with the tester's own count of the charge taken out.</summary>
    Samples,
    /// <summary>Means over the time to the next row, as of a drive.</summary>
    Means,
    /// <summary>Samples of a charge, with a count of the charge put in.</summary>
    Charge,
}

/// <summary>One row of a measured file.</summary>
/// <param name="Seconds">Time.</param>
/// <param name="Amperes">Current; positive when it leaves the cell.</param>
/// <param name="Volts">Terminal voltage.</param>
/// <param name="Watts">Power at the terminals; not a number where the file has none.</param>
/// <param name="Coulombs">Charge counted, out of the full cell or, in a charge, into the cell; not a number where the file has
/// none.</param>
/// <param name="Kelvins">Temperature of the case.</param>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CellReading(double Seconds, double Amperes, double Volts, double Watts, double Coulombs, double Kelvins);

/// <summary>A stretch of a measurement during which the current is taken as constant.</summary>
/// <param name="Reading">Place of the row it belongs to.</param>
/// <param name="Seconds">How long it is.</param>
/// <param name="Amperes">Mean current.</param>
/// <param name="CoulombsAfter">Charge taken out of the full cell at its end.</param>
/// <source cref="Sources.CircuitTheory"/>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CellStretch(int Reading, double Seconds, double Amperes, double CoulombsAfter);

/// <summary>A measurement of one cell over time that begins with the cell full and rested.</summary>
/// <source cref="Sources.CircuitTheory"/>
public sealed record CellMeasurement
{
    // A count that jumps by more than this against the current was set to zero by the tester: 0.02 Ah.
    const double Jump = 72;

    // Pulses are followed by charges that put back a few per cent; more than this part of the whole is the charge after the test.
    const double Recharge = 0.25;

    /// <summary>Puts rows together.</summary>
    /// <param name="name">Name of the measurement, such as its file's.</param>
    /// <param name="kind">What the rows are.</param>
    /// <param name="readings">At least two rows, their times not falling.</param>
    /// <exception cref="ArgumentException">The rows break one of these conditions.</exception>
    public CellMeasurement(string name, CellRecordKind kind, IReadOnlyList<CellReading> readings)
    {
        if (readings.Count < 2)
            throw new ArgumentException("A measurement needs at least two rows.", nameof(readings));
        for (var i = 1; i < readings.Count; i++)
        {
            if (!(readings[i].Seconds >= readings[i - 1].Seconds))
                throw new ArgumentException(FormattableString.Invariant($"Time falls in row {i + 1}."), nameof(readings));
        }

        (Name, Kind) = (name, kind);
        Readings = readings;
        Stretches = kind == CellRecordKind.Means ? OfMeans(readings) : OfSamples(readings, kind);
    }

    /// <summary>Name of the measurement.</summary>
    public string Name { get; }
    /// <summary>What the rows are.</summary>
    public CellRecordKind Kind { get; }
    /// <summary>The rows.</summary>
    public IReadOnlyList<CellReading> Readings { get; }
    /// <summary>The stretches between the rows, in order; none of the charge that follows a test, nor after the tester has set its count to
    /// zero, which begins another test.</summary>
    public IReadOnlyList<CellStretch> Stretches { get; }
    /// <summary>Rows that are left out because the test had ended before.</summary>
    public int RowsLeftOut => Readings.Count - Stretches[^1].Reading - 1;
    /// <summary>Whether it can teach a fit: samples, taken at an instant.</summary>
    public bool CanTeach => Kind == CellRecordKind.Samples;

    static List<CellStretch> OfMeans(IReadOnlyList<CellReading> readings)
    {
        var stretches = new List<CellStretch>(readings.Count);
        var coulombs = 0.0;
        for (var i = 0; i < readings.Count; i++)
        {
            // The last row lasts as long as the one before it.
            var seconds = i + 1 < readings.Count ? readings[i + 1].Seconds - readings[i].Seconds : stretches[i - 1].Seconds;
            coulombs += readings[i].Amperes * seconds;
            stretches.Add(new CellStretch(i, seconds, readings[i].Amperes, coulombs));
        }

        return stretches;
    }

    static List<CellStretch> OfSamples(IReadOnlyList<CellReading> readings, CellRecordKind kind)
    {
        var stretches = new List<CellStretch>(readings.Count);
        var start = readings[0];
        // A test whose first row is late began from rest with the current of that row.
        var coulombs = kind == CellRecordKind.Charge || double.IsNaN(start.Coulombs) ? 0 : start.Coulombs;
        stretches.Add(coulombs * start.Amperes > 0
            ? new CellStretch(0, coulombs / start.Amperes, start.Amperes, coulombs)
            : new CellStretch(0, 0, start.Amperes, coulombs));
        for (var i = 1; i < readings.Count; i++)
        {
            var (before, now) = (readings[i - 1], readings[i]);
            var seconds = now.Seconds - before.Seconds;
            var (counted, taken) = (now.Coulombs - before.Coulombs, (before.Amperes + now.Amperes) / 2 * seconds);
            if (kind == CellRecordKind.Charge) counted = -counted;
            var (least, most) = (Math.Min(before.Amperes, now.Amperes) * seconds, Math.Max(before.Amperes, now.Amperes) * seconds);
            if (counted < least - Jump - 0.2 * Math.Abs(least) || counted > most + Jump + 0.2 * Math.Abs(most)) break;
            // A step of the current lies right behind the row before it, so a short stretch has the current of its end;
            // over a long one the count is better than any guess from the ends, over a short one it is too coarse.
            var amperes = seconds <= 1 ? now.Amperes : double.IsNaN(counted) ? taken / seconds : counted / seconds;
            coulombs = double.IsNaN(counted) ? coulombs + amperes * seconds : coulombs + counted;
            stretches.Add(new CellStretch(i, seconds, amperes, coulombs));
        }

        return kind == CellRecordKind.Charge ? stretches : stretches[..LengthOfTest(stretches)];
    }

    static int LengthOfTest(List<CellStretch> stretches)
    {
        var (peak, most) = (0, stretches.Max(s => s.CoulombsAfter));
        for (var i = 0; i < stretches.Count; i++)
        {
            if (stretches[i].CoulombsAfter >= stretches[peak].CoulombsAfter) peak = i;
            else if (stretches[peak].CoulombsAfter - stretches[i].CoulombsAfter > Recharge * most) return peak + 1;
        }

        return stretches.Count;
    }
}
