using System.Text.Json;
using Boardwright.Heat;
using Boardwright.Parts;
using Boardwright.Rides;

namespace Boardwright.Bench;

/// <summary>Writes a ride as numbers, for solvers written elsewhere, and rides it: how long that takes, and where it ends.</summary>
static class SolverCase
{
    static readonly double[] Cuts = [150, 120, 100, 80, 60, 50, 40, 30, 20, 14, 10, 7, 5, 3.5, 2.5];

    /// <summary>Writes the file that the scripts in bench/solvers read.</summary>
    public static void Write(string path)
    {
        var board = TernExample.WithTwoBranches().WithNames();
        var model = RideModel.Compute(board).Value;
        var rides = new[] { SmoothRide.Gentle, SmoothRide.Hills }.Select(ride => new
        {
            ride.Name,
            ride.Swell,
            ride.SwellMetres,
            ride.Grade,
            ride.HillMetres,
            Rows = Cuts.Select(cut => Row(model, ride, cut)).ToArray(),
        }).ToArray();
        var document = new
        {
            Board = BoardNumbers(board, model),
            Plan = new { SmoothRide.Metres, SmoothRide.Accelerating, SmoothRide.Cruise, SmoothRide.StartCharge },
            Rides = rides,
        };
        File.WriteAllText(path, JsonSerializer.Serialize(document, Layout));
    }

    static JsonSerializerOptions Layout { get; } = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    static object Row(RideModel model, SmoothRide ride, double cut)
    {
        var course = ride.Cut(model.Pace, cut);
        var options = new RideOptions
        {
            Step = Duration.FromSeconds(RideOptions.LongestStepSeconds),
            StartCharge = Fraction.FromValue(SmoothRide.StartCharge)
        };
        Simulation Ridden()
        {
            var simulation = new Simulation(model, course, options);
            simulation.Run();
            return simulation;
        }

        var (seconds, once) = (Stint.SecondsOf(() => Ridden()), Ridden());
        if (once.End != RideEnd.EndOfRoute || once.Energy.FootBrake > 1e-6 || once.Most.Held[(int)RideLimit.PhaseCurrent] > 0)
            throw new InvalidOperationException($"The ride {ride.Name} does not keep clear of the limits, so it is no fair comparison.");
        var end = once.State;
        return new
        {
            Setting = cut,
            Seconds = seconds,
            CutSeconds = Stint.SecondsOf(() => ride.Cut(model.Pace, cut)),
            once.Steps,
            End = new[] { end.Seconds, end.Metres, end.Speed, end.Charge, end.FirstVolts, end.SecondVolts, end.Winding, end.Case,
            end.Controller, end.Cells },
        };
    }

    static object BoardNumbers(Board board, RideModel model)
    {
        var (running, drive, heat, cell) = (model.Running, model.Running.Drive, model.Heat, board.Parts.Cell);
        var table = cell.Resistance.Value;
        return new
        {
            Mass = running.EffectiveMass,
            Weight = running.Load.Weight.Newtons,
            Rolling = running.Load.RollingResistance.Value,
            Air = running.Load.DragKilogramsPerMetre,
            Wind = running.Headwind,
            Grip = running.Tyres.Coefficient,
            WeightShare = running.Tyres.WeightShare,
            Motors = drive.Motors,
            ForceForTorque = drive.Motors * drive.Ratio / drive.WheelRadius,
            drive.Efficiency,
            Turning = drive.Ratio / drive.WheelRadius,
            drive.TorqueConstant,
            drive.FluxLinkage,
            drive.PolePairs,
            drive.PhaseInductance,
            drive.DragTorque,
            drive.DragSlope,
            model.OilTorque,
            drive.SwitchResistance,
            drive.SwitchingFactor,
            drive.IdlePower,
            drive.PhaseLimit,
            BrakePhaseLimit = running.Braking.Phase,
            drive.PackLimit,
            RegenLimit = running.Braking.Regen,
            drive.ElectricalSpeedLimit,
            Traction.Propulsion.Modulation,
            PhaseOhms = model.PhaseOhmsAt20,
            MotorHeat.CopperPerKelvin,
            Series = running.Pack.Series,
            Parallel = running.Pack.Parallel,
            Coulombs = running.Pack.Capacity.Coulombs,
            Links = running.Pack.Links.Ohms,
            Wiring = running.WiringResistance,
            running.FullVoltage,
            running.TaperStart,
            running.TaperEnd,
            RestKnots = cell.RestVoltage.Value.Points.Select(p => p.X.Value),
            RestCubics = Cubics(cell.RestVoltage.Value),
            ResistanceCharges = table.Charges.Select(c => c.Value),
            ResistanceKelvins = table.Temperatures.Select(t => t.Kelvins),
            Resistances = table.Values.Select(row => row.Select(r => r.Ohms)),
            R1 = cell.Polarisation.R1.Value.Values[0][0].Ohms,
            Tau1 = cell.Polarisation.Tau1.Value.Seconds,
            R2 = cell.Polarisation.R2.Value.Values[0][0].Ohms,
            Tau2 = cell.Polarisation.Tau2.Value.Seconds,
            heat.Ambient,
            heat.WindingCapacity,
            heat.CaseCapacity,
            heat.WindingToCase,
            // Tern's case has one conductance at every speed.
            CaseToAir = heat.CaseToAir.At(0, heat.Ambient),
            heat.CellCapacity,
            heat.PackToAir,
            heat.ControllerCapacity,
            heat.ControllerToAir,
            heat.Controllers,
            FadeStart = double.IsFinite(heat.FadeStart) ? heat.FadeStart : 1e9,
            FadeEnd = double.IsFinite(heat.FadeEnd) ? heat.FadeEnd : 2e9,
        };
    }

    /// <summary>The rest voltage between each point and the next: c0 + c1 s + c2 s² + c3 s³, s from the point on, exact because it is a
    /// cubic.</summary>
    static IEnumerable<double[]> Cubics(Curve<Fraction, Voltage> curve)
    {
        for (var i = 0; i + 1 < curve.Points.Count; i++)
        {
            var (start, width) = (curve.Points[i].X.Value, curve.Points[i + 1].X.Value - curve.Points[i].X.Value);
            var (a, b, c, d) = (curve.At(start), curve.At(start + width / 3), curve.At(start + 2 * width / 3), curve.At(start + width));
            yield return
            [
                a,
                (-11 * a + 18 * b - 9 * c + 2 * d) / 2 / width,
                9 * (2 * a - 5 * b + 4 * c - d) / 2 / (width * width),
                9 * (-a + 3 * b - 3 * c + d) / 2 / (width * width * width),
            ];
        }
    }
}
