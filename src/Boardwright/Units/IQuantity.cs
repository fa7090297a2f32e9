namespace Boardwright.Units;

/// <summary>A physical quantity: one number in the SI unit of its dimension, so that quantities of different dimensions cannot be mixed up.</summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IQuantity<TSelf> : IQuantity
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>What is measured, and in which units it may be written.</summary>
    static abstract Dimension Dimension { get; }

    /// <summary>The quantity with a value in the SI unit of its dimension.</summary>
    static abstract TSelf FromSi(double si);
}

/// <summary>A physical quantity of any dimension.</summary>
public interface IQuantity : IFormattable
{
    /// <summary>The value in the SI unit of its dimension.</summary>
    double Si { get; }
}
