using Boardwright.Documents.Papers;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Boardwright.Tests.Documents.Papers;

public sealed class QrModulesTests
{
    // Read back by a library that had no part in writing it.
    [Theory]
    [InlineData("https://shop.example/boards/tern")]
    [InlineData("https://shop.example/boards/ёлочка-2")]
    public void A_code_opens_its_address(string text)
    {
        var address = new Uri(text);
        var modules = QrModules.Encode(address);
        const int Scale = 4;
        var side = (modules.Length + 2 * QrModules.Quiet) * Scale;
        var grey = new byte[side * side];
        for (var y = 0; y < side; y++)
        {
            for (var x = 0; x < side; x++)
            {
                var (row, column) = (y / Scale - QrModules.Quiet, x / Scale - QrModules.Quiet);
                var isDark = row >= 0 && row < modules.Length && column >= 0 && column < modules.Length && modules[row][column];
                grey[y * side + x] = isDark ? (byte)0 : (byte)255;
            }
        }

        var source = new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        var read = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)));

        Assert.Equal(address.AbsoluteUri, read.Text);
    }
}
