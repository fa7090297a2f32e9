using QRCoder;

namespace Boardwright.Documents.Papers;

/// <summary>The dark squares of a code that a telephone reads.</summary>
static class QrModules
{
    /// <summary>Quiet squares around the code that the standard asks for.</summary>
    public const int Quiet = 4;

    /// <summary>Rows of squares, true where dark, without the quiet edge.</summary>
    public static bool[][] Encode(Uri address)
    {
        using var generator = new QRCodeGenerator();
        // A quarter of it may be scratched or dirty.
        using var code = generator.CreateQrCode(address.AbsoluteUri, QRCodeGenerator.ECCLevel.Q);
        var size = code.ModuleMatrix.Count - 2 * Quiet;
        return [.. Enumerable.Range(Quiet, size).Select(y => Enumerable.Range(Quiet, size).Select(x => code.ModuleMatrix[y][x]).ToArray())];
    }
}
