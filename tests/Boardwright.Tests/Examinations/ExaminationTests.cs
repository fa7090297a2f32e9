using System.Text.Json;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;
using Boardwright.Traction;
using CsCheck;

namespace Boardwright.Tests.Examinations;

public sealed class ExaminationTests
{
    static double Figure(Board board, string id) => Examination.FiguresOf(board).Single(f => f.Kind.Id == id).Value!.Value;

    // tests/independent holds a second calculation of the same equations, written without sight of this program.
    [Theory]
    [InlineData("tern")]
    [InlineData("puffin")]
    [InlineData("curlew")]
    public void Figures_agree_with_the_second_calculation_to_half_a_per_cent(string name) =>
        Agree(name, Boards.PathOf(name), Repository.At("tests", "independent", $"{name}.json"));

    // Boards made to be unlike the examples: both axles, the front one, one motor, hubs, gears with oil, no taper, one that
    // bites, a fuse that limits, cold, high, wet, wind from either side, inches and pounds.
    [Theory]
    [InlineData("four")]
    [InlineData("fourteen")]
    [InlineData("front")]
    [InlineData("gear")]
    [InlineData("hub")]
    [InlineData("imperial")]
    [InlineData("single")]
    [InlineData("taper")]
    public void Figures_of_unlike_boards_agree_with_the_second_calculation_too(string name) =>
        Agree(name, Repository.At("tests", "independent", "boards", $"{name}.board.yaml"), Repository.At("tests", "independent", "boards", $"{name}.json"));

    static void Agree(string name, string file, string second)
    {
        var loaded = Boardwright.Files.Boards.BoardFile.Read(file);
        Assert.True(loaded.Board is not null, name);
        // It takes the power at the cells' terminals where we take it at the controllers, and names a pace that the board cannot hold.
        string[] differently = ["cruise.power", "cruise.pace_for_range_wanted"];
        var ours = Examination.FiguresOf(loaded.Board).ToDictionary(f => f.Kind.Id, f => f.Value);
        using var theirs = JsonDocument.Parse(File.ReadAllText(second));
        var compared = 0;
        foreach (var figure in theirs.RootElement.EnumerateObject())
        {
            if (differently.Contains(figure.Name) || !ours.TryGetValue(figure.Name, out var value))
                continue;
            compared++;
            if (figure.Value.ValueKind == JsonValueKind.Null)
                Assert.True(value is null, figure.Name);
            else
                Assert.True(Math.Abs(value!.Value - figure.Value.GetDouble()) <= 0.005 * Math.Abs(figure.Value.GetDouble()), $"{figure.Name}: {value} against {figure.Value.GetDouble()}");
        }

        Assert.True(compared >= 18, $"Only {compared} figures were compared.");
    }

    // The brake takes no more than the pack may, at any current on the way up to the one that is found: a controller that
    // raises its current stops there, though copper would burn the power of a still larger one.
    [Fact]
    public void The_electric_brake_stops_at_the_first_charging_limit_that_it_meets()
    {
        var run = SteadyRunningOfBoard.Compute(Boardwright.UsualValues.UsualTable.Complete(Boards.Tern.With(("limits.regen_current", "1 A"), ("limits.brake_phase_current", "90 A"), ("motor.phase_current_peak", ""))))
            .Braked.Value;
        var supply = run.SupplyAt(0.5);
        for (var speed = 0.5; speed < 8; speed += 0.5)
        {
            var most = run.Drive.LargestBrakeCurrent(speed, supply, run.Braking);
            for (var part = 1; part <= 20; part++)
                Assert.True(run.Drive.BusAt(-most * part / 20, speed, supply)!.Value.Amperes >= -1 - 1e-6, $"{speed} m/s");
        }
    }

    // brake.downhill_full must not send a rider down a hill from a charge at which brake.stops says never.
    [Fact]
    public void A_hill_that_is_said_to_be_held_from_a_charge_is_also_stopped_on_at_half_charge()
    {
        var (held, never) = (0, 0);
        foreach (var name in Boards.Names)
        {
            foreach (var motors in new[] { 1, 2, 4 })
            {
                var board = Boards.Read(name).With(("drive.motors", $"{motors}"), ("drive.driven", motors == 4 ? "both" : "rear"));
                foreach (var grade in Enumerable.Range(2, 14).Select(g => 2 * g))
                {
                    foreach (var speed in new[] { 6, 12, 20 })
                    {
                        var brakes = Examination.Examine(board.With(("brief.climb_wanted", $"{grade} %"), ("brief.climb_speed", $"{speed} km/h"))).Descent.Value;
                        if (brakes.HoldsFrom is >= 0.5 and < 1)
                        {
                            held++;
                            Assert.True(brakes.Stop is not null, $"{name}, {motors} motors, {grade} % at {speed} km/h: held from {brakes.HoldsFrom}, yet never stopped.");
                        }

                        never += brakes.Stop is null ? 1 : 0;
                    }
                }
            }
        }

        Assert.True(held > 20 && never > 20, $"{held} held, {never} never stopped: too few to tell.");
    }

    [Fact]
    public void Each_finding_on_the_brake_names_the_speed_and_the_charge_that_it_is_about()
    {
        var findings = Examination.Examine(Boards.Curlew.With(("drive.motors", "4"), ("drive.driven", "both"), ("brief.climb_wanted", "30 %"))).Findings;
        string Says(string rule) => findings.Single(f => f.Rule == rule).Says.In(Boardwright.Units.UnitSystem.Metric);

        Assert.Contains("With a full pack", Says("brake.downhill_full"), StringComparison.Ordinal);
        Assert.Contains("at 14 km/h and slower", Says("brake.downhill_full"), StringComparison.Ordinal);
        Assert.Contains("from 20 km/h on the level", Says("brake.stops"), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("down the brief's 30 % from 14 km/h", Says("brake.stops"), StringComparison.Ordinal);
        Assert.EndsWith("at half charge.", Says("brake.stops"), StringComparison.Ordinal);
    }

    [Fact]
    public void More_cells_in_series_never_lower_the_speed_with_the_wheels_in_the_air() =>
        Gen.Int[6, 13].Sample(series =>
            Figure(Boards.Tern.With(("pack.series", $"{series + 1}")), "speed.unloaded_full") >= Figure(Boards.Tern.With(("pack.series", $"{series}")), "speed.unloaded_full"), iter: 20);

    [Fact]
    public void More_cells_in_parallel_never_shorten_the_range() =>
        Gen.Int[2, 9].Sample(parallel =>
            Figure(Boards.Tern.With(("pack.parallel", $"{parallel + 1}")), "cruise.range") >= Figure(Boards.Tern.With(("pack.parallel", $"{parallel}")), "cruise.range"), iter: 20);

    [Fact]
    public void A_heavier_rider_never_climbs_more_steeply_nor_rides_farther() =>
        Gen.Double[50, 110].Sample(kilograms =>
        {
            var (light, heavy) = (Boards.Tern.With(("brief.rider_mass", $"{kilograms:0.0} kg")), Boards.Tern.With(("brief.rider_mass", $"{kilograms + 5:0.0} kg")));
            return Figure(heavy, "climb.grade_at_climb_speed") <= Figure(light, "climb.grade_at_climb_speed")
                && Figure(heavy, "cruise.range") <= Figure(light, "cruise.range");
        }, iter: 20);

    [Fact]
    public void The_top_speed_with_a_rider_lies_below_that_with_the_wheels_in_the_air() =>
        Gen.Select(Gen.Double[100, 260], Gen.Int[8, 13]).Sample((kv, series) =>
        {
            var board = Boards.Tern.With(("motor.kv", $"{kv:0.0} rpm/V"), ("pack.series", $"{series}"));
            return Figure(board, "speed.top_full") < Figure(board, "speed.unloaded_full");
        }, iter: 20);

    [Fact]
    public void At_the_top_speed_the_road_takes_what_the_drive_gives()
    {
        var exam = Examination.Examine(Boards.Tern);
        var run = exam.Running.Value;
        var top = exam.Speeds.Value.Full;

        // An independent look from both sides of the root; the walk refines to a nanometre per second.
        Assert.True(run.LargestSteadyForce(top - 1e-3, run.SupplyAt(1)) > run.RoadForce(top - 1e-3, 0));
        Assert.True(run.LargestSteadyForce(top + 1e-3, run.SupplyAt(1)) < run.RoadForce(top + 1e-3, 0));
    }

    [Fact]
    public void Power_is_conserved_between_pack_and_road()
    {
        var exam = Examination.Examine(Boards.Tern);
        var (run, drive) = (exam.Running.Value, exam.Drive.Value);
        var point = exam.Cruise.Value.Steady!.AtHalf;
        var motor = drive.MotorSpeed(point.Speed);

        var road = point.Force * point.Speed;
        var gears = road / drive.Efficiency - road;
        var drag = drive.Motors * drive.Drag(motor) * motor;
        var copper = drive.Motors * 1.5 * drive.PhaseResistance * point.PhaseCurrent * point.PhaseCurrent;
        var bridge = drive.Motors
            * (1.5 * drive.SwitchResistance * point.PhaseCurrent * point.PhaseCurrent + drive.SwitchingFactor * point.PhaseCurrent
            * point.Bus.Volts);

        // Every watt at the bus has a name; the tolerance is rounding.
        Assert.Equal(point.Bus.Watts, road + gears + drag + copper + bridge + drive.IdlePower, 1e-6);
        Assert.True(run.RoadForce(point.Speed, 0) == point.Force);
    }

    [Fact]
    public void A_belt_longer_by_a_tooth_moves_the_axle_by_about_half_a_pitch()
    {
        var moved = Figure(Boards.Tern.With(("belt.teeth", "57")), "drive.centre_distance") - Figure(Boards.Tern.With(("belt.teeth", "56")), "drive.centre_distance");

        // dC/dL = 1/(2 cos φ): a little more than half of 5 mm.
        Assert.InRange(moved, 2.5, 2.75);
    }

    [Fact]
    public void The_pace_for_a_range_reaches_that_range()
    {
        var board = Boards.Tern.With(("brief.range_wanted", "80 km"));
        var pace = Figure(board, "cruise.pace_for_range_wanted");

        Assert.Equal(80, Figure(board.With(("brief.cruise_speed", $"{pace:R} km/h")), "cruise.range"), 1e-3);
    }

    [Fact]
    public void The_same_board_gives_the_same_figures_and_findings()
    {
        static string Told(Examination e) => string.Join('\n', e.Figures.Select(f => $"{f.Kind.Id} {f.Value:R}").Concat(e.Findings.Select(f => $"{f.Rule} {f.Level} {f.Says} {f.Remedy}")));

        Assert.Equal(Told(Examination.Examine(Boards.Tern)), Told(Examination.Examine(Boards.Read("tern"))));
    }

    [Fact]
    public void What_a_figure_rests_on_is_an_entry_of_the_board_or_a_figure_with_a_page()
    {
        var ids = Catalogue.All.Select(k => k.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var name in Boards.Names)
        {
            var board = Boards.Read(name);
            var known = BoardPlaces(name);
            var examination = Examination.Examine(board);
            known.UnionWith(examination.Usual.Select(u => u.Key));
            foreach (var figure in examination.Figures)
                Assert.All(figure.From, key => Assert.True(ids.Contains(key) || known.Contains(key), $"{name}: {figure.Kind.Id} rests on '{key}'"));
        }

        static HashSet<string> BoardPlaces(string name) => [.. Boardwright.Files.Boards.BoardFile.Read(Boards.PathOf(name)).Places.Keys];
    }

    [Fact]
    public void A_part_without_a_mass_makes_the_sum_a_lower_bound()
    {
        var figure = Examination.FiguresOf(Boards.Tern.With(("wheels.mass", ""))).Single(f => f.Kind.Id == "mass.board");

        Assert.Contains("wheels.mass", figure.Caution, StringComparison.Ordinal);
        Assert.True(figure.Value < Figure(Boards.Tern, "mass.board"));
    }

    [Fact]
    public void A_missing_entry_silences_only_what_needs_it()
    {
        var figures = Examination.FiguresOf(Boards.Tern.With(("motor.kv", ""))).ToDictionary(f => f.Kind.Id);

        Assert.Null(figures["speed.top_full"].Value);
        Assert.Equal(["motor.kv"], figures["speed.top_full"].Missing);
        Assert.NotNull(figures["pack.energy"].Value);
        Assert.NotNull(figures["drive.centre_distance"].Value);
    }

    [Fact]
    public void A_hub_drive_has_neither_belt_nor_mount_and_is_examined_all_the_same()
    {
        var board = Boards.Tern.With(("drive.kind", "hub"));
        var exam = Examination.Examine(
            (board with { Parts = board.Parts with { Mount = new(), MotorPulley = new(), WheelPulley = new(), Belt = new() } })
            .WithNames());

        Assert.Equal(1, exam.Figures.Single(f => f.Kind.Id == "drive.ratio").Value);
        Assert.DoesNotContain(exam.Figures, f => f.Kind.Id.StartsWith("drive.belt", StringComparison.Ordinal));
        Assert.NotNull(exam.Figures.Single(f => f.Kind.Id == "speed.top_full").Value);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void One_to_four_motors_push_in_proportion(int motors)
    {
        var board = Boards.Tern.With(("drive.motors", $"{motors}"), ("drive.driven", "both"), ("limits.pack_current", ""), ("brief.road", "dry"), ("controller.idle_power", "0 W"));

        Assert.Equal(motors * Figure(board.With(("drive.motors", "1")), "force.start"), Figure(board, "force.start"), 1e-9 * motors * 1000);
    }

    [Fact]
    public void An_interval_holds_the_figure_and_names_what_matters()
    {
        var exam = Examination.Examine(Boards.Tern);
        var spread = Spread.Sample(exam, 64, cancellation: TestContext.Current.CancellationToken).Intervals;

        foreach (var figure in exam.Figures.Where(f => f.Value is not null))
        {
            var interval = spread[figure.Kind.Id];
            Assert.True(interval.Low <= interval.High, figure.Kind.Id);
        }

        var top = spread["speed.top_full"];
        Assert.InRange(Figure(Boards.Tern, "speed.top_full"), top.Low, top.High);
        Assert.Contains("motor.kv", top.MattersMost);
        var (once, again) = (spread["cruise.range"], Spread.Sample(exam, 64, cancellation: TestContext.Current.CancellationToken).Intervals["cruise.range"]);
        Assert.Equal((once.Low, once.High), (again.Low, again.High));
        Assert.Equal(once.MattersMost, again.MattersMost);
    }

    [Fact]
    public void A_measured_value_narrows_the_interval_that_it_matters_for()
    {
        static double Width(Board board) =>
            Spread.Sample(Examination.Examine(board), 128, cancellation: TestContext.Current.CancellationToken).Intervals["cruise.range"] is var i
            ? i.High - i.Low : 0;
        var rolling = Boards.Tern.Parts.Wheels.RollingResistance;
        var measured = Boards.Tern with
        {
            Parts = Boards.Tern.Parts with
            {
                Wheels =
                Boards.Tern.Parts.Wheels with
                {
                    RollingResistance = new(
                rolling.Value, 0.02, Boardwright.Units.Origin.Measured, rolling.Key)
                }
            },
        };

        Assert.True(Width(measured) < 0.8 * Width(Boards.Tern));
    }
}
