using System.Runtime.CompilerServices;

namespace Boardwright.Units;

/// <summary>A physical quantity of any dimension.</summary>
public interface IQuantity : IFormattable
{
    /// <summary>The value in the SI unit of its dimension.</summary>
    double Si { get; }
}

/// <summary>
/// A physical quantity: one number in the SI unit of its dimension, so that quantities of different dimensions cannot be mixed up.
/// </summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IQuantity<TSelf> : IQuantity, IComparable<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>What is measured, and in which units it may be written.</summary>
    static abstract Dimension Dimension { get; }
    /// <summary>The quantity with a value in the SI unit of its dimension.</summary>
    static abstract TSelf FromSi(double si);

    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => TSelf.Dimension.Write(Si, format, formatProvider);
}

/// <summary>A quantity with sums, differences and multiples: lengths have them, temperatures and ratios do not.</summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IAdditive<TSelf> : IQuantity<TSelf>
    where TSelf : struct, IAdditive<TSelf>;

/// <summary>How all quantities are compared and written, and those with sums are reckoned with.</summary>
/// <remarks>Inlined, a step costs what it costs on bare numbers. There is no product of two quantities: it would be another one.</remarks>
public static class QuantityOperators
{
    extension<T>(T quantity)
        where T : struct, IQuantity<T>
    {
        /// <summary>The value in a unit, as <see cref="Dimension.Write"/> has it.</summary>
        public string ToString(string? format, IFormatProvider? formatProvider) => T.Dimension.Write(quantity.Si, format, formatProvider);
        /// <summary>Whether the first is less than the second.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static bool operator <(T a, T b) => a.Si < b.Si;
        /// <summary>Whether the first is more than the second.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static bool operator >(T a, T b) => a.Si > b.Si;
        /// <summary>Whether the first is at most the second.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static bool operator <=(T a, T b) => a.Si <= b.Si;
        /// <summary>Whether the first is at least the second.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static bool operator >=(T a, T b) => a.Si >= b.Si;
    }

    extension<T>(T)
        where T : struct, IAdditive<T>
    {
        /// <summary>The sum.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static T operator +(T a, T b) => T.FromSi(a.Si + b.Si);
        /// <summary>The difference.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static T operator -(T a, T b) => T.FromSi(a.Si - b.Si);
        /// <summary>The opposite.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static T operator -(T a) => T.FromSi(-a.Si);
        /// <summary>The value times a number.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static T operator *(T a, double times) => T.FromSi(a.Si * times);
        /// <summary>The value times a number.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static T operator *(double times, T a) => T.FromSi(a.Si * times);
        /// <summary>The value divided by a number.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static T operator /(T a, double by) => T.FromSi(a.Si / by);
        /// <summary>How many times the second goes into the first.</summary>
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static double operator /(T a, T b) => a.Si / b.Si;
    }
}
