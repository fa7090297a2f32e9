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
