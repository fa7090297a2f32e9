using CsCheck;

namespace Boardwright.Tests;

/// <summary>Samples the same cases in every run: a property that fails once in a thousand runs would stop whoever happens to be
/// there.</summary>
/// <remarks>Found before CsCheck's own methods of the same name, since it lies in the tests' own namespace.</remarks>
static class SteadySampling
{
    const long Usual = 100;

    public static void Sample<T>(this Gen<T> gen, Action<T> assert, long iter = Usual)
    {
        for (var i = 0u; i < iter; i++)
        {
            var value = gen.Generate(new PCG(i, Mixed(i)), null, out _);
            try
            {
                assert(value);
            }
            catch (Exception fault)
            {
                throw new Xunit.Sdk.XunitException($"Case {i}, {Check.Print(value)}: {fault.Message}", fault);
            }
        }
    }

    public static void Sample<T>(this Gen<T> gen, Func<T, bool> holds, long iter = Usual) =>
        gen.Sample(value => Assert.True(holds(value)), iter);

    public static void Sample<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> assert, long iter = Usual) =>
        gen.Sample(v => assert(v.Item1, v.Item2), iter);

    public static void Sample<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> holds, long iter = Usual) =>
        gen.Sample(v => Assert.True(holds(v.Item1, v.Item2)), iter);

    public static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> assert, long iter = Usual) =>
        gen.Sample(v => assert(v.Item1, v.Item2, v.Item3), iter);

    public static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> holds, long iter = Usual) =>
        gen.Sample(v => Assert.True(holds(v.Item1, v.Item2, v.Item3)), iter);

    public static void Sample<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> assert, long iter = Usual) =>
        gen.Sample(v => assert(v.Item1, v.Item2, v.Item3, v.Item4), iter);

    public static void Sample<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Func<T1, T2, T3, T4, bool> holds, long iter = Usual) =>
        gen.Sample(v => Assert.True(holds(v.Item1, v.Item2, v.Item3, v.Item4)), iter);

    static ulong Mixed(uint i) => (i + 1) * 0x9E3779B97F4A7C15UL;
}
