using Boardwright.Parts;
using CsCheck;

namespace Boardwright.Tests.Units;

public sealed class QuantityTextTests
{
    static Dimension Named(string name) => QuantityText.AllDimensions.Single(dimension => dimension.Name == name);

    [Theory]
    [InlineData("107 mm", "length", 0.107)]
    [InlineData("107mm", "length", 0.107)]
    [InlineData("4.2 in", "length", 0.10668)]
    [InlineData("4.2\"", "length", 0.10668)]
    [InlineData("1 1/4 in", "length", 0.03175)]
    [InlineData("1-1/4 in", "length", 0.03175)]
    [InlineData("5/16 in", "length", 0.0079375)]
    [InlineData(".5 in", "length", 0.0127)]
    [InlineData("5. mm", "length", 0.005)]
    [InlineData("1.07e2 mm", "length", 0.107)]
    [InlineData("107E-3 m", "length", 0.107)]
    [InlineData("+107 mm", "length", 0.107)]
    [InlineData("  107\u00A0mm ", "length", 0.107)]
    [InlineData("107\u202Fmm", "length", 0.107)]
    [InlineData("25 km", "length", 25000, 1e6)]
    [InlineData("12 µm", "length", 12e-6)]
    [InlineData("12 μm", "length", 12e-6)]
    [InlineData("190 rpm/V", "speed constant", 190 * Math.PI / 30)]
    [InlineData("190 KV", "speed constant", 190 * Math.PI / 30)]
    [InlineData("190 1/min/V", "speed constant", 190 * Math.PI / 30)]
    [InlineData("60000 1/min", "angular speed", 60000 * Math.PI / 30)]
    [InlineData("28 mohm", "resistance", 0.028)]
    [InlineData("28 mΩ", "resistance", 0.028)]
    [InlineData("28 m\u2126", "resistance", 0.028)]
    [InlineData("0.028 ohm", "resistance", 0.028)]
    [InlineData("2.1 Nm", "torque", 2.1)]
    [InlineData("2.1 N·m", "torque", 2.1)]
    [InlineData("2.1 N⋅m", "torque", 2.1)]
    [InlineData("2.1 N  m", "torque", 2.1)]
    [InlineData("5.3 mm2", "area", 5.3e-6)]
    [InlineData("5.3 mm²", "area", 5.3e-6)]
    [InlineData("0.55 m2", "area", 0.55)]
    [InlineData("12 %", "fraction", 0.12)]
    [InlineData("12%", "fraction", 0.12)]
    [InlineData("-5 %", "fraction", -0.05)]
    [InlineData("\u22125 %", "fraction", -0.05)]
    [InlineData("95 %", "number", 0.95)]
    [InlineData("0.95", "number", 0.95)]
    [InlineData("18 °C", "temperature", 291.15)]
    [InlineData("18°C", "temperature", 291.15)]
    [InlineData("18 ºC", "temperature", 291.15)]
    [InlineData("64 °F", "temperature", 290.92777777777775)]
    [InlineData("291 K", "temperature", 291)]
    [InlineData("17 mph", "speed", 7.59968)]
    [InlineData("28 km/h", "speed", 28 / 3.6)]
    [InlineData("82 kg", "mass", 82)]
    [InlineData("180 lb", "mass", 81.6466266)]
    [InlineData("5.0 Ah", "charge", 18000)]
    [InlineData("120 ns", "duration", 120e-9)]
    [InlineData("2040 uF", "capacitance", 2040e-6)]
    [InlineData("4200 A²s", "fusing integral", 4200)]
    [InlineData("0.0002 kg m²", "inertia", 0.0002)]
    [InlineData("2.5 Nm/deg", "angular stiffness", 2.5 * 180 / Math.PI)]
    [InlineData("44 °", "angle", 44 * Math.PI / 180)]
    public void Is_read(string text, string dimension, double si, double? greatest = null)
    {
        var asked = new QuantityRequest(Named(dimension));
        var written = QuantityText.Read(
            text, asked with { Greatest = greatest ?? asked.Greatest, Least = dimension == "speed" ? -40 : asked.Least });

        Assert.Null(written.Refusal);
        Assert.Equal(si, written.Si, 1e-12 * Math.Abs(si));
    }

    // ASTM B258 as printed in wire tables: diameters in mm of solid round wires.
    [Theory]
    [InlineData("AWG 36", 0.127)]
    [InlineData("AWG 24", 0.511)]
    [InlineData("AWG 12", 2.053)]
    [InlineData("12 AWG", 2.053)]
    [InlineData("AWG12", 2.053)]
    [InlineData("AWG 10", 2.588)]
    [InlineData("AWG 1", 7.348)]
    [InlineData("AWG 0", 8.251)]
    [InlineData("AWG 1/0", 8.251)]
    [InlineData("AWG 2/0", 9.266)]
    [InlineData("00 AWG", 9.266)]
    [InlineData("AWG 3/0", 10.40)]
    [InlineData("AWG 4/0", 11.68)]
    public void A_wire_gauge_is_the_copper_section_of_ASTM_B258(string text, double millimetres)
    {
        var written = QuantityText.Read(text, Area.Dimension);

        Assert.Equal(millimetres, 2e3 * Math.Sqrt(written.Si / Math.PI), millimetres < 10 ? 0.0005 : 0.005);
    }

    [Theory]
    [InlineData("1,5 mm", "has a comma", "Write 1.5 mm, with a point.")]
    [InlineData(",5 mm", "has a comma", "Write 0.5 mm, with a point.")]
    [InlineData("1.234,5 mm", "has a comma", "Write 1234.5 mm, with a point.")]
    [InlineData("1,800 mm", "has a comma", "Write 1800 mm or 1.800 mm, whichever is meant")]
    [InlineData("1,234.5 mm", "has a comma", "Write 1234.5 mm: no comma between thousands.")]
    [InlineData("1'800 mm", "mark between", "960 mm")]
    [InlineData("1 800 mm", "two numbers", "960 mm")]
    [InlineData("1.2.3 mm", "more than one point", "960 mm")]
    [InlineData("960", "has no unit", "such as 960 mm")]
    [InlineData("3 kg", "is a mass; deck.length wants a length", "such as 960 mm")]
    [InlineData("3 %", "is a fraction", "such as 960 mm")]
    [InlineData("960 MM", "wrong capitals", "Write 960 mm")]
    [InlineData("38 IN", "wrong capitals", "Write 38 in")]
    [InlineData("960 furlongs", "'furlongs' is not a unit of length", "such as 960 mm")]
    [InlineData("about 960 mm", "does not begin with a number", "such as 960 mm")]
    [InlineData("mm", "does not begin with a number", "such as 960 mm")]
    [InlineData("", "Nothing is written", "such as 960 mm")]
    [InlineData("NaN mm", "not a number that can be reckoned with", "leave deck.length out")]
    [InlineData("-inf", "not a number that can be reckoned with", "leave deck.length out")]
    [InlineData("1e400 mm", "too large for a number", "960 mm")]
    [InlineData("-5 mm", "is more than 0 mm and at most 10000 mm", "960 mm")]
    [InlineData("0 mm", "is more than 0 mm", "960 mm")]
    [InlineData("500 in", "at most 394 in", "960 mm")]
    [InlineData("3-4 mm", "is a range", "value: 960 mm")]
    [InlineData("3 – 4 mm", "is a range", "value: 960 mm")]
    [InlineData("960 ± 2 mm", "spread in one", "give: 5 %")]
    [InlineData("1/0 in", "divides by zero", "1/4")]
    public void A_length_is_refused(string text, string says, string remedy)
    {
        var written = QuantityText.Read(text, new QuantityRequest(Length.Dimension) { Key = "deck.length", Example = "960 mm", Positive = true });

        Assert.False(written.IsRead);
        Assert.True(double.IsNaN(written.Si));
        Assert.Contains(says, written.Refusal!.Says, StringComparison.Ordinal);
        Assert.Contains(remedy, written.Refusal.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("18 C", "temperature", "C alone is the coulomb", "Write 18 °C.")]
    [InlineData("64 F", "temperature", "F alone is the farad", "Write 64 °F.")]
    [InlineData("18", "temperature", "has no unit", "such as 18 °C")]
    [InlineData("0.12", "fraction", "has no unit", "Write it in %, such as 12 %.")]
    [InlineData("190 kV", "speed constant", "is a voltage", "rpm/V")]
    [InlineData("5 ah", "charge", "wrong capitals", "Write 5 Ah")]
    [InlineData("AWG 41", "area", "not a wire gauge", "AWG 40 to AWG 1")]
    [InlineData("AWG 5/0", "area", "not a wire gauge", "AWG 4/0")]
    [InlineData("awg 12", "area", "wrong capitals", "Write AWG 12")]
    [InlineData("5 mm", "number", "is a length; this value wants a number", "Write a plain number, or one with %")]
    public void Another_value_is_refused(string text, string dimension, string says, string remedy)
    {
        var refusal = QuantityText.Read(text, Named(dimension)).Refusal!;

        Assert.Contains(says, refusal.Says, StringComparison.Ordinal);
        Assert.Contains(remedy, refusal.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_unit_of_every_dimension_is_read_in_every_spelling()
    {
        foreach (var dimension in QuantityText.AllDimensions)
        {
            foreach (var unit in dimension.Units)
            {
                foreach (var spelling in unit.Spellings.Prepend(unit.Symbol))
                {
                    var si = dimension == Temperature.Dimension ? 300.0 : unit.ToSi(1);
                    var text = FormattableString.Invariant($"{unit.FromSi(si):R} {spelling}");
                    Assert.Equal(si, QuantityText.Read(
                        text, new QuantityRequest(dimension) { Least = double.MinValue, Greatest = double.MaxValue }).Si, 1e-12 * si);
                }
            }
        }
    }

    [Fact]
    public void Every_example_of_every_entry_is_read()
    {
        foreach (var type in typeof(Sheet).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Sheet)) && !type.IsAbstract))
        {
            foreach (var entry in Entry.ListEntries(type).Where(entry => entry.Form == EntryForm.Quantity))
            {
                var written = QuantityText.Read(
                    entry.Example, new QuantityRequest(
                    entry.Dimension!)
                    { Least = entry.Least, Greatest = entry.Greatest, Positive = entry.About.Positive });
                Assert.True(written.IsRead, $"{type.Name}.{entry.Key}: {written.Refusal?.Says}");
            }
        }
    }

    [Fact]
    public void What_is_written_reads_back_as_the_same_value() =>
        Gen.Select(Gen.Int[0, QuantityText.AllDimensions.Count - 1].Select(static i => QuantityText.AllDimensions[i]), Gen.Double[0, 1],
        Gen.Int[-6, 0]).Sample((dimension, part, power) =>
        {
            // Temperatures and percentages cannot hit every last bit, since their units add or divide.
            var si = dimension.Least + (dimension.Greatest - dimension.Least) * part * Math.Pow(10, power);
            var written = QuantityText.Read(QuantityText.Write(si, dimension), dimension);
            return written.IsRead && Math.Abs(written.Si - si) <= 4e-16 * Math.Abs(si);
        });

    [Theory]
    [InlineData(0.107, "length", "107 mm")]
    [InlineData(0.03175, "length", "31.75 mm")]
    [InlineData(291.15, "temperature", "18 °C")]
    [InlineData(0.12, "fraction", "12 %")]
    [InlineData(0.014, "number", "0.014")]
    [InlineData(0, "length", "0 mm")]
    public void Is_written(double si, string dimension, string text) => Assert.Equal(text, QuantityText.Write(si, Named(dimension)));

    [Fact]
    public void No_text_ever_throws()
    {
        var pieces = Gen.OneOf("1", "07", ".", ",", "-", "+", "/", " ", "e", "E9", "mm", "AWG ", "°", "C", "%", "±", "NaN", "\u22121", "\uD83D", "\0", "1/0", "'", "µ", "²");
        Gen.Select(pieces.Array[0, 9], Gen.Int[0, QuantityText.AllDimensions.Count - 1].Select(static i => QuantityText.AllDimensions[i]))
            .Sample((words, dimension) =>
            Holds(QuantityText.Read(string.Concat(words), dimension)));
        Gen.Select(Gen.String, Gen.Int[0, QuantityText.AllDimensions.Count - 1].Select(static i => QuantityText.AllDimensions[i]))
            .Sample((text, dimension) =>
            Holds(QuantityText.Read(text, dimension)));

        static bool Holds(QuantityReading written) =>
            written.IsRead ? double.IsFinite(written.Si) : written.Refusal!.Says.EndsWith('.') && written.Refusal.Remedy.EndsWith('.');
    }
}
