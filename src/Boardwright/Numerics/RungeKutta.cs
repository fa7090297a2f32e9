namespace Boardwright.Numerics;

/// <summary>How fast each number of a state changes, passed as a struct so that a loop calls it without a delegate.</summary>
interface IDerivative
{
    /// <summary>Writes d(state)/dt at a time and a state.</summary>
    /// <param name="time">The time t.</param>
    /// <param name="state">The state at that time.</param>
    /// <param name="rates">Takes one rate for each number of the state; what it holds on entry means nothing.</param>
    void At(double time, ReadOnlySpan<double> state, Span<double> rates);
}

/// <summary>Follows a state through time by the classical Runge-Kutta rule of fourth order, in steps of fixed length.</summary>
/// <remarks>
/// Nothing is allocated on the heap. A step must be short against the fastest process in the state: for dy/dt = −y/τ
/// the rule is stable for steps below 2.785 τ.
/// </remarks>
/// <error>The error after a given time falls with the fourth power of the step while the rates are smooth.</error>
/// <source>E. Hairer, S. P. Nørsett and G. Wanner, Solving Ordinary Differential Equations I, 2nd ed. (1993), ch. II.1, table 1.2.</source>
static class RungeKutta
{
    /// <summary>The most numbers a state may hold.</summary>
    public const int LargestState = 64;

    /// <summary>Moves a state one step on in time.</summary>
    /// <param name="derivative">The rates.</param>
    /// <param name="time">Time at the start of the step.</param>
    /// <param name="state">The state at the start; on return the state at <paramref name="time"/> + <paramref name="step"/>.</param>
    /// <param name="step">Length of the step; a negative one goes back in time.</param>
    /// <exception cref="ArgumentOutOfRangeException">The state holds more than <see cref="LargestState"/> numbers.</exception>
    public static void Step<TDerivative>(TDerivative derivative, double time, Span<double> state, double step)
        where TDerivative : struct, IDerivative
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(state.Length, LargestState, nameof(state));
        Span<double> work = stackalloc double[3 * state.Length];
        Step(derivative, time, state, step, work);
    }

    /// <summary>Moves a state a given time on, in equal steps.</summary>
    /// <param name="derivative">The rates.</param>
    /// <param name="time">Time at the start.</param>
    /// <param name="state">The state at the start; on return the state at <paramref name="time"/> + <paramref name="duration"/>.</param>
    /// <param name="duration">The time to cover; a negative one goes back in time.</param>
    /// <param name="steps">Number of equal steps, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The state holds more than <see cref="LargestState"/> numbers, or there is no step.
    /// </exception>
    public static void Advance<TDerivative>(TDerivative derivative, double time, Span<double> state, double duration, int steps)
        where TDerivative : struct, IDerivative
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(state.Length, LargestState, nameof(state));
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, 1);
        Span<double> work = stackalloc double[3 * state.Length];
        var step = duration / steps;
        for (var i = 0; i < steps; i++)
            Step(derivative, time + i * step, state, step, work);
    }

    static void Step<TDerivative>(TDerivative derivative, double time, Span<double> state, double step, Span<double> work)
        where TDerivative : struct, IDerivative
    {
        var count = state.Length;
        var rates = work[..count];
        var sum = work[count..(2 * count)];
        var trial = work[(2 * count)..];

        derivative.At(time, state, rates);
        for (var i = 0; i < count; i++)
        {
            sum[i] = rates[i];
            trial[i] = state[i] + step / 2 * rates[i];
        }

        derivative.At(time + step / 2, trial, rates);
        for (var i = 0; i < count; i++)
        {
            sum[i] += 2 * rates[i];
            trial[i] = state[i] + step / 2 * rates[i];
        }

        derivative.At(time + step / 2, trial, rates);
        for (var i = 0; i < count; i++)
        {
            sum[i] += 2 * rates[i];
            trial[i] = state[i] + step * rates[i];
        }

        derivative.At(time + step, trial, rates);
        for (var i = 0; i < count; i++)
            state[i] += step / 6 * (sum[i] + rates[i]);
    }
}
