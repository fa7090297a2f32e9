namespace Boardwright.Fits;

/// <summary>What an axle has to carry outside its hanger, from the hanger's end to the end of the nut.</summary>
/// <remarks>Two speed washers, the part of a wheel pulley that stands out of the wheel, two bearings with a spacer between, and the nut.</remarks>
/// <param name="Pulley">Part of the wheel pulley inside of the wheel's inner bearing; zero on a wheel that is not driven.</param>
/// <param name="Bearing">Width of one bearing.</param>
/// <param name="Nut">Height of the nut.</param>
/// <source cref="Findings.Sources.CommonPractice"/>
public sealed record AxleLoad(Length Pulley, Length Bearing, Length Nut)
{
    /// <summary>Spacer between the bearings of a wheel; common practice, no source.</summary>
    public static Length Spacer { get; } = Length.FromMillimetres(10);

    /// <summary>Two speed washers; common practice, no source.</summary>
    public static Length Washers { get; } = Length.FromMillimetres(2);

    /// <summary>Axle length needed outside the hanger.</summary>
    public Length Needed => Washers + Pulley + Bearing * 2 + Spacer + Nut;
}
