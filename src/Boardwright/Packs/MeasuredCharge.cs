using Boardwright.Findings;
using static System.Math;

namespace Boardwright.Packs;

/// <summary>What a logged charge says of the time constant τ with which the current dies away at constant voltage; other charges follow by
/// <see cref="ChargeTail"/>.</summary>
/// <param name="Name">Name of the log.</param>
/// <param name="Decay">The time constant τ.</param>
/// <param name="Current">The constant current before.</param>
/// <param name="EndCurrent">The current at which the charge stopped.</param>
/// <param name="Charged">The charge put in.</param>
/// <param name="Duration">How long it took.</param>
/// <validity>Chargers that hold the current, then the voltage, of a cell whose tail is near one exponential; the constant current must come
/// first. τ grows as the cell gets colder.</validity>
/// <error>Six charges of one cell within 0.3 % of their time with the τ of one of them (handbook, battery, section 3).</error>
/// <source cref="Sources.LgHg2Kollmeyer"/>
public sealed record MeasuredCharge(string Name, Duration Decay, Current Current, Current EndCurrent, Charge Charged, Duration Duration)
{
    /// <summary>Reads the tail of a measured charge: τ is such that Q/I + τ·(ln(I/Iend) − 1 + Iend/I) is the measured time for the charge
    /// and currents of the log.</summary>
    /// <returns>The tail, or <c>null</c> when the current never fell to a third of where it began, or nothing was charged.</returns>
    public static MeasuredCharge? Measure(CellMeasurement charge)
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
            seconds += i == begin ? Min(stretches[i].Seconds, -stretches[i].Amperes * stretches[i].Seconds / amperes[i])
                : stretches[i].Seconds;
        }

        var constant = amperes[begin..(fall + 1)].Order().ElementAt((fall + 1 - begin) / 2);
        var left = amperes[stop] / constant;
        return new MeasuredCharge(
            charge.Name, Units.Duration.FromSeconds((seconds - charged / constant) / (-Log(left) - 1 + left)),
            Units.Current.FromAmperes(constant),
            Units.Current.FromAmperes(amperes[stop]), Charge.FromCoulombs(charged), Units.Duration.FromSeconds(seconds));
    }
}
