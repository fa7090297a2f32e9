using Boardwright.Drivetrains;
using Boardwright.Findings;
using Boardwright.Motors;
using Boardwright.Packs;
using Boardwright.Parts;
using Boardwright.Road;
using Boardwright.Wiring;

namespace Boardwright.Traction;

/// <summary>What it takes to say how a board runs, each answer once, so that an examination and a ride ask the same questions in the same
/// order.</summary>
/// <param name="Masses">Mass of the board.</param>
/// <param name="RollingMass">Mass of board, rider and gear.</param>
/// <param name="Gearing">Ratio and losses between motor and wheel.</param>
/// <param name="EffectiveMass">Mass with what turns.</param>
/// <param name="Motor">The motor.</param>
/// <param name="Pack">The pack.</param>
/// <param name="PhaseLimits">What the board holds the phase current to when driving.</param>
/// <param name="BrakePhaseLimits">What it holds it to when braking.</param>
/// <param name="PackLimits">What it holds the current out of the pack to.</param>
/// <param name="RegenLimits">What it holds the current into it to.</param>
/// <param name="Wiring">Wires between pack and controllers.</param>
/// <param name="Air">Air of the brief.</param>
/// <param name="Wheels">Motors, gears and wheels.</param>
/// <param name="Drive">The electric drive as the board holds it.</param>
/// <param name="Load">Air, rolling and mass.</param>
/// <param name="Demand">What a speed asks of the board, whatever limits it.</param>
/// <param name="Running">The board at steady speeds within its limits.</param>
/// <param name="Moving">The board while its speed changes.</param>
/// <param name="Braked">The board while it brakes; the limits of driving have no part in it.</param>
public sealed record SteadyRunningOfBoard(
    Answer<Masses> Masses, Answer<RollingMass> RollingMass, Answer<GearRatio> Gearing, Answer<RollingMass> EffectiveMass,
    Answer<MotorModel> Motor, Answer<PackModel> Pack,
    Answer<CurrentLimits> PhaseLimits, Answer<CurrentLimits> BrakePhaseLimits, Answer<CurrentLimits> PackLimits,
    Answer<CurrentLimits> RegenLimits,
    Answer<PackWiring> Wiring, Answer<Air> Air, Answer<WheelDrive> Wheels, Answer<Propulsion> Drive, Answer<LoadOfBoard> Load,
    Answer<SteadyRunning> Demand, Answer<SteadyRunning> Running, Answer<MovingRunning> Moving, Answer<BrakedRunning> Braked)
{
    /// <summary>Of a board.</summary>
    public static SteadyRunningOfBoard Compute(Board board)
    {
        var masses = Road.Masses.Compute(board);
        var rolling = SteadyRunningAnalysis.MassOf(board, masses);
        var gearing = GearRatio.Compute(board);
        var effective = SteadyRunningAnalysis.EffectiveMassOf(board, rolling, gearing);
        var motor = MotorModel.Compute(board);
        var pack = PackModel.Compute(board);
        var (phase, brakePhase) = (CurrentLimits.Phase(board), CurrentLimits.BrakePhase(board));
        var (packLimits, regen) = (CurrentLimits.Pack(board), CurrentLimits.Regen(board));
        var wiring = WiringRuns.PackSide(board);
        var wheels = SteadyRunningAnalysis.WheelsOf(board, gearing, motor);
        var drive = SteadyRunningAnalysis.DriveOf(board, wheels);
        var limited = SteadyRunningAnalysis.Limited(board, drive, phase, packLimits);
        var load = SteadyRunningAnalysis.LoadOf(board, rolling);
        var demand = SteadyRunningAnalysis.DemandOf(board, drive, pack, wiring, load);
        var running = SteadyRunningAnalysis.RunningOf(board, demand, limited);
        return new(
            masses, rolling, gearing, effective, motor, pack, phase, brakePhase, packLimits, regen, wiring,
            SteadyRunningAnalysis.AirOf(board), wheels, limited, load, demand, running,
            SteadyRunningAnalysis.MovingOf(board, running, effective),
            SteadyRunningAnalysis.BrakedOf(board, SteadyRunningAnalysis.MovingOf(board, demand, effective), brakePhase, regen));
    }

    /// <summary>Every entry that any of the answers rests on.</summary>
    public IEnumerable<string> From =>
        new[]
        {
            Masses.From, RollingMass.From, Gearing.From, EffectiveMass.From, Motor.From, Pack.From, PhaseLimits.From, BrakePhaseLimits.From,
            PackLimits.From, RegenLimits.From, Wiring.From, Air.From, Drive.From, Load.From, Running.From, Moving.From, Braked.From,
        }.SelectMany(from => from);
}
