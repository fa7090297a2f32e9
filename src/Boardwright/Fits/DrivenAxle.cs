using Boardwright.Findings;
using Boardwright.Parts;

namespace Boardwright.Fits;

/// <summary>Which of a board's trucks carry motors.</summary>
public static class DrivenAxle
{
    /// <summary>The truck whose dimensions the mount has to match; the rear one when both are driven.</summary>
    public static Truck TruckOf(Fitted parts) => parts.Drive.Driven.Or(Driven.Rear) == Driven.Front ? parts.FrontTruck : parts.RearTruck;

    /// <summary>Motors that sit on one axle.</summary>
    public static int MotorsOnIt(Needs needs, Fitted parts)
    {
        var motors = needs.Read(parts.Drive.Motors);
        return parts.Drive.Driven.Or(Driven.Rear) == Driven.Both ? (motors + 1) / 2 : motors;
    }

    /// <summary>Height of the deck's underside above the axle, where motors or wheels pass under it.</summary>
    /// <param name="needs">Collects what is missing.</param>
    /// <param name="parts">The parts.</param>
    /// <param name="underPlatform">Whether the place lies under the hanging platform rather than at the deck's ends.</param>
    public static Length DeckAboveAxle(Needs needs, Fitted parts, bool underPlatform)
    {
        var height = needs.Read(TruckOf(parts).Height);
        return needs.Read(parts.Deck.Mounting) switch
        {
            Mounting.DropThrough => height - needs.Read(parts.Deck.Thickness),
            Mounting.DropPlatform when underPlatform => height - needs.Read(parts.Deck.PlatformDrop),
            _ => height,
        };
    }
}
