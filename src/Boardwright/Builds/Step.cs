using System.Globalization;

namespace Boardwright.Builds;

/// <summary>Which paper a step stands on.</summary>
public enum StepList
{
    /// <summary>The build sheet.</summary>
    Building,
    /// <summary>The first-power and bench list.</summary>
    Bench,
}

/// <summary>A step of the build sheet or a line of the bench list, for one board.</summary>
/// <param name="Id">Id that stays the same for every board that has the step, such as <c>belt-1.note</c>.</param>
/// <param name="List">The paper it stands on.</param>
/// <param name="Heading">The heading it stands under.</param>
/// <param name="Says">What to do or to measure.</param>
public sealed record Step(string Id, StepList List, string Heading, string Says)
{
    /// <summary>What it has to come to, in words; empty where there is nothing to say.</summary>
    public string Passes { get; init; } = "";
    /// <summary>Unit of what is to be written down; <c>null</c> where there is nothing to write.</summary>
    public string? Unit { get; init; }
    /// <summary>The caution that holds where it stands; empty where there is none.</summary>
    public string Caution { get; init; } = "";
    /// <summary>Between which values it passes; <c>null</c> where only a person can tell.</summary>
    public PassRange? Range { get; init; }
    /// <summary>What is measured; <c>null</c> where there is nothing to measure.</summary>
    public Dimension? Dimension => Range?.Dimension ?? (Unit is { } unit ? Benchwork.DimensionOf(unit) : null);
    /// <summary>Whether it can only be done by riding.</summary>
    public bool IsOnRoad { get; init; }
    /// <summary>Whether who does it must say that it passed, since no range tells.</summary>
    public bool IsJudgedByHand => List == StepList.Bench && Range is null;
}

/// <summary>Between which values a measurement passes.</summary>
/// <param name="Dimension">What is measured.</param>
/// <param name="Unit">Symbol of the unit it is spoken of in.</param>
/// <param name="Least">Least value, SI; minus infinity where there is none.</param>
/// <param name="Greatest">Greatest value, SI; infinity where there is none.</param>
public sealed record PassRange(Dimension Dimension, string Unit, double Least, double Greatest)
{
    /// <summary>How far several values may lie apart, as a part of their mean; <c>null</c> where that does not matter.</summary>
    public Fraction? ApartAtMost { get; init; }
    /// <summary>How far several values may lie apart, SI; <c>null</c> where that does not matter.</summary>
    public double? ApartBy { get; init; }

    /// <summary>Least and greatest value in a unit; infinities where there is no such bound.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="least">Least value.</param>
    /// <param name="greatest">Greatest value.</param>
    /// <param name="decimals">Decimals that papers write them with, to which they are rounded: what a builder reads is what holds.</param>
    /// <exception cref="ArgumentException">No dimension has the unit.</exception>
    public static PassRange In(string unit, double least, double greatest, int decimals = 1)
    {
        var dimension = Benchwork.DimensionOf(unit) ?? throw new ArgumentException($"'{unit}' is not a unit.", nameof(unit));
        var found = dimension.Find(unit)!;
        return new(dimension, found.Symbol, found.ToSi(Math.Round(least, decimals)), found.ToSi(Math.Round(greatest, decimals)));
    }

    /// <summary>The range in its unit: <c>36 to 50.4 V</c>, <c>at most 20 mV</c>.</summary>
    public override string ToString() =>
        double.IsNegativeInfinity(Least) ? $"at most {Words(Greatest)}"
        : double.IsPositiveInfinity(Greatest) ? $"at least {Words(Least)}"
        : $"{Figure(Least)} to {Words(Greatest)}";

    /// <summary>A value in the range's unit.</summary>
    internal string Words(double si) => $"{Figure(si)} {Unit}";

    string Figure(double si) => (Dimension.Find(Unit)!.FromSi(si) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);
}

/// <summary>Measurements as people write them at a bench.</summary>
public static class Benchwork
{
    /// <summary>Resistance of what should not conduct; its units would be too easily mistaken among those of windings.</summary>
    public static Dimension Insulation { get; } = new(
        "insulation resistance", "Mohm", "5 Mohm", 0, 1e13, [new("Mohm", 1e6, null, "MΩ"), new("Gohm", 1e9, null, "GΩ")]);

    /// <summary>What a unit measures, by its symbol in any spelling.</summary>
    /// <returns>The dimension, or <c>null</c> where no dimension has the unit.</returns>
    public static Dimension? DimensionOf(string unit) => unit == "°C" ? Temperature.Dimension
        : Dimensions.All.Append(Insulation).FirstOrDefault(dimension => dimension != Number.Dimension && dimension.Find(unit) is not null);

    /// <summary>Reads a measurement of no matter what, to tell whether it is one.</summary>
    /// <returns>Why it is none, or <c>null</c>.</returns>
    public static Refusal? Objection(string text, string key)
    {
        Refusal? first = null;
        foreach (var dimension in Dimensions.All.Append(Insulation))
        {
            var written = QuantityText.Read(
                text, new QuantityRequest(dimension) { Key = key, Least = double.MinValue, Greatest = double.MaxValue });
            if (written.IsRead)
                return null;
            first ??= written.Refusal;
        }

        return first is null ? null : new($"{QuantityText.Quote(text)} is not a number with a unit.", "Write what was measured, such as 41.3 V; put several values into brackets.");
    }

    /// <summary>Reads a measurement for a step. A bare number is taken in the step's own unit only when it is asked to.</summary>
    public static QuantityReading Read(string text, Step step, bool mayBeBare = false)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(step);
        var dimension = step.Dimension ?? throw new ArgumentException("Nothing is measured at this step.", nameof(step));
        var unit = dimension.Find(step.Range?.Unit ?? step.Unit!)!.Symbol;
        var asked = new QuantityRequest(
            dimension)
        { Key = step.Id, Example = $"{Example(step, dimension)} {unit}", Least = Math.Min(dimension.Least, 0), Greatest = double.MaxValue };
        if (mayBeBare && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            text = $"{text} {unit}";
        return QuantityText.Read(text, asked);
    }

    static string Example(Step step, Dimension dimension)
    {
        if (step.Range is not { } range)
            return "1.5";
        var middle = double.IsInfinity(range.Least) ? range.Greatest / 2 : double.IsInfinity(range.Greatest) ? range.Least * 2
            : (range.Least + range.Greatest) / 2;
        return Dimension.Figures(dimension.Find(range.Unit)!.FromSi(middle));
    }
}
