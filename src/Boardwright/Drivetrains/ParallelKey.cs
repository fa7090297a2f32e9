using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>The standard parallel key of a range of shafts.</summary>
/// <param name="ShaftAbove">Shafts above this diameter.</param>
/// <param name="ShaftTo">Up to and with this diameter.</param>
/// <param name="Width">Width b.</param>
/// <param name="Height">Height h.</param>
/// <param name="ShaftDepth">Depth t₁ of the keyway in the shaft, +0.1 mm.</param>
/// <param name="HubDepth">Depth t₂ of the keyway in the hub, +0.1 mm.</param>
/// <param name="Shortest">Shortest key made.</param>
/// <param name="Longest">Longest key made.</param>
/// <validity>Shafts above 6 up to 22 mm. Many motors have other keys (a 3 mm key in an 8 mm shaft is usual), so measure the key and use
/// this for what is missing.</validity>
/// <error>Nominal sizes; widths are fitted N9 or P9.</error>
/// <source cref="Sources.Din6885"/>
public sealed record KeySize(
    Length ShaftAbove, Length ShaftTo, Length Width, Length Height, Length ShaftDepth, Length HubDepth, Length Shortest, Length Longest)
{
    /// <summary>Every size, thinnest shaft first.</summary>
    public static IReadOnlyList<KeySize> All { get; } =
    [
        Row(6, 8, 2, 1.2, 1.0, 6, 20),
        Row(8, 10, 3, 1.8, 1.4, 6, 36),
        Row(10, 12, 4, 2.5, 1.8, 8, 45),
        Row(12, 17, 5, 3.0, 2.3, 10, 56),
        Row(17, 22, 6, 3.5, 2.8, 14, 70),
    ];

    /// <summary>The standard key of a shaft.</summary>
    /// <returns>The size, or <c>null</c> outside of the table.</returns>
    public static KeySize? ForShaft(Length diameter) => All.FirstOrDefault(size => diameter > size.ShaftAbove && diameter <= size.ShaftTo);

    /// <summary>From the far side of the bore to the keyway's floor in the hub: d + t₂.</summary>
    public Length HubDimension(Length diameter) => diameter + HubDepth;
    /// <summary>From the far side of the shaft to the keyway's floor: d − t₁.</summary>
    public Length ShaftDimension(Length diameter) => diameter - ShaftDepth;
    /// <summary>A key of this size with a given straight length.</summary>
    public ParallelKey Key(Length length) => new(Width, Height, ShaftDepth, length);

    static KeySize Row(double above, double to, double side, double shaft, double hub, double shortest, double longest) => new(
        Length.FromMillimetres(above), Length.FromMillimetres(to), Length.FromMillimetres(side), Length.FromMillimetres(side),
        Length.FromMillimetres(shaft), Length.FromMillimetres(hub), Length.FromMillimetres(shortest), Length.FromMillimetres(longest));
}

/// <summary>A parallel key and what a torque does to it.</summary>
/// <remarks>The load is taken as even over the straight length; beyond about one and a half shaft diameters the far end carries
/// nothing.</remarks>
/// <validity>One key, clearance or transition fit of the hub: no help from friction.</validity>
/// <error>Nominal stress, without notch or impact; a drive that reverses wants a safety of 2 or more on top.</error>
/// <source cref="Sources.Mott"/>
/// <source cref="Sources.Shigley"/>
/// <source cref="Sources.Din6885"/>
public sealed record ParallelKey
{
    /// <summary>Describes a key as measured.</summary>
    /// <param name="width">Width b, above 0.</param>
    /// <param name="height">Height h, above the depth in the shaft.</param>
    /// <param name="shaftDepth">Depth t₁ of the keyway in the shaft, above 0.</param>
    /// <param name="length">Straight length l that both shaft and hub cover, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of its range.</exception>
    public ParallelKey(Length width, Length height, Length shaftDepth, Length length)
    {
        Width = Require.AboveZero(width);
        ShaftDepth = Require.AboveZero(shaftDepth);
        Height = Require.Above(height, shaftDepth);
        Length = Require.AboveZero(length);
    }

    /// <summary>Width b.</summary>
    public Length Width { get; }
    /// <summary>Height h.</summary>
    public Length Height { get; }
    /// <summary>Depth t₁ of the keyway in the shaft.</summary>
    public Length ShaftDepth { get; }
    /// <summary>Straight length l.</summary>
    public Length Length { get; }

    /// <summary>Force on the key: F = 2 T / d.</summary>
    /// <param name="torque">Torque T.</param>
    /// <param name="shaftDiameter">Diameter d of the shaft, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above 0.</exception>
    public static Force Load(Torque torque, Length shaftDiameter) =>
        Force.FromNewtons(2 * torque.NewtonMetres / Require.AboveZero(shaftDiameter).Metres);

    /// <summary>Shear stress: F / (b l).</summary>
    public Pressure Shear(Torque torque, Length shaftDiameter) => Over(Load(torque, shaftDiameter), Width, Length);
    /// <summary>Bearing stress on the hub's side of the keyway, as DIN counts: F / ((h − t₁) l).</summary>
    public Pressure HubBearing(Torque torque, Length shaftDiameter) => Over(Load(torque, shaftDiameter), Height - ShaftDepth, Length);
    /// <summary>Bearing stress as the American books count: F / (h l / 2).</summary>
    public Pressure HalfHeightBearing(Torque torque, Length shaftDiameter) => Over(Load(torque, shaftDiameter), Height / 2, Length);

    /// <summary>Allowable shear stress by the largest shear: 0.5 Sy / N.</summary>
    /// <param name="yield">Yield stress Sy of the key.</param>
    /// <param name="safety">Safety factor N, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The safety is not above 0.</exception>
    public static Pressure AllowableShear(Pressure yield, double safety) => 0.5 * yield / Require.AboveZero(safety);

    /// <summary>Allowable shear stress by the energy of distortion: 0.577 Sy / N.</summary>
    /// <param name="yield">Yield stress Sy of the key.</param>
    /// <param name="safety">Safety factor N, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The safety is not above 0.</exception>
    public static Pressure AllowableShearByDistortion(Pressure yield, double safety) => 0.577 * yield / Require.AboveZero(safety);

    /// <summary>Allowable bearing stress: Sy / N of the weakest part, which is the aluminium pulley as a rule.</summary>
    /// <param name="yield">Yield stress Sy of the weakest of key, shaft and hub.</param>
    /// <param name="safety">Safety factor N, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The safety is not above 0.</exception>
    public static Pressure AllowableBearing(Pressure yield, double safety) => yield / Require.AboveZero(safety);

    /// <summary>Length that a force needs over a side of the key at an allowable stress: F / (a p).</summary>
    /// <param name="load">Force F on the key.</param>
    /// <param name="side">Loaded side a: the width for shear, half of the height or h − t₁ for bearing; above 0.</param>
    /// <param name="allowable">Allowable stress p, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of its range.</exception>
    public static Length LengthFor(Force load, Length side, Pressure allowable) =>
        Length.FromMetres(load.Newtons / (Require.AboveZero(side).Metres * Require.AboveZero(allowable).Pascals));

    static Pressure Over(Force load, Length side, Length length) => Pressure.FromPascals(load.Newtons / (side.Metres * length.Metres));
}
