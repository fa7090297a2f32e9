using Boardwright.Examinations;
using Boardwright.Wiring;

namespace Boardwright.Tests.Wiring;

public sealed class HarnessTests
{
    static Harness Tern => Examination.Examine(Boards.Tern).Harness;

    static HarnessRun Of(Harness harness, RunKind kind) => harness.Runs.First(r => r.Kind == kind);

    // Tern by hand: a pair to the controller, three wires to each of two motors, a pair from the socket; five sensor leads for each motor
    // follow from its Hall sensors, the rest from remote, button and gauge.
    [Fact]
    public void Runs_follow_from_the_file_and_from_the_parts()
    {
        Assert.Equal(
            ["pack to controller", "controller to motor 1", "controller to motor 2", "motor 1 to controller", "motor 2 to controller", "charge socket to pack", "receiver to controller", "pack to charge gauge", "switch to controller"],
            Tern.Runs.Select(r => r.Name));
        Assert.Equal([2, 3, 3, 5, 5, 2, 3, 2, 2], Tern.Runs.Select(r => r.Wires.Count));
        Assert.Equal(Tern.Runs.Select((_, i) => $"W{i + 1}"), Tern.Runs.Select(r => r.Mark));
        Assert.Equal(0.5 + 3.6 + 0.6, Tern.Runs.Where(r => r.Key.Length > 0).Sum(r => r.Cut!.Value.Metres * r.Wires.Count), 1e-9);
    }

    [Fact]
    public void A_wire_is_named_by_its_gauge() => Assert.Equal("AWG 10 (5.26 mm²)", Of(Tern, RunKind.Pack).Wire);

    [Fact]
    public void Every_wire_has_a_colour_in_words_and_no_two_of_a_run_look_alike_without_it()
    {
        foreach (var run in Boards.Names.SelectMany(n => Examination.Examine(Boards.Read(n)).Harness.Runs)
            .Where(r => r.Kind != RunKind.Switch))
        {
            Assert.All(run.Wires, w => Assert.True(w.Colour.Length > 0 && w.Code.Length == 2 && w.Carries.Length > 0));
            Assert.Equal(run.Wires.Count, run.Wires.Select(w => (w.Carries, w.Rings)).Distinct().Count());
        }
    }

    [Fact]
    public void A_pair_loses_what_two_wires_and_two_contacts_lose()
    {
        var run = Of(Tern, RunKind.Pack);
        var load = run.Under(Current.FromAmperes(40))!;
        var ohms = new Conductor(run.Section!.Value).Resistance(Length.FromMetres(0.25), load.Copper!.Value).Ohms + run.Contact.Ohms;

        Assert.True(run.Contact.Ohms > 0);
        Assert.Equal(40 * 2 * ohms, load.Drop!.Value.Volts, 1e-12);
        Assert.Equal(1600 * 2 * ohms, load.Loss!.Value.Watts, 1e-9);
    }

    // An independent way: the bundle as one wire whose metal is that of all three together, under all their current.
    [Fact]
    public void A_bundle_is_as_warm_as_one_wire_of_its_outline_that_makes_all_its_heat()
    {
        var run = Of(Tern, RunKind.Motor);
        var amperes = Current.FromAmperes(30);
        var thick = new WireTemperature(
            new Conductor(Area.FromSquareMetres(3 * run.Section!.Value.SquareMetres)), run.Bundle!.Diameter, run.Around!.Value);

        Assert.Equal(thick.At(amperes * 3)!.Value.Kelvins, run.Under(amperes)!.Copper!.Value.Kelvins, 1e-6);
    }

    [Fact]
    public void Wires_in_a_bundle_are_warmer_than_alone_and_the_largest_current_meets_the_limit()
    {
        foreach (var run in Tern.Runs.Where(r => r.LargestCurrent is not null))
        {
            var most = run.LargestCurrent!.Value;
            var alone = new WireTemperature(new Conductor(run.Section!.Value), run.OuterDiameter!.Value, run.Around!.Value).At(most)!.Value;

            Assert.Equal(run.Limit.Kelvins, run.Under(most)!.Copper!.Value.Kelvins, 1e-6);
            Assert.True(alone < run.Limit);
        }
    }

    [Fact]
    public void A_run_that_is_stated_too_short_is_cut_to_what_the_plan_asks()
    {
        var laid = Tern.Laid(run => run.Kind == RunKind.Pack ? Length.FromMillimetres(300) : run.Kind == RunKind.Charge
            ? Length.FromMillimetres(100) : null);

        Assert.Equal(0.34, Of(laid, RunKind.Pack).Cut!.Value.Metres, 1e-12);
        Assert.Equal(0.3, Of(laid, RunKind.Charge).Cut!.Value.Metres, 1e-12);
        Assert.Equal(0.6, Of(laid, RunKind.Motor).Cut!.Value.Metres, 1e-12);
    }

    [Fact]
    public void The_climb_is_what_lasts_and_the_limits_are_the_peak()
    {
        var examination = Examination.Examine(Boards.Tern);
        var (pack, phase) = (examination.Harness.Duty.Pack!, examination.Harness.Duty.Phase!);

        Assert.Equal(examination.Climb.Value.Asked!.Bus.Amperes, pack.Lasting.Amperes, 1e-9);
        Assert.Equal(examination.PackLimits.Value.Enforced.Current.Amperes, pack.Peak.Amperes, 1e-9);
        Assert.Equal(examination.PhaseLimits.Value.Enforced.Current.Amperes / Math.Sqrt(2), phase.Peak.Amperes, 1e-9);
    }

    // Ratios of the smallest circle around n equal ones by plane geometry: 2, 1 + 2/√3, 1 + √2, 1 + √(2 + 2/√5), 3, 3.
    [Fact]
    public void Circles_around_a_few_wires_are_those_of_plane_geometry()
    {
        double[] exact = [1, 2, 1 + 2 / Math.Sqrt(3), 1 + Math.Sqrt(2), 1 + Math.Sqrt(2 + 2 / Math.Sqrt(5)), 3, 3];
        for (var n = 1; n <= exact.Length; n++)
            Assert.Equal(exact[n - 1], new Bundle(n, Length.FromMillimetres(1)).Diameter.Millimetres, 5e-5);
        for (var n = 2; n <= 12; n++)
            Assert.True(new Bundle(n, Length.FromMillimetres(1)).Diameter >= new Bundle(n - 1, Length.FromMillimetres(1)).Diameter);
        Assert.Throws<InvalidOperationException>(() => new Bundle(13, Length.FromMillimetres(1)).Diameter);
    }

    [Fact]
    public void Sleeve_and_shrink_go_over_and_hold()
    {
        foreach (var millimetres in Enumerable.Range(10, 250).Select(i => i / 10.0))
        {
            var over = Length.FromMillimetres(millimetres);
            if (Bundle.ShrinkOver(over) is { } tube)
            {
                Assert.True(tube.Supplied.Millimetres >= 1.2 * millimetres - 1e-9);
                Assert.True(tube.Supplied.Millimetres / tube.Ratio <= 0.8 * millimetres + 1e-9, $"{millimetres}: {tube}");
            }

            Assert.True(new Bundle(1, over).Sleeve!.Value >= over);
        }

        Assert.Null(Bundle.ShrinkOver(Length.FromMillimetres(60)));
    }
}
