namespace Boardwright.Tests;

/// <summary>Holds code that runs millions of times to allocating nothing each time.</summary>
static class Allocations
{
    // The smallest object takes 24 bytes. The runtime itself may allocate now and then, when it compiles a method again or is watched.
    const int LeastObject = 24;

    /// <summary>Runs an action whose calls, many in a row, must not allocate an object each.</summary>
    /// <param name="calls">How many calls the action makes.</param>
    /// <param name="action">What it does.</param>
    public static void AreFewerThanOneIn(int calls, Action action)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        action();
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, LeastObject * (long)calls - 1);
    }
}
