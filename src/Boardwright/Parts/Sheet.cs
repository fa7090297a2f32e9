namespace Boardwright.Parts;

/// <summary>A sheet of named entries: a part, the brief, the limits. Entries that nobody filled in are not known, never zero.</summary>
public abstract record Sheet
{
    /// <summary>A copy with some entries replaced.</summary>
    public Sheet With(IEnumerable<(Entry Entry, object Value)> changes)
    {
        var copy = this with { };
        foreach (var (entry, value) in changes)
            entry.Write(copy, value);
        return copy;
    }
}

/// <summary>How an entry's value is uncertain when the file says nothing of its own. One standard deviation each.</summary>
public enum SpreadKind
{
    /// <summary>As usual for the type: lengths as <see cref="Length"/>, resistances as <see cref="Resistance"/>, masses and the like as
    /// <see cref="Usual"/>, anything else none.</summary>
    OfItsType,
    /// <summary>A choice, a rating, a setting or a condition: it is what it is said to be.</summary>
    None,
    /// <summary>Measured 2 %, maker 5 %, guess 15 %.</summary>
    Usual,
    /// <summary>Measured 0.05 mm, maker 0.2 mm, guess 15 %.</summary>
    Length,
    /// <summary>Measured 2 %, maker 10 %, guess 15 %.</summary>
    Resistance,
    /// <summary>12 % unless measured (2 %).</summary>
    DragArea,
    /// <summary>20 % unless measured (2 %).</summary>
    Rolling,
    /// <summary>15 % unless measured (2 %).</summary>
    NoLoad,
    /// <summary>25 % unless measured (2 %).</summary>
    Thermal,
}

/// <summary>Says that the words of a choice are written with spaces, not hyphens.</summary>
[AttributeUsage(AttributeTargets.Enum)]
public sealed class SpacedAttribute : Attribute;

/// <summary>Says what an entry of a sheet is, in the words of its help text.</summary>
/// <param name="says">What the entry is.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class EntryAttribute(string says) : Attribute
{
    /// <summary>What the entry is.</summary>
    public string Says { get; } = says;
    /// <summary>How to measure it, where that is not plain.</summary>
    public string? Measure { get; init; }
    /// <summary>A right value; needed where the dimension's own example would mislead.</summary>
    public string? Example { get; init; }
    /// <summary>The key in the file where it is not the property's name in small letters with underscores.</summary>
    public string? Key { get; init; }
    /// <summary>How uncertain a value is that says nothing of its own.</summary>
    public SpreadKind Spread { get; init; }
    /// <summary>Least value, SI; the dimension's own where not given.</summary>
    public double Least { get; init; } = double.NaN;
    /// <summary>Greatest value, SI; the dimension's own where not given.</summary>
    public double Greatest { get; init; } = double.NaN;
    /// <summary>Whether zero is refused.</summary>
    public bool Positive { get; init; }
}
