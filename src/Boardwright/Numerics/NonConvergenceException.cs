namespace Boardwright.Numerics;

/// <summary>A solver stopped before it met its tolerance, so it has no answer to give.</summary>
sealed class NonConvergenceException(string message) : Exception(message);
