using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>The end of a charge: at constant voltage the current dies away as I·exp(−t/tau).</summary>
/// <param name="Name">The charge it was measured in.</param>
/// <param name="TimeConstant">The time constant tau.</param>
/// <param name="Current">The constant current before.</param>
/// <param name="EndCurrent">The current at which the charge stopped.</param>
/// <param name="Charged">The charge put in.</param>
/// <param name="Measured">How long it took.</param>
/// <validity>Chargers that hold the current, then the voltage, of a cell whose tail is near one exponential; the constant current must come first. Tau grows as the cell gets colder.</validity>
/// <error>Six charges of one cell within 0.3 % of their time with the tau of one of them (handbook, battery, section 3).</error>
/// <source cref="Sources.Kollmeyer"/>
public sealed record ChargeTail(string Name, Duration TimeConstant, Current Current, Current EndCurrent, Charge Charged, Duration Measured)
{
    /// <summary>The time a charge takes: Q/I + tau·(ln(I/Iend) − 1 + Iend/I).</summary>
    /// <param name="charge">Charge to put in.</param>
    /// <param name="current">The constant current.</param>
    /// <param name="endCurrent">The current at which it stops, above zero and at most the current.</param>
    /// <param name="timeConstant">The time constant of the tail.</param>
    /// <returns>The parts at constant current and at constant voltage, or <c>null</c> when the charge is so small that the voltage is reached at once, where the equation does not hold.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A current is not above zero, or the end current is above the current.</exception>
    public static (Duration AtCurrent, Duration AtVoltage)? TimeOf(Charge charge, Current current, Current endCurrent, Duration timeConstant)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(endCurrent.Amperes, nameof(endCurrent));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(endCurrent.Amperes, current.Amperes, nameof(endCurrent));
        var (left, tau) = (endCurrent.Amperes / current.Amperes, timeConstant.Seconds);
        var constant = charge.Coulombs / current.Amperes - tau * (1 - left);
        return constant < 0 ? null : (Duration.FromSeconds(constant), Duration.FromSeconds(tau * -Log(left)));
    }

    /// <summary>Reads the tail of a measured charge: tau is such that the equation gives the measured time for the measured charge and currents.</summary>
    /// <returns>The tail, or <c>null</c> when the current never fell to a third of where it began, or nothing was charged.</returns>
    public static ChargeTail? Of(CellMeasurement charge)
    {
        var stretches = charge.Stretches;
        var amperes = stretches.Select(s => -charge.Readings[s.Reading].Amperes).ToArray();
        var most = amperes.Max();
        if (!(most > 0)) return null;
        var begin = Array.FindIndex(amperes, i => i > 0.95 * most);
        var fall = Array.FindLastIndex(amperes, i => i > 0.95 * most);
        var stop = fall;
        while (stop + 1 < amperes.Length && amperes[stop + 1] > 0.005 * most) stop++;
        if (amperes[stop] > most / 3) return null;
        var (charged, seconds) = (0.0, 0.0);
        for (var i = begin; i <= stop; i++)
        {
            charged -= stretches[i].Amperes * stretches[i].Seconds;
            // The current began somewhere within the first stretch; its count says when.
            seconds += i == begin ? Min(stretches[i].Seconds, -stretches[i].Amperes * stretches[i].Seconds / amperes[i]) : stretches[i].Seconds;
        }

        var constant = amperes[begin..(fall + 1)].Order().ElementAt((fall + 1 - begin) / 2);
        var left = amperes[stop] / constant;
        return new ChargeTail(
            charge.Name, Duration.FromSeconds((seconds - charged / constant) / (-Log(left) - 1 + left)), Current.FromAmperes(constant),
            Current.FromAmperes(amperes[stop]), Charge.FromCoulombs(charged), Duration.FromSeconds(seconds));
    }
}
