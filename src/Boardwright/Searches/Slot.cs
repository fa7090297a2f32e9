namespace Boardwright.Searches;

/// <summary>A place of the board for which a search chooses, in the order in which it chooses.</summary>
public enum Slot
{
    /// <summary>Number of motors and where they sit.</summary>
    Drive,
    /// <summary>The deck.</summary>
    Deck,
    /// <summary>Both trucks.</summary>
    Trucks,
    /// <summary>The wheels.</summary>
    Wheels,
    /// <summary>The mount, and one of its angles.</summary>
    Mount,
    /// <summary>The motor.</summary>
    Motor,
    /// <summary>The pulley on the motor's shaft.</summary>
    MotorPulley,
    /// <summary>The pulley on the wheel.</summary>
    WheelPulley,
    /// <summary>The belt.</summary>
    Belt,
    /// <summary>The gearbox.</summary>
    Gearbox,
    /// <summary>The box.</summary>
    Box,
    /// <summary>The controller.</summary>
    Controller,
    /// <summary>The cell.</summary>
    Cell,
    /// <summary>Cells in series and in parallel.</summary>
    Pack,
    /// <summary>The protection.</summary>
    Protection,
    /// <summary>The main fuse.</summary>
    Fuse,
    /// <summary>The hand remote.</summary>
    Remote,
    /// <summary>The charger.</summary>
    Charger,
}

/// <summary>Keys of the places, as board files and commands name them.</summary>
public static class SlotKeys
{
    /// <summary>The key of a place.</summary>
    public static string KeyOf(Slot slot) => slot == Slot.Protection ? "pack.protection" : Parts.Entry.Snake(slot.ToString());

    /// <summary>The place of a key.</summary>
    /// <returns>The place, or <c>null</c> when no part is chosen for such a key; both trucks are one place.</returns>
    public static Slot? SlotOf(string key) => key switch
    {
        "front_truck" or "rear_truck" => Slot.Trucks,
        "protection" => Slot.Protection,
        _ => Enum.GetValues<Slot>().Where(s => s is not (Slot.Drive or Slot.Pack) && KeyOf(s) == key).Select(s => (Slot?)s)
            .FirstOrDefault(),
    };
}
