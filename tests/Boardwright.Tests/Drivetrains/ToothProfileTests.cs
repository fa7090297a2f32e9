using Boardwright.Drivetrains;

namespace Boardwright.Tests.Drivetrains;

public sealed class ToothProfileTests
{
    [Theory]
    [InlineData("HTD 5M")]
    [InlineData("HTD5M")]
    [InlineData("htd-5m")]
    [InlineData("5M")]
    [InlineData("5m htd")]
    [InlineData("H5M")]
    [InlineData(" HTD_5M ")]
    public void A_profile_is_found_under_its_usual_spellings(string name) => Assert.Same(ToothProfile.Htd5M, ToothProfile.Parse(name));

    [Theory]
    [InlineData("")]
    [InlineData("5")]
    [InlineData("HTD")]
    [InlineData("GT2 5M")]
    [InlineData("5MGT")]
    [InlineData("T5")]
    [InlineData("HTD 50M")]
    public void Another_profile_of_the_same_pitch_is_not_mistaken_for_it(string name) => Assert.Null(ToothProfile.Parse(name));

    [Fact]
    public void Every_profile_is_found_under_its_own_name() =>
        Assert.All(ToothProfile.All, static profile => Assert.Same(profile, ToothProfile.Parse(profile.Name)));

    // Optibelt, Technical Manual Rubber Timing Belt Drives, pp. 24-25.
    [Theory]
    [InlineData(270, true)]
    [InlineData(260, false)]
    [InlineData(280, true)]
    [InlineData(285, false)]
    public void Stock_lengths_are_those_of_the_one_list(double millimetres, bool listed) =>
        Assert.Equal(listed, ToothProfile.Htd5M.Stock(Length.FromMillimetres(millimetres)) is not null);

    [Fact]
    public void A_length_of_the_older_series_says_so()
    {
        Assert.True(ToothProfile.Htd5M.Stock(Length.FromMillimetres(345))!.Value.OlderSeriesOnly);
        Assert.False(ToothProfile.Htd5M.Stock(Length.FromMillimetres(350))!.Value.OlderSeriesOnly);
    }

    [Fact]
    public void Stock_lengths_rise_and_are_whole_numbers_of_teeth()
    {
        var stock = ToothProfile.Htd5M.StockLengths;
        Assert.All(stock, static s => Assert.Equal(s.Teeth, ToothProfile.Htd5M.TeethOf(s.PitchLength)));
        Assert.Equal(stock.OrderBy(static s => s.Teeth).Distinct(), stock);
    }

    [Fact]
    public void Neighbours_of_a_length_are_the_stock_belts_around_it()
    {
        var (shorter, longer) = ToothProfile.Htd5M.StockAround(Length.FromMillimetres(270));
        Assert.Equal(53, shorter!.Value.Teeth);
        Assert.Equal(55, longer!.Value.Teeth);
        Assert.Null(ToothProfile.Htd5M.StockAround(Length.FromMillimetres(50)).Shorter);
        Assert.Null(ToothProfile.Htd5M.StockAround(Length.FromMetres(9)).Longer);
        Assert.Equal((null, null), ToothProfile.Htd3M.StockAround(Length.FromMillimetres(270)));
    }

    [Fact]
    public void A_length_that_is_no_whole_number_of_pitches_has_no_teeth()
    {
        Assert.Equal(53, ToothProfile.Htd5M.TeethOf(Length.FromMillimetres(265)));
        Assert.Null(ToothProfile.Htd5M.TeethOf(Length.FromMillimetres(267)));
        Assert.Null(ToothProfile.Htd5M.TeethOf(Length.FromMillimetres(0)));
    }

    // SDP/SI D265, p. T15 table 3; Optibelt table 37.
    [Fact]
    public void Tension_and_mass_are_the_makers()
    {
        Assert.Equal(454, ToothProfile.Htd5M.TensionPerInch.Newtons, 0.5);
        Printed.Matches("285", ToothProfile.Htd3M.TensionPerInch.Newtons);
        Printed.Matches("792", ToothProfile.Htd8M.TensionPerInch.Newtons);
        Printed.Matches("0.035", ToothProfile.Htd5M.KilogramsPerMetre(Length.FromMillimetres(10)));
        Printed.Matches("0.174", ToothProfile.Htd8M.KilogramsPerMetre(Length.FromMillimetres(30)));
    }

    [Fact]
    public void A_profile_needs_a_pitch()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ToothProfile("none", Length.FromMetres(0), Length.FromMetres(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ToothProfile("none", Length.FromMillimetres(5), Length.FromMillimetres(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PulleyGeometry(0, ToothProfile.Htd5M));
    }

    // SDP/SI handbook geometry, as tabulated: 15 teeth 23.873 and 22.730 mm, 48 teeth 76.394 and 75.251 mm.
    [Fact]
    public void Pulley_diameters_follow_from_teeth_and_profile()
    {
        Printed.Matches("23.873", new PulleyGeometry(15, ToothProfile.Htd5M).PitchDiameter.Millimetres);
        Printed.Matches("22.730", new PulleyGeometry(15, ToothProfile.Htd5M).OutsideDiameter.Millimetres);
        Printed.Matches("75.251", new PulleyGeometry(48, ToothProfile.Htd5M).OutsideDiameter.Millimetres);
        Assert.True(new PulleyGeometry(14, ToothProfile.Htd5M).IsRated);
        Assert.False(new PulleyGeometry(13, ToothProfile.Htd5M).IsRated);
    }
}
