using Boardwright.App.Workbench.BoardPages;
using Boardwright.Shops;
using Microsoft.Net.Http.Headers;

namespace Boardwright.App.Workbench.BuiltPages;

/// <summary>Hands out photos, logs and other files of built boards.</summary>
/// <remarks>What somebody put there is never run: pictures of known kinds are shown, everything else is only to be saved, under a type that
/// means nothing.</remarks>
static class BuiltFiles
{
    /// <summary>Where they are.</summary>
    public const string Route = "/built-files/{serial}/{**path}";

    // By what the bytes are, not by what the name says. A drawing in SVG may hold scripts, so it is none of these.
    static readonly (byte[] Start, int At, string Type)[] Pictures =
    [
        ([0xFF, 0xD8, 0xFF], 0, "image/jpeg"),
        ([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], 0, "image/png"),
        ([.. "GIF8"u8], 0, "image/gif"),
        ([.. "WEBP"u8], 8, "image/webp"),
    ];

    /// <summary>The address of a file.</summary>
    public static string AddressOf(string serial, string path) => $"/built-files/{Uri.EscapeDataString(serial)}/{string.Join('/', path.Split('/').Select(Uri.EscapeDataString))}";
    /// <summary>Whether a file is shown as a picture, by its name; what it is indeed is seen when it is handed out.</summary>
    public static bool IsPicture(string path) => Path.GetExtension(path).ToLowerInvariant() is ".jpg" or ".jpeg" or ".png" or ".gif" or ".webp";

    /// <summary>Answers with a file.</summary>
    public static async Task<IResult> GetAsync(string serial, string path, OpenBoards boards, HttpContext context)
    {
        try
        {
            if (await BuiltInShop.FindAsync(await boards.ShopAsync(context.RequestAborted), serial, context.RequestAborted) is not { } place
                || await place.FileAsync(path, context.RequestAborted) is not { } bytes)
                return Results.NotFound();
            context.Response.Headers[HeaderNames.XContentTypeOptions] = "nosniff";
            context.Response.Headers[HeaderNames.CacheControl] = "private, no-cache";
            context.Response.Headers[HeaderNames.ContentSecurityPolicy] = "default-src 'none'; sandbox";
            return TypeOf(bytes) is { } picture ? Results.Bytes(bytes, picture) : Results.Bytes(bytes, "application/octet-stream", Path.GetFileName(path));
        }
        catch (ShopException trouble) when (trouble.Kind is ShopError.NotThere or ShopError.Refused)
        {
            return Results.NotFound();
        }
    }

    static string? TypeOf(byte[] bytes) =>
        Pictures.FirstOrDefault(picture => bytes.AsSpan().Length >= picture.At + picture.Start.Length
        && bytes.AsSpan(picture.At, picture.Start.Length).SequenceEqual(picture.Start)).Type;
}
