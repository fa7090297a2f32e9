using Boardwright.Findings;

namespace Boardwright.Packs;

/// <summary>A measured current sent through a model, and how far the model's voltage and energy lie from the measured ones.</summary>
/// <remarks>
/// The cell begins full and rested, at the measured temperature of its case. A row of means is compared with the model's mean over the same
/// time;
/// a sample with the model's voltage at that instant. Measured energy is the sum of the file's power where it has one, else of current
/// times voltage.
/// </remarks>
/// <validity>Measurements that begin with the full cell. The cell's core is warmer than its case under large currents, which is not known
/// here.</validity>
/// <error>None of its own.</error>
/// <source cref="Sources.Plett"/>
public sealed record CellReplay
{
    CellReplay(string name) => Name = name;

    /// <summary>Name of the measurement.</summary>
    public string Name { get; }
    /// <summary>Rows compared.</summary>
    public int Rows { get; private init; }
    /// <summary>Root of the mean square of the voltage error, in volts.</summary>
    public double RmsVolts { get; private init; }
    /// <summary>The voltage error of largest size, model less measured, in volts.</summary>
    public double WorstVolts { get; private init; }
    /// <summary>When that was, in the file's own time.</summary>
    public double WorstSeconds { get; private init; }
    /// <summary>State of charge at that time.</summary>
    public double WorstCharge { get; private init; }
    /// <summary>Root of the mean square over the rows with more than a tenth of the charge left; not a number where there are
    /// none.</summary>
    public double RmsVoltsAboveTenth { get; private init; }
    /// <summary>Energy taken out by the model's voltage.</summary>
    public Energy Model { get; private init; }
    /// <summary>Energy taken out as measured.</summary>
    public Energy Measured { get; private init; }
    /// <summary>How much more energy the model gave than was measured, as a part of the measured; not a number where the cell got back more
    /// than a third of what it gave, so that the part says nothing.</summary>
    public double EnergyError { get; private init; }
    /// <summary>State of charge at the end.</summary>
    public double EndCharge { get; private init; }

    /// <summary>Replays a measurement.</summary>
    /// <exception cref="ArgumentException">The measurement is a charge, which begins at an unknown state.</exception>
    public static CellReplay Replay(CellModel model, CellMeasurement measured)
    {
        if (measured.Kind == CellRecordKind.Charge)
            throw new ArgumentException("A charge begins at an unknown state of charge and cannot be replayed.", nameof(measured));
        var capacity = model.Capacity.Coulombs;
        var state = CellState.Rested(1);
        var (squares, upper, upperRows) = (0.0, 0.0, 0);
        var (worst, worstAt) = (0.0, (Seconds: 0.0, Charge: 1.0));
        var (joules, measuredJoules, returned) = (0.0, 0.0, 0.0);
        foreach (var stretch in measured.Stretches)
        {
            var row = measured.Readings[stretch.Reading];
            var step = model.Step(state, stretch.Amperes, stretch.Seconds, row.Kelvins);
            state = step.After with { Charge = 1 - stretch.CoulombsAfter / capacity };
            var means = measured.Kind == CellRecordKind.Means;
            var error = (means ? step.MeanVolts : model.VoltsAt(state, row.Amperes, row.Kelvins)) - row.Volts;
            joules += step.Watts * stretch.Seconds;
            var taken = stretch.Seconds * (
                !double.IsNaN(row.Watts) ? row.Watts
                : means || stretch.Reading == 0 || stretch.Seconds <= 1 ? stretch.Amperes * row.Volts
                : stretch.Amperes * (row.Volts + measured.Readings[stretch.Reading - 1].Volts) / 2);
            measuredJoules += taken;
            returned -= Math.Min(taken, 0);
            squares += error * error;
            if (state.Charge > 0.1)
            {
                upper += error * error;
                upperRows++;
            }

            if (Math.Abs(error) > Math.Abs(worst)) (worst, worstAt) = (error, (row.Seconds, state.Charge));
        }

        return new CellReplay(measured.Name)
        {
            Rows = measured.Stretches.Count,
            RmsVolts = Math.Sqrt(squares / measured.Stretches.Count),
            RmsVoltsAboveTenth = Math.Sqrt(upper / upperRows),
            WorstVolts = worst,
            WorstSeconds = worstAt.Seconds,
            WorstCharge = worstAt.Charge,
            Model = Energy.FromJoules(joules),
            Measured = Energy.FromJoules(measuredJoules),
            EnergyError = returned > (measuredJoules + returned) / 3 ? double.NaN : (joules - measuredJoules) / measuredJoules,
            EndCharge = state.Charge,
        };
    }
}
