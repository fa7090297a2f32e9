namespace Boardwright.Numerics;

/// <summary>A real function of one real number, passed as a struct so that a loop calls it without a delegate.</summary>
public interface IFunction
{
    /// <summary>The value at <paramref name="x"/>; the same <paramref name="x"/> always gives the same value.</summary>
    double At(double x);
}

/// <summary>A delegate in the form the solvers take.</summary>
readonly struct Called(Func<double, double> function) : IFunction
{
    public double At(double x) => function(x);
}
