using Boardwright.Validation.Drivetrains;
using Boardwright.Validation.Heat;
using Boardwright.Validation.Motors;
using Boardwright.Validation.Packs;
using Boardwright.Validation.Road;
using Boardwright.Validation.Traction;
using Boardwright.Validation.Wiring;

namespace Boardwright.Validation;

/// <summary>Every case.</summary>
public static class Cases
{
    /// <summary>Every case, in the order of the page: room by room.</summary>
    public static IReadOnlyList<Case> All { get; } =
    [
        new BeltGeometryCase(),
        new BeltLoadCase(),
        new KeyCase(),
        new BoltCase(),
        new BearingCase(),
        new HoleAndGasketCase(),
        new AirCase(),
        new RoadLoadCase(),
        new CoastDownCase(),
        new BrakingCase(),
        new MotorCase(),
        new PackArithmeticCase(),
        new ConvectionCase(),
        new MotorHeatCase(),
        new WireCase(),
        new AdvertisedBoardCase(),
    ];
}
