using Boardwright.Findings;

namespace Boardwright.Drivetrains;

/// <summary>Turning through a ratio of teeth, and rolling.</summary>
/// <error>Exact; the rolling diameter is the loaded one, 1 to 3 mm less than a new polyurethane wheel's.</error>
/// <source cref="Sources.Kinematics"/>
public static class Gearing
{
    /// <summary>Speed of the wheel: ω / G.</summary>
    /// <param name="motor">Speed ω of the motor.</param>
    /// <param name="ratio">Turns G of the motor for one of the wheel, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not above 0.</exception>
    public static AngularSpeed WheelSpeed(AngularSpeed motor, double ratio) =>
        AngularSpeed.FromRadiansPerSecond(motor.RadiansPerSecond / Require.AboveZero(ratio));

    /// <summary>Speed of the board on wheels that do not slip: ω D / 2.</summary>
    /// <param name="wheel">Speed ω of the wheel.</param>
    /// <param name="wheelDiameter">Diameter D on which it rolls.</param>
    public static Speed RoadSpeed(AngularSpeed wheel, Length wheelDiameter) =>
        Speed.FromMetresPerSecond(wheel.RadiansPerSecond * wheelDiameter.Metres / 2);

    /// <summary>Speed of a wheel that does not slip: 2 v / D.</summary>
    /// <param name="road">Speed v of the board.</param>
    /// <param name="wheelDiameter">Diameter D on which it rolls, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The diameter is not above 0.</exception>
    public static AngularSpeed WheelSpeed(Speed road, Length wheelDiameter) =>
        AngularSpeed.FromRadiansPerSecond(2 * road.MetresPerSecond / Require.AboveZero(wheelDiameter).Metres);

    /// <summary>Torque on the wheel: T G η.</summary>
    /// <param name="motor">Torque T of the motor.</param>
    /// <param name="ratio">Turns G of the motor for one of the wheel.</param>
    /// <param name="efficiency">Efficiency η on torque.</param>
    public static Torque WheelTorque(Torque motor, double ratio, Fraction efficiency) => motor * ratio * efficiency.Value;

    /// <summary>Torque of a power at a speed: P / ω.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The speed is not above 0.</exception>
    public static Torque TorqueOf(Power power, AngularSpeed speed) =>
        Torque.FromNewtonMetres(power.Watts / Require.AboveZero(speed).RadiansPerSecond);

    /// <summary>Power of a torque at a speed: T ω.</summary>
    public static Power PowerOf(Torque torque, AngularSpeed speed) => Power.FromWatts(torque.NewtonMetres * speed.RadiansPerSecond);
}
