using System.Numerics;

namespace Boardwright.Numerics;

/// <summary>
/// Sobol's points: a sequence that fills the unit cube more evenly than chance, plain or scrambled by a seed.
/// </summary>
/// <remarks>
/// <para>
/// Any run of 2^k points that starts at a multiple of 2^k has, in every coordinate, exactly one point in each of the
/// 2^k equal parts of 0 to 1. Take a power of two of points from the start; other counts lose this balance.
/// </para>
/// <para>
/// Scrambling is Owen's: at every node of the binary tree of a coordinate the two halves are exchanged or not. The
/// choice is a bit of a hash of the seed, the coordinate and the node, so a point depends on nothing but these and its
/// index. It keeps the balance above, makes every single point uniform over seeds, and so makes the mean of a function
/// over the points unbiased; repeats with other seeds show its error.
/// </para>
/// </remarks>
/// <source>
/// S. Joe and F. Y. Kuo, "Constructing Sobol sequences with better two-dimensional projections", SIAM J. Sci. Comput. 30
/// (2008) 2635-2654, for the direction numbers; I. A. Antonov and V. M. Saleev, USSR Comput. Math. Math. Phys. 19 (1979)
/// 252-256, for the order of the points; A. B. Owen, "Randomly permuted (t,m,s)-nets and (t,s)-sequences", in Monte Carlo
/// and Quasi-Monte Carlo Methods in Scientific Computing (1995) 299-317, and B. Burley, "Practical hash-based Owen
/// scrambling", J. Comput. Graph. Tech. 9 (2020) 4, 1-20, for the scrambling.
/// </source>
/// <error>For smooth functions the error of a mean falls nearly as 1/N plain and nearly as 1/N^1.5 scrambled.</error>
sealed class Sobol
{
    /// <summary>The most coordinates a point may have.</summary>
    public const int MostDimensions = 161;

    const int Bits = 32;
    const double Unit = 1.0 / (1ul << Bits);

    readonly uint[] _directions;
    readonly ulong[]? _keys;

    /// <summary>The sequence scrambled by a seed; the same seed always gives the same points.</summary>
    /// <param name="dimensions">Number of coordinates, 1 to <see cref="MostDimensions"/>.</param>
    /// <param name="seed">Any number.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of coordinates is out of range.</exception>
    public Sobol(int dimensions, ulong seed)
        : this(dimensions)
    {
        _keys = new ulong[dimensions];
        for (var i = 0; i < dimensions; i++) _keys[i] = Mixed(Mixed(seed) + (ulong)i);
    }

    Sobol(int dimensions)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dimensions, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dimensions, MostDimensions);
        Dimensions = dimensions;
        _directions = new uint[dimensions * Bits];
        var rows = SobolNumbers.Rows;
        for (var i = 0; i < dimensions; i++)
        {
            var directions = _directions.AsSpan(i * Bits, Bits);
            if (i == 0)
            {
                for (var k = 0; k < Bits; k++) directions[k] = 1u << (Bits - 1 - k);
                continue;
            }

            var degree = rows[0];
            Extend(rows[1], rows.Slice(2, degree), directions);
            rows = rows[(2 + degree)..];
        }
    }

    /// <summary>The plain sequence; its first point is the corner at zero.</summary>
    /// <param name="dimensions">Number of coordinates, 1 to <see cref="MostDimensions"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of coordinates is out of range.</exception>
    public static Sobol Unscrambled(int dimensions) => new(dimensions);

    /// <summary>Number of coordinates of a point.</summary>
    public int Dimensions { get; }

    /// <summary>Writes a point of the sequence.</summary>
    /// <param name="index">Which point, from 0, in the order of Gray's code.</param>
    /// <param name="point">
    /// Takes the coordinates: multiples of 2^-32 from 0 to below 1 when plain; above 0 and below 1, half a unit further,
    /// when scrambled.
    /// </param>
    /// <exception cref="ArgumentException">The span does not have one place for each coordinate.</exception>
    public void Point(uint index, Span<double> point)
    {
        if (point.Length != Dimensions) throw new ArgumentException("The span must have one place for each coordinate.", nameof(point));
        var gray = index ^ (index >> 1);
        for (var i = 0; i < point.Length; i++)
        {
            var directions = _directions.AsSpan(i * Bits, Bits);
            var digits = 0u;
            for (var left = gray; left != 0; left &= left - 1) digits ^= directions[BitOperations.TrailingZeroCount(left)];
            point[i] = _keys is null ? digits * Unit : (Scrambled(digits, _keys[i]) + 0.5) * Unit;
        }
    }

    /// <summary>The direction numbers of a coordinate, as fractions of 2^32, from its primitive polynomial and first numbers.</summary>
    /// <param name="polynomial">The inner coefficients of the polynomial, that of the second-highest power first.</param>
    /// <param name="first">As many first numbers m as the polynomial's degree: m_i is odd and below 2^i.</param>
    /// <param name="directions">Takes the direction numbers, at least as many as the degree.</param>
    internal static void Extend(int polynomial, ReadOnlySpan<ushort> first, Span<uint> directions)
    {
        var degree = first.Length;
        for (var k = 0; k < directions.Length; k++)
        {
            if (k < degree)
            {
                directions[k] = (uint)first[k] << (Bits - 1 - k);
                continue;
            }

            var next = directions[k - degree] ^ (directions[k - degree] >> degree);
            for (var j = 1; j < degree; j++)
            {
                if (((polynomial >> (degree - 1 - j)) & 1) != 0) next ^= directions[k - j];
            }

            directions[k] = next;
        }
    }

    /// <summary>Exchanges halves down the binary tree of a coordinate.</summary>
    static uint Scrambled(uint digits, ulong key)
    {
        // One hash decides the 63 nodes of six levels of the tree; the nodes are numbered as in a heap, from 1.
        const int levels = 6;
        var result = digits;
        var node = 0;
        var hash = 0ul;
        for (var level = 0; level < Bits; level++)
        {
            if (level % levels == 0)
            {
                // The leading 1 keeps the same digits at different depths apart.
                var above = ((1ul << Bits) | digits) >> (Bits - level);
                hash = Mixed(key + above);
                node = 1;
            }

            var shift = Bits - 1 - level;
            result ^= (uint)((hash >> node) & 1) << shift;
            node = (node << 1) | (int)((digits >> shift) & 1);
        }

        return result;
    }

    /// <summary>A number that looks unrelated for every other number: SplitMix64's output for a state.</summary>
    /// <source>
    /// G. L. Steele, D. Lea and C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA (2014), with the
    /// constants of D. Stafford's variant 13.
    /// </source>
    static ulong Mixed(ulong state)
    {
        state += 0x9E3779B97F4A7C15;
        state = (state ^ (state >> 30)) * 0xBF58476D1CE4E5B9;
        state = (state ^ (state >> 27)) * 0x94D049BB133111EB;
        return state ^ (state >> 31);
    }
}
