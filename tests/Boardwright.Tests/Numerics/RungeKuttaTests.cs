using Boardwright.Numerics;

namespace Boardwright.Tests.Numerics;

public sealed class RungeKuttaTests
{
    // A swinging mass, position and speed: x = cos t from (1, 0).
    readonly struct Swing : IDerivative
    {
        public void At(double time, ReadOnlySpan<double> state, Span<double> rates) =>
            (rates[0], rates[1]) = (state[1], -state[0]);
    }

    // dy/dt = y cos t, so y = exp(sin t): the time itself matters.
    readonly struct Tide : IDerivative
    {
        public void At(double time, ReadOnlySpan<double> state, Span<double> rates) => rates[0] = state[0] * Math.Cos(time);
    }

    // dy/dt = −y.
    readonly struct Decay : IDerivative
    {
        public void At(double time, ReadOnlySpan<double> state, Span<double> rates)
        {
            for (var i = 0; i < state.Length; i++) rates[i] = -state[i];
        }
    }

    // One step of dy/dt = −y multiplies by the first five terms of the exponential series: Hairer, Nørsett and Wanner,
    // Solving Ordinary Differential Equations I, ch. II.1. For h = 1: 1 − 1 + 1/2 − 1/6 + 1/24 = 0.375.
    [Fact]
    public void One_step_of_decay_is_the_exponential_series_to_the_fourth_power()
    {
        double[] state = [8, 16];
        RungeKutta.Step(new Decay(), 0, state, 1);

        Assert.Equal(3, state[0], 1e-15); // rounding
        Assert.Equal(6, state[1], 1e-15);
    }

    [Fact]
    public void Half_the_step_gives_a_sixteenth_of_the_error()
    {
        static double Error(int steps)
        {
            double[] swing = [1, 0], tide = [1];
            RungeKutta.Advance(new Swing(), 0, swing, 10, steps);
            RungeKutta.Advance(new Tide(), 0, tide, 10, steps);
            return double.Hypot(swing[0] - Math.Cos(10), swing[1] + Math.Sin(10)) + Math.Abs(tide[0] - Math.Exp(Math.Sin(10)));
        }

        for (var steps = 200; steps <= 1600; steps *= 2)
            Assert.Equal(4, Math.Log2(Error(steps) / Error(2 * steps)), 0.1); // the next order is a fortieth at steps of 0.05
    }

    [Fact]
    public void Equal_single_steps_are_the_same_as_advancing()
    {
        double[] single = [1], together = [1];
        for (var i = 0; i < 10; i++) RungeKutta.Step(new Tide(), 2 + i * 0.125, single, 0.125);
        RungeKutta.Advance(new Tide(), 2, together, 1.25, 10);

        Assert.Equal(together, single);
    }

    [Fact]
    public void Going_back_returns_to_the_start()
    {
        double[] state = [1, 0];
        RungeKutta.Advance(new Swing(), 0, state, 3, 300);
        RungeKutta.Advance(new Swing(), 3, state, -3, 300);

        Assert.Equal(1, state[0], 1e-9); // twice the error of 300 steps of 0.01
        Assert.Equal(0, state[1], 1e-9);
    }

    [Fact]
    public void Steps_allocate_nothing()
    {
        var state = new double[8];
        RungeKutta.Advance(new Decay(), 0, state, 1, 10);

        Allocations.AreFewerThanOneIn(100_000, () => RungeKutta.Advance(new Decay(), 0, state, 1, 100_000));
    }

    [Fact]
    public void A_state_too_large_or_no_step_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RungeKutta.Step(new Decay(), 0, new double[65], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RungeKutta.Advance(new Decay(), 0, new double[1], 1, 0));
    }
}
