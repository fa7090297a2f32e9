namespace Boardwright.Units;

/// <summary>A sentence whose quantities are written in the reader's units only when it is read.</summary>
/// <param name="Text">The sentence with its quantities as arguments.</param>
public readonly record struct Phrase(FormattableString Text) : IFormattable
{
    /// <summary>The sentence in the given units.</summary>
    public string In(UnitSystem system) => Text is null ? "" : Text.ToString(system);
    /// <summary>Whether there is nothing to say.</summary>
    public bool IsEmpty => Text is null || Text.Format.Length == 0;
    /// <summary>The sentence in metric units.</summary>
    public override string ToString() => In(UnitSystem.Metric);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) => In(UnitSystem.Of(formatProvider));

    /// <summary>A sentence that holds quantities.</summary>
    public static implicit operator Phrase(FormattableString text) => new(text);

    /// <summary>Several sentences after one another; empty ones are left out.</summary>
    public static Phrase Join(params IEnumerable<Phrase> phrases)
    {
        var parts = phrases.Where(p => !p.IsEmpty).ToArray();
        return parts.Length == 1 ? parts[0] : new(new Sequence(parts));
    }

    sealed class Sequence(Phrase[] parts) : FormattableString
    {
        public override int ArgumentCount => parts.Length;

        public override string Format => string.Join(' ', parts.Select((_, i) => $"{{{i}}}"));

        public override object?[] GetArguments() => [.. parts.Cast<object?>()];

        public override object? GetArgument(int index) => parts[index];

        public override string ToString(IFormatProvider? formatProvider) =>
            string.Join(' ', parts.Select(p => p.In(UnitSystem.Of(formatProvider))));
    }
}
