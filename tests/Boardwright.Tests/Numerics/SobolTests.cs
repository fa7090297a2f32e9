using Boardwright.Numerics;
using CsCheck;

namespace Boardwright.Tests.Numerics;

public sealed class SobolTests
{
    // F. Y. Kuo and S. Joe, web page "Sobol sequence generator" (2008, rev. 2010): the program's output for
    // "sobol 10 3 new-joe-kuo-6.21201".
    static readonly double[][] FirstTen =
    [
        [0, 0, 0], [0.5, 0.5, 0.5], [0.75, 0.25, 0.25], [0.25, 0.75, 0.75], [0.375, 0.375, 0.625],
        [0.875, 0.875, 0.125], [0.625, 0.125, 0.875], [0.125, 0.625, 0.375], [0.1875, 0.3125, 0.9375], [0.6875, 0.8125, 0.4375],
    ];

    // The same page, "sobol 123 27 new-joe-kuo-6.21201": the last two lines, points 121 and 122 counted from 0.
    static readonly double[][] LastTwoOf123 =
    [
        [
            0.6328125, 0.5390625, 0.4296875, 0.0078125, 0.8515625, 0.7109375, 0.1171875, 0.1953125, 0.2890625,
            0.9140625, 0.7421875, 0.2109375, 0.7578125, 0.6328125, 0.2265625, 0.8984375, 0.3359375, 0.5859375,
            0.5546875, 0.6796875, 0.9140625, 0.6171875, 0.2890625, 0.4609375, 0.6171875, 0.3515625, 0.6640625,
        ],
        [
            0.8828125, 0.2890625, 0.6796875, 0.7578125, 0.6015625, 0.9609375, 0.8671875, 0.4453125, 0.0390625,
            0.6640625, 0.9921875, 0.4609375, 0.0078125, 0.3828125, 0.4765625, 0.1484375, 0.0859375, 0.3359375,
            0.8046875, 0.4296875, 0.1640625, 0.8671875, 0.5390625, 0.7109375, 0.3671875, 0.1015625, 0.4140625,
        ],
    ];

    static double[] Point(Sobol sobol, uint index)
    {
        var point = new double[sobol.Dimensions];
        sobol.Point(index, point);
        return point;
    }

    [Fact]
    public void The_first_ten_points_are_those_of_Joe_and_Kuo()
    {
        var sobol = Sobol.Unscrambled(3);

        for (var i = 0u; i < 10; i++) Assert.Equal(FirstTen[i], Point(sobol, i));
    }

    [Fact]
    public void Points_121_and_122_in_27_dimensions_are_those_of_Joe_and_Kuo()
    {
        var sobol = Sobol.Unscrambled(27);

        Assert.Equal(LastTwoOf123[0], Point(sobol, 121));
        Assert.Equal(LastTwoOf123[1], Point(sobol, 122));
    }

    // P. Bratley and B. L. Fox, "Algorithm 659", ACM Trans. Math. Softw. 14 (1988) 88-100: from x³ + x + 1 and
    // m = 1, 3, 7 follow m4 = 5 and m5 = 7; m6 by the same rule, 4·5 ⊕ 8·7 ⊕ 7 = 43.
    [Fact]
    public void Direction_numbers_go_on_as_in_Bratley_and_Fox()
    {
        var directions = new uint[6];
        Sobol.Extend(1, [1, 3, 7], directions);

        Assert.Equal([1u << 31, 3u << 30, 7u << 29, 5u << 28, 7u << 27, 43u << 26], directions);
    }

    [Fact]
    public void First_numbers_are_odd_and_small_enough_and_belong_to_every_primitive_polynomial_in_turn()
    {
        var expected = new List<(int Degree, int Inner)>();
        for (var degree = 1; degree <= 10; degree++)
        {
            for (var inner = 0; inner < 1 << (degree - 1); inner++)
            {
                if (IsPrimitive(degree, inner)) expected.Add((degree, inner));
            }
        }

        var found = new List<(int Degree, int Inner)>();
        for (var rows = SobolNumbers.Rows; !rows.IsEmpty; rows = rows[(2 + rows[0])..])
        {
            found.Add((rows[0], rows[1]));
            for (var k = 1; k <= rows[0]; k++)
            {
                Assert.Equal(1, rows[1 + k] & 1);
                Assert.InRange(rows[1 + k], 1, (1 << k) - 1);
            }
        }

        Assert.Equal(Sobol.MostDimensions - 1, found.Count);
        Assert.Equal(expected, found);
    }

    // S. Joe and F. Y. Kuo, ACM Trans. Math. Softw. 29 (2003) 49-57 and the paper of 2008: their numbers have Sobol's
    // property A up to dimension 1111. In d dimensions it says that any aligned run of 2^d points has one in each of the
    // 2^d halves-of-everything, that is, the matrix of leading digits of the first d direction numbers is regular.
    [Fact]
    public void Property_A_holds_in_every_dimension_up_to_the_last()
    {
        const int most = Sobol.MostDimensions;
        var leading = new bool[most][];
        leading[0] = new bool[most];
        leading[0][0] = true;
        var rows = SobolNumbers.Rows;
        var directions = new uint[most];
        for (var i = 1; i < most; i++)
        {
            Sobol.Extend(rows[1], rows.Slice(2, rows[0]), directions);
            leading[i] = [.. directions.Select(static v => v >> 31 == 1)];
            rows = rows[(2 + rows[0])..];
        }

        // Elimination without exchange of rows runs through only if every leading block is regular.
        for (var i = 0; i < most; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (!leading[i][j]) continue;
                for (var k = 0; k < most; k++) leading[i][k] ^= leading[j][k];
            }

            Assert.True(leading[i][i], $"Property A fails in dimension {i + 1}.");
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_coordinate_has_one_point_in_each_of_equal_parts(bool scrambled)
    {
        var sobol = scrambled ? new Sobol(Sobol.MostDimensions, 20) : Sobol.Unscrambled(Sobol.MostDimensions);
        foreach (var (start, count) in new (uint, int)[] { (0, 1), (0, 16), (0, 1024), (3072, 1024), (96, 32) })
        {
            var seen = new int[sobol.Dimensions, count];
            var point = new double[sobol.Dimensions];
            for (var i = 0u; i < count; i++)
            {
                sobol.Point(start + i, point);
                for (var d = 0; d < point.Length; d++) seen[d, (int)(point[d] * count)]++;
            }

            Assert.All(seen.Cast<int>(), static parts => Assert.Equal(1, parts));
        }
    }

    [Fact]
    public void Scrambling_keeps_the_first_two_coordinates_a_net_in_the_plane()
    {
        // Coordinates 1 and 2 are a (0, k, 2)-net: one point in each of 64 boxes of any shape 2^-a by 2^-(6 − a).
        var sobol = new Sobol(2, 7);
        for (var a = 0; a <= 6; a++)
        {
            var boxes = new HashSet<(int, int)>();
            for (var i = 0u; i < 64; i++)
            {
                var point = Point(sobol, i);
                boxes.Add(((int)(point[0] * (1 << a)), (int)(point[1] * (1 << (6 - a)))));
            }

            Assert.Equal(64, boxes.Count);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_points_whatever_was_asked_before() =>
        Gen.Select(Gen.ULong, Gen.UInt, Gen.Int[1, Sobol.MostDimensions]).Sample((seed, index, dimensions) =>
        {
            var used = new Sobol(dimensions, seed);
            Point(used, index / 2);
            return Point(used, index).SequenceEqual(Point(new Sobol(dimensions, seed), index));
        });

    [Fact]
    public void Fewer_dimensions_are_the_first_coordinates_of_more() =>
        Assert.Equal(Point(new Sobol(100, 5), 77)[..10], Point(new Sobol(10, 5), 77));

    [Fact]
    public void Another_seed_gives_other_points_and_coordinates_are_scrambled_apart()
    {
        var point = Point(new Sobol(Sobol.MostDimensions, 1), 0);

        Assert.Distinct(point);
        Assert.Empty(point.Intersect(Point(new Sobol(Sobol.MostDimensions, 2), 0)));
    }

    [Fact]
    public void Scrambled_points_never_touch_the_faces_of_the_cube() =>
        Gen.Select(Gen.ULong, Gen.UInt).Sample((seed, index) =>
            Point(new Sobol(3, seed), index).All(static x => x is > 0 and < 1));

    [Fact]
    public void Over_seeds_a_point_is_uniform_and_two_points_are_independent_below_the_digit_that_parts_them()
    {
        const int seeds = 4096;
        var (sum, squares, products) = (0.0, 0.0, 0.0);
        for (var seed = 0ul; seed < seeds; seed++)
        {
            var sobol = new Sobol(5, seed);
            var first = Point(sobol, 6)[4] - 0.5;
            // Under Owen's scrambling the two halves are told apart by one coin, what follows by coins of its own.
            var second = Point(sobol, 7)[4] - 0.5;
            sum += first;
            squares += first * first;
            products += (Math.Abs(first) - 0.25) * (Math.Abs(second) - 0.25);
        }

        // Four standard errors of the mean of a uniform: 4 √(1/12) / 64; of its square: 4 √(1/180) / 64; of a product of
        // two independent uniforms over a half: 4 (1/48) / 64.
        Assert.Equal(0, sum / seeds, 0.018);
        Assert.Equal(1.0 / 12, squares / seeds, 0.0047);
        Assert.Equal(0, products / seeds, 0.0013);
    }

    [Fact]
    public void Points_in_different_parts_are_scrambled_apart_in_every_later_digit()
    {
        // In coordinate 1 the first 64 points differ in six digits and go on with noughts, so what a scrambled one goes on
        // with are its coins; 64 draws of 26 coins all differ by chance in all but 3 of 100,000 cases.
        var sobol = new Sobol(1, 11);
        var coins = Enumerable.Range(0, 64).Select(i => Point(sobol, (uint)i)[0] * 64 % 1);

        Assert.Distinct(coins);
    }

    [Fact]
    public void The_error_of_a_mean_falls_much_faster_than_by_chance()
    {
        // ∏ (1 + (x_i − 1/2) / i) over 8 coordinates has the mean 1.
        static double Spread(int points)
        {
            const int seeds = 32;
            var sum = 0.0;
            var point = new double[8];
            for (var seed = 0ul; seed < seeds; seed++)
            {
                var sobol = new Sobol(8, seed);
                var mean = 0.0;
                for (var i = 0u; i < points; i++)
                {
                    sobol.Point(i, point);
                    var product = 1.0;
                    for (var d = 0; d < point.Length; d++) product *= 1 + (point[d] - 0.5) / (d + 1);
                    mean += product / points;
                }

                sum += (mean - 1) * (mean - 1);
            }

            return Math.Sqrt(sum / seeds);
        }

        var (few, many) = (Spread(64), Spread(4096));
        // By chance the error would fall as N^-0.5 and be √(∏ (1 + 1/(12 i²)) − 1) / √4096 = 0.0058.
        Assert.InRange(many, 0, 0.0058 / 50);
        Assert.InRange(Math.Log2(few / many) / 6, 1.0, 2.0);
    }

    [Fact]
    public void Wrong_sizes_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Sobol(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sobol.Unscrambled(162));
        Assert.Throws<ArgumentException>(() => new Sobol(3, 1).Point(0, new double[4]));
    }

    static bool IsPrimitive(int degree, int inner)
    {
        // Powers of x modulo the polynomial must come back to 1 only after 2^degree − 1 steps.
        var polynomial = (1 << degree) | (inner << 1) | 1;
        var order = 0;
        var power = 1;
        do
        {
            power <<= 1;
            if (power >> degree != 0) power ^= polynomial;
            order++;
        }
        while (power != 1 && order < 1 << degree);
        return order == (1 << degree) - 1;
    }
}
