using Boardwright.Tests;
using Microsoft.Playwright;

namespace Boardwright.Browser.Tests;

/// <summary>The windows in which a page is held against what axe knows: one in each run, all where <c>BOARDWRIGHT_THOROUGH=1</c> asks for
/// them.</summary>
/// <remarks>Pages share their colours and their layout, so that a page in the dark and its neighbour in the light find most of what both
/// would.</remarks>
static class Screens
{
    static readonly (int Width, ColorScheme Scheme)[] All =
        [(390, ColorScheme.Dark), (1400, ColorScheme.Light), (390, ColorScheme.Light), (1400, ColorScheme.Dark)];

    public static TheoryData<int, ColorScheme> OnAPhoneInTheDark => Data(0);

    public static TheoryData<int, ColorScheme> OnADeskInTheLight => Data(1);

    static TheoryData<int, ColorScheme> Data(int usual)
    {
        var data = new TheoryData<int, ColorScheme>();
        foreach (var (width, scheme) in Thorough.IsAsked ? All : All[usual..(usual + 1)])
            data.Add(width, scheme);
        return data;
    }
}
