using System.Globalization;
using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Drivetrains;

/// <summary>The bolts that hold a motor to its mount, and the one torque that everything says for them.</summary>
/// <param name="Thread">Their thread.</param>
/// <param name="Strength">Their class: the file's, or stainless A2-70, the weakest, where it says none.</param>
/// <error>Preload from torque is uncertain by ±35 %.</error>
/// <source cref="Sources.NutFactors"/>
/// <source cref="Sources.ShigleyPreload"/>
public sealed record MotorBolts(BoltThread Thread, PropertyClass Strength)
{
    /// <summary>Of a board.</summary>
    /// <returns>The bolts; <c>null</c> when thread or class are not known by their names.</returns>
    public static MotorBolts? Compute(Fitted parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var name = parts.Motor.Bolt.IsKnown ? parts.Motor.Bolt : parts.Mount.Bolt;
        return name.IsKnown && BoltThread.Parse(name.Value) is { } thread && ClassOf(parts.Mount) is { } strength
            ? new MotorBolts(thread, strength) : null;
    }

    /// <summary>Torque for a joint that is loosened again: K · 0.75 Fp · d with K = 0.2.</summary>
    public Torque Torque => Thread.TighteningTorque(Strength);

    /// <summary>That torque as every page prints it.</summary>
    public string TorqueText => string.Create(CultureInfo.InvariantCulture, $"{Torque.NewtonMetres:0.0} N·m");

    static PropertyClass? ClassOf(Mount mount) =>
        mount.BoltClass.IsKnown ? PropertyClass.Parse(mount.BoltClass.Value) : PropertyClass.StainlessA270;
}
