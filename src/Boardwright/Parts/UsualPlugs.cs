namespace Boardwright.Parts;

/// <summary>Plugs that every board knows without a shelf: families of the trade, with currents at the low end of what is said of them. A
/// shelf's own description of a plug wins.</summary>
/// <remarks>Contacts of one name differ between makers, and a worn or badly soldered one carries far less.</remarks>
/// <validity>Bullets in a sleeve of their own; barrels have no voltage here, for they differ too much.</validity>
/// <error>Currents of one name differ by half between sellers.</error>
/// <source cref="Findings.Sources.CommonPractice"/>
public static class UsualPlugs
{
    static readonly Plug[] Described =
    [
        Flat("XT30", 15, 30, 0.9),
        Flat("XT60", 30, 60, 0.6),
        Flat("XT90", 45, 90, 0.35),
        Bullet("2", 10, 20, 1.2),
        Bullet("3.5", 25, 40, 0.6),
        Bullet("4", 40, 70, 0.4),
        Bullet("5.5", 60, 100, 0.25),
        Bullet("6", 70, 110, 0.2),
        Bullet("6.5", 75, 120, 0.2),
        Bullet("8", 100, 170, 0.15),
        Charge("barrel 5.5 x 2.1 mm", 3, null),
        Charge("barrel 5.5 x 2.5 mm", 4, null),
        Charge("round 3-pin", 5, 120),
        Charge("round 4-pin", 5, 120),
        Charge("round 5-pin", 4, 120),
    ];

    static readonly Dictionary<string, Plug> ByName = Named();

    /// <summary>Their names.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Described.Select(plug => plug.Name.Value)];

    /// <summary>A plug by its name.</summary>
    /// <returns>The plug; <c>null</c> when no family is called so.</returns>
    public static Plug? Find(string name) => ByName.GetValueOrDefault(name);

    static Dictionary<string, Plug> Named()
    {
        var named = new Dictionary<string, Plug>(TradeName.Comparer);
        foreach (var plug in Described)
        {
            var name = plug.Name.Value;
            var entries = (Plug)Board.WithNames(plug, $"plug {name}");
            named.Add(name, entries);
            // The trade says both: a bullet of 4 mm, and a 4 mm bullet.
            if (name.StartsWith("bullet ", StringComparison.Ordinal))
                named.Add($"{name["bullet ".Length..]} bullet", entries);
        }

        return named;
    }

    static Plug Flat(string name, double lasting, double peak, double milliohms) => Describe(name, lasting, peak, milliohms, 120);

    static Plug Bullet(string millimetres, double lasting, double peak, double milliohms) =>
        Describe($"bullet {millimetres} mm", lasting, peak, milliohms, 100);

    static Plug Charge(string name, double lasting, double? volts) => Describe(name, lasting, lasting, 5, volts);

    static Plug Describe(string name, double lasting, double peak, double milliohms, double? volts) => new()
    {
        IsChosen = true,
        Name = name,
        CurrentContinuous = Guessed(Current.FromAmperes(lasting)),
        CurrentPeak = Guessed(Current.FromAmperes(peak)),
        ContactResistance = Guessed(Resistance.FromMilliohms(milliohms)),
        Voltage = volts is { } most ? Guessed(Voltage.FromVolts(most)) : default,
        Source = Findings.Sources.CommonPractice.Text,
    };

    static Known<T> Guessed<T>(T value)
        where T : notnull => new(value, from: Origin.Guess);
}
