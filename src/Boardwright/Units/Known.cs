namespace Boardwright.Units;

/// <summary>Where a value comes from.</summary>
public enum Origin
{
    /// <summary>A maker's data sheet.</summary>
    Maker,
    /// <summary>Measured on the part itself.</summary>
    Measured,
    /// <summary>A guess.</summary>
    Guess,
    /// <summary>A usual value, estimated from other entries; never written in a file.</summary>
    Usual,
}

/// <summary>What every entry of a board or part has, whether it is known or not.</summary>
public interface IKnown
{
    /// <summary>Whether a value was given.</summary>
    bool IsKnown { get; }

    /// <summary>The dotted name of the entry on its board, such as <c>motor.shaft_length</c>.</summary>
    string Key { get; }

    /// <summary>The same entry without its value.</summary>
    object Emptied { get; }

    /// <summary>Where the value comes from, when the file says so.</summary>
    Origin? From { get; }

    /// <summary>One standard deviation: in SI units for a quantity, as a part of the whole for a table; <c>null</c> where the file does not
    /// say.</summary>
    double? Spread { get; }

    /// <summary>The value, whatever its type; <c>null</c> when none was given.</summary>
    object? Content { get; }
}

/// <summary>A value of a board file together with its name, its origin and how well it is known; or the absence of one.</summary>
/// <typeparam name="T">Type of the value.</typeparam>
public readonly record struct Known<T> : IKnown
    where T : notnull
{
    readonly T? value;
    readonly string? key;

    /// <summary>A value that is given.</summary>
    public Known(T value, double? spread = null, Origin? from = null, string? key = null)
    {
        (this.value, IsKnown, Spread, From) = (value, true, spread, from);
        this.key = key;
    }

    /// <inheritdoc/>
    public bool IsKnown { get; }

    /// <inheritdoc/>
    public string Key => key ?? "";

    /// <inheritdoc/>
    public object Emptied => Unknown(Key);

    /// <inheritdoc/>
    public Origin? From { get; }

    /// <inheritdoc/>
    public double? Spread { get; }

    /// <inheritdoc/>
    public object? Content => IsKnown ? value : null;

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">Nothing is known.</exception>
    public T Value => IsKnown ? value! : throw new InvalidOperationException($"'{Key}' is not known.");

    /// <summary>The value, or another one when nothing is known.</summary>
    public T Or(T otherwise) => IsKnown ? value! : otherwise;
    /// <summary>The same value under a name.</summary>
    public Known<T> WithName(string name) => IsKnown ? new(value!, Spread, From, name) : Unknown(name);
    /// <summary>The same entry with another value.</summary>
    public Known<T> With(T other) => new(other, Spread, From, key);
    /// <summary>An entry without a value.</summary>
    public static Known<T> Unknown(string name) => new(name);
    /// <summary>A value from a maker's sheet.</summary>
    public static implicit operator Known<T>(T value) => new(value);

    Known(string name) => key = name;

    /// <inheritdoc/>
    public override string ToString() => IsKnown ? $"{value}" : "not known";
}
