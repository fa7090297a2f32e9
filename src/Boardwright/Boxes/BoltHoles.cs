using Boardwright.Drivetrains;
using Boardwright.Findings;

namespace Boardwright.Boxes;

/// <summary>The holes of a bolt that holds a box to a deck.</summary>
/// <source cref="Sources.Iso273"/>
/// <source cref="Sources.InsertHoles"/>
static class BoltHoles
{
    // By thread: the clearance hole, the hole for a flanged insert, and the pilot hole of a wood screw of that diameter, mm.
    static readonly (string Thread, double Clearance, double Insert, double Pilot)[] Sizes =
    [
        ("M3", 3.4, 4.5, 2.0),
        ("M4", 4.5, 5.5, 2.8),
        ("M5", 5.5, 6.5, 3.5),
        ("M6", 6.6, 8.0, 4.2),
        ("M8", 9.0, 10.0, 5.6),
        ("M10", 11.0, 12.0, 7.0),
    ];

    /// <summary>Hole in the box that the bolt passes freely, medium series.</summary>
    public static Length Clearance(BoltThread thread) => Length.FromMillimetres(Diameters(thread).Clearance);

    /// <summary>Usual hole in the deck: for the barrel of a flanged insert, or a pilot hole of 0.7 d for a wood screw.</summary>
    /// <error>Inserts of one thread differ by a millimetre between makers: the caliper on the one in hand decides.</error>
    public static Length Usual(BoltThread thread, bool isWoodScrew) =>
        Length.FromMillimetres(isWoodScrew ? Diameters(thread).Pilot : Diameters(thread).Insert);

    static (string Thread, double Clearance, double Insert, double Pilot) Diameters(BoltThread thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return Array.Find(Sizes, s => s.Thread == thread.Name);
    }
}
