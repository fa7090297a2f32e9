using Boardwright.Heat;
using Boardwright.Rides;
using Boardwright.Road;
using Boardwright.Traction;
using CsCheck;

namespace Boardwright.Tests.Rides;

public sealed class SimulationTests
{
    static readonly RideModel Tern = RideModel.Compute(Boards.Tern).Value;

    static RideOptions Every(double seconds) => new() { Step = Duration.FromSeconds(seconds) };

    static RideModel With(Func<BrakedRunning, BrakedRunning> running, Func<Propulsion, Propulsion> drive, double accelerating = 50)
    {
        var run = running(Tern.Running);
        return Tern with
        {
            Running = run with { Drive = drive(run.Drive) },
            Pace = new RiderPace(Speed.FromMetresPerSecond(60), Acceleration.FromMetresPerSecondSquared(accelerating)),
        };
    }

    static Simulation OnTheLevel(RideModel model, double step, double speed = 0)
    {
        var simulation = new Simulation(model, RideCourse.Level(model.Pace), Every(step));
        simulation.State = simulation.State with { Speed = speed };
        return simulation;
    }

    /// <summary>A motor without drag, and nothing but the phase current that limits it.</summary>
    static RideModel Pushed(double phase) => With(
        r => r with { Tyres = r.Tyres with { Coefficient = 1e6 } },
        d => d with { PhaseLimit = phase, DragTorque = 0, DragSlope = 0, PackLimit = 1e6, ElectricalSpeedLimit = 1e9 });

    static Coasting Law(RideModel model, double force) => new(
        Mass.FromKilograms(model.Running.EffectiveMass),
        Force.FromNewtons(model.Running.Load.RollingAndGrade().Newtons - force),
        model.Running.Load.DragKilogramsPerMetre);

    // An independent look: the closed solution of Road.Coasting. The tolerance is the one the project promises.
    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(40)]
    public void Coasting_down_follows_the_closed_form_to_a_millionth(double seconds)
    {
        var model = Pushed(0);
        var simulation = OnTheLevel(model, 0.01, speed: 10);
        simulation.RunFor(seconds);
        var (state, law) = (simulation.State, Law(model, 0));

        Near(law.SpeedAfter(Speed.FromMetresPerSecond(10), Duration.FromSeconds(seconds)).MetresPerSecond, state.Speed, 1e-6);
        Near(law.DistanceAfter(Speed.FromMetresPerSecond(10), Duration.FromSeconds(seconds)).Metres, state.Metres, 1e-6);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(15)]
    [InlineData(60)]
    public void A_constant_push_runs_up_as_the_closed_form_to_a_millionth(double seconds)
    {
        var model = Pushed(9);
        var force = model.Running.Drive.Force(9, 0);
        var simulation = OnTheLevel(model, 0.01);
        simulation.RunFor(seconds);
        var law = Law(model, force);

        Near(law.SpeedAfter(default, Duration.FromSeconds(seconds)).MetresPerSecond, simulation.State.Speed, 1e-6);
        Near(law.DistanceAfter(default, Duration.FromSeconds(seconds)).Metres, simulation.State.Metres, 1e-6);
    }

    [Fact]
    public void A_constant_push_ends_at_the_terminal_speed()
    {
        var model = Pushed(9);
        var simulation = OnTheLevel(model, 0.1);
        simulation.RunFor(600);

        Near(Law(model, model.Running.Drive.Force(9, 0)).TerminalSpeed!.Value.MetresPerSecond, simulation.State.Speed, 1e-6);
    }

    [Fact]
    public void Warm_bodies_of_a_board_that_waits_cool_as_the_closed_form_to_a_millionth()
    {
        var model = With(r => r, d => d with { IdlePower = 0 });
        var heat = model.Heat;
        var route = Route.Create(
            "a long stop", new RouteStretch(Length.FromMetres(1), default, Wait: Duration.FromHours(2)),
            new RouteStretch(Length.FromMetres(1), default));
        var simulation = new Simulation(model, RideCourse.Create(route, model.Pace), Every(0.1));
        while (simulation.State.Speed > 0 || simulation.State.Place == 0)
            simulation.Advance();
        var (ambient, seconds) = (heat.Ambient, 900.0);
        // One body on its own each; winding and case are two, so theirs is the two shares of the closed form.
        simulation.State = simulation.State with
        {
            Cells = ambient + 30,
            Controller = ambient + 50,
            Winding = ambient,
            Case = ambient,
            FirstVolts = 0,
            SecondVolts = 0
        };
        simulation.RunFor(seconds);

        Near(50 * Math.Exp(-seconds * heat.ControllerToAir / heat.ControllerCapacity), simulation.State.Controller - ambient, 1e-6);
        Near(30 * Math.Exp(-seconds * heat.PackToAir / heat.CellCapacity), simulation.State.Cells - ambient, 1e-6);
    }

    [Fact]
    public void Motors_under_a_steady_load_settle_where_the_two_node_model_does()
    {
        var model = Pushed(9);
        // Lighter bodies settle before the pack is empty.
        model = model with { Heat = model.Heat with { WindingCapacity = 20, CaseCapacity = 50 } };
        var simulation = OnTheLevel(model, 0.25);
        simulation.RunFor(3600);
        var (heat, state) = (model.Heat, simulation.State);
        var nodes = new TwoNode(HeatCapacity.FromJoulesPerKelvin(heat.WindingCapacity), HeatCapacity.FromJoulesPerKelvin(heat.CaseCapacity),
            ThermalResistance.FromKelvinsPerWatt(1 / heat.WindingToCase));
        var copper = Power.FromWatts(1.5 * model.PhaseOhmsAt20 * 81);
        var settled = nodes.Settled(
            new MotorHeat(copper, default),
            new FixedCooling(Boards.Tern.Parts.Motor.CaseToAir.Value, Temperature.FromKelvins(heat.Ambient)))!.Value;

        Near(settled.Winding.Kelvins - heat.Ambient, state.Winding - heat.Ambient, 1e-6);
        Near(settled.Case.Kelvins - heat.Ambient, state.Case - heat.Ambient, 1e-6);
    }

    [Fact]
    public void The_error_falls_with_the_square_of_the_step()
    {
        // A smooth stretch: full throttle from rest, held back by the phase current, the voltage sagging, everything warming.
        static double[] After(double step)
        {
            var simulation = OnTheLevel(
                With(r => r with { Tyres = r.Tyres with { Coefficient = 1e6 } }, d => d with { PhaseLimit = 20 }), step);
            simulation.RunFor(16);
            var state = simulation.State;
            return [state.Speed, state.Metres, state.Charge, state.Winding, state.Case, state.Cells, state.FirstVolts,
                simulation.Energy.Delivered];
        }

        var fine = After(1.0 / 256);
        var errors = Enumerable.Range(1, 3).Select(n => After(Math.Pow(0.5, n)).Zip(fine, (a, b) => Math.Abs(a - b)).ToArray()).ToArray();
        for (var i = 0; i < fine.Length; i++)
        {
            // A quarter for each halving, within what the next order still adds.
            Assert.InRange(Math.Log2(errors[0][i] / errors[1][i]), 1.8, 2.4);
            Assert.InRange(Math.Log2(errors[1][i] / errors[2][i]), 1.8, 2.4);
        }
    }

    [Fact]
    public void A_step_allocates_nothing()
    {
        var simulation = new Simulation(
            Tern, RideCourse.Create(Route.Loop(Length.FromKilometres(3), Length.FromMetres(30), 3), Tern.Pace), Every(0.1));
        for (var i = 0; i < 200; i++)
            simulation.Advance();

        Allocations.AreFewerThanOneIn(2000, () =>
        {
            for (var i = 0; i < 2000; i++)
                simulation.Advance();
        });
    }

    [Fact]
    public void The_table_of_cooling_keeps_to_the_correlation_within_two_thousandths_on_the_move() =>
        Gen.Select(Gen.Double[0, 25], Gen.Double[1, 150], Gen.Double[45, 90]).Sample((speed, rise, size) =>
        {
            var air = Air.SeaLevel;
            var can = new Can(Length.FromMillimetres(size), Length.FromMillimetres(size));
            var surface = air.Temperature + TemperatureDifference.FromKelvins(rise);
            var exact = 1 / CanCooling.Riding(can, Speed.FromMetresPerSecond(speed), air).At(surface).KelvinsPerWatt;
            // Between standing still and a walk free and forced convection change places.
            return Math.Abs(CaseCooling.Create(can, air).At(speed, surface.Kelvins) / exact - 1) < (speed < 1.5 ? 0.07 : 0.002);
        }, iter: 300);

    [Fact]
    public void A_course_keeps_to_the_plan_and_the_grades_of_its_route() =>
        Gen.Select(RideTests.Routes, Gen.Double[0, 1]).Sample((route, part) =>
        {
            var pace = new RiderPace(Speed.FromKilometresPerHour(25));
            var (plan, course, place) = (pace.Over(route), RideCourse.Create(route, pace), part * route.Distance.Metres);
            var pieces = course.Pieces.ToArray();
            var piece = pieces.First(p => place <= p.End);
            var whole = pieces[0].Start == 0 && pieces[^1].End == route.Distance.Metres
                && pieces.Skip(1).Zip(pieces, (next, before) => next.Start == before.End).All(same => same);
            return whole
                && (piece.End == place || Math.Abs(
                piece.SquareAt(place) - Math.Pow(plan.TargetAt(Length.FromMetres(place)).MetresPerSecond, 2)) < 1e-9)
                && Math.Abs(piece.Sine / piece.Cosine - route.GradeAt(Length.FromMetres((piece.Start + piece.End) / 2)).Value) < 1e-12;
        }, iter: 200);

    static void Near(double expected, double found, double part) =>
        Assert.True(Math.Abs(found - expected) <= part * Math.Abs(expected), $"{found:R} against {expected:R}, {found / expected - 1:E2} off");
}
