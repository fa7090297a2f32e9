using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Boardwright.Numerics;

/// <summary>One number, or several side by side: an equation is written once and runs on either.</summary>
interface ILanes<T>
    where T : struct, ILanes<T>
{
    static abstract int Width { get; }

    static abstract implicit operator T(double value);

    static abstract T Load(ReadOnlySpan<double> from, int at);

    static abstract T operator +(T a, T b);

    static abstract T operator -(T a, T b);

    static abstract T operator -(T a);

    static abstract T operator *(T a, T b);

    static abstract T operator /(T a, T b);

    static abstract T Sqrt(T a);

    static abstract T Min(T a, T b);

    static abstract T Max(T a, T b);

    static abstract T Abs(T a);

    /// <summary>One value where the test is zero or more, another where it is less or no number.</summary>
    static abstract T Where(T test, T yes, T no);
    /// <summary>How many are at least a bound.</summary>
    static abstract int CountAtLeast(T a, double bound);

    void Store(Span<double> to, int at);
}

/// <summary>One number.</summary>
[StructLayout(LayoutKind.Auto)]
readonly struct Narrow(double value) : ILanes<Narrow>
{
    readonly double value = value;

    public static int Width => 1;

    public static implicit operator Narrow(double value) => new(value);

    public static implicit operator double(Narrow a) => a.value;

    public static Narrow Load(ReadOnlySpan<double> from, int at) => new(from[at]);

    public static Narrow operator +(Narrow a, Narrow b) => new(a.value + b.value);

    public static Narrow operator -(Narrow a, Narrow b) => new(a.value - b.value);

    public static Narrow operator -(Narrow a) => new(-a.value);

    public static Narrow operator *(Narrow a, Narrow b) => new(a.value * b.value);

    public static Narrow operator /(Narrow a, Narrow b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Narrow Sqrt(Narrow a) => new(Math.Sqrt(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Narrow Min(Narrow a, Narrow b) => new(a.value < b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Narrow Max(Narrow a, Narrow b) => new(a.value > b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Narrow Abs(Narrow a) => new(Math.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Narrow Where(Narrow test, Narrow yes, Narrow no) => test.value >= 0 ? yes : no;

    public static int CountAtLeast(Narrow a, double bound) => a.value >= bound ? 1 : 0;

    public void Store(Span<double> to, int at) => to[at] = value;
}

/// <summary>As many numbers as the processor takes at once.</summary>
[StructLayout(LayoutKind.Auto)]
readonly struct Wide(Vector<double> value) : ILanes<Wide>
{
    readonly Vector<double> value = value;

    public static int Width => Vector<double>.Count;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Wide(double value) => new(new Vector<double>(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide Load(ReadOnlySpan<double> from, int at) => new(new Vector<double>(from[at..]));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide operator +(Wide a, Wide b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide operator -(Wide a, Wide b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide operator -(Wide a) => new(-a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide operator *(Wide a, Wide b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide operator /(Wide a, Wide b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide Sqrt(Wide a) => new(Vector.SquareRoot(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide Min(Wide a, Wide b) => new(Vector.ConditionalSelect(Vector.LessThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide Max(Wide a, Wide b) => new(Vector.ConditionalSelect(Vector.GreaterThan(a.value, b.value), a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide Abs(Wide a) => new(Vector.Abs(a.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Wide Where(Wide test, Wide yes, Wide no) =>
        new(Vector.ConditionalSelect(Vector.GreaterThanOrEqual(test.value, Vector<double>.Zero), yes.value, no.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int CountAtLeast(Wide a, double bound) =>
        (int)-Vector.Sum(Vector.GreaterThanOrEqual(a.value, new Vector<double>(bound)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Store(Span<double> to, int at) => value.CopyTo(to[at..]);
}
