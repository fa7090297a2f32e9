using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Packs;

/// <summary>The state of charge that a resting voltage shows.</summary>
/// <validity>Cells that have rested, so that nothing of the last pull is left in their voltage.</validity>
/// <error>That of the curve: 10 mV are 1 to 3 % of the charge where the curve is steep, 10 % where it is flat.</error>
/// <source cref="Sources.Plett"/>
static class RestVoltage
{
    /// <summary>State of charge at which a cell rests at a voltage, by halving; the curve's ends beyond them.</summary>
    /// <param name="restVoltage">Rest voltage over state of charge, rising.</param>
    /// <param name="volts">Voltage of one cell.</param>
    /// <returns>0 to 1.</returns>
    public static double ChargeAt(Curve<Fraction, Voltage> restVoltage, double volts)
    {
        ArgumentNullException.ThrowIfNull(restVoltage);
        var (low, high) = (restVoltage.Points[0].X.Value, restVoltage.Points[^1].X.Value);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (restVoltage.At(middle) < volts) low = middle;
            else high = middle;
        }

        return low;
    }
}
