using System.Buffers;
using System.Security.Cryptography;
using System.Text;

namespace Boardwright.Shops;

/// <summary>A file as it is kept: its bytes and nothing else are the truth.</summary>
public sealed class KeptFile
{
    // Some systems refuse these in a file's name, and a shop may be taken to one of them.
    static readonly SearchValues<char> Forbidden = SearchValues.Create("\\:\"*?<>|");

    /// <summary>A file.</summary>
    /// <param name="path">Path inside the item, with slashes, such as <c>shelf/motors.yaml</c>.</param>
    /// <param name="bytes">The bytes; they are not copied and must not be changed.</param>
    /// <exception cref="ShopException">The path leads out of the folder, or cannot be a path on every system.</exception>
    public KeptFile(string path, byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (path.Split('/').Any(static name => name.Trim().Length == 0 || name is "." or ".." || name.EndsWith('.') || name.EndsWith(' '))
            || path.AsSpan().ContainsAny(Forbidden) || path.Any(char.IsControl) || path.Length > 400)
            throw new ShopException(ShopError.Refused, $"'{path}' cannot be kept: it is not a plain path that every system knows.", "Give the file a plain name of letters, digits and hyphens.");
        (Path, Bytes) = (path, bytes);
        Hash = Convert.ToHexStringLower(SHA256.HashData(bytes));
    }

    /// <summary>Path inside the item, with slashes.</summary>
    public string Path { get; }
    /// <summary>The bytes.</summary>
    public byte[] Bytes { get; }
    /// <summary>SHA-256 of the bytes in hexadecimal digits.</summary>
    public string Hash { get; }
    /// <summary>The bytes read as UTF-8; a byte order mark stays, as the first character.</summary>
    public string Text => Encoding.UTF8.GetString(Bytes);
    /// <summary>A file from a text, written as UTF-8 exactly as it stands.</summary>
    public static KeptFile FromText(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));
}

/// <summary>The files that belong to one item at one time: a board file with its shelf and route, one shelf file, a built board with its
/// photos and rides.</summary>
public sealed class FileSet
{
    /// <summary>A set of files.</summary>
    /// <param name="main">Path of the file that the item is about.</param>
    /// <param name="files">All files.</param>
    /// <exception cref="ShopException">The main file is missing, or two paths differ in capitals at most.</exception>
    public FileSet(string main, IEnumerable<KeptFile> files)
    {
        Files = [.. files.OrderBy(static file => file.Path, StringComparer.Ordinal)];
        if (Files.GroupBy(static file => file.Path, StringComparer.OrdinalIgnoreCase)
            .FirstOrDefault(static same => same.Count() > 1) is { } twice)
            throw new ShopException(ShopError.Refused, $"Two files would be called {twice.Key} where capitals do not count.", "Give one of them another name.");
        Main = Files.FirstOrDefault(file => file.Path == main) ?? throw new ShopException(ShopError.Refused, $"The file '{main}' is not among the files to keep.", "Add it.");
    }

    /// <summary>The file that the item is about.</summary>
    public KeptFile Main { get; }
    /// <summary>All files, by path.</summary>
    public IReadOnlyList<KeptFile> Files { get; }
    /// <summary>One file from a text.</summary>
    public static FileSet FromText(string path, string text) => new(path, [KeptFile.FromText(path, text)]);

    /// <summary>A file by its path.</summary>
    /// <returns>The file, or <c>null</c> when there is none.</returns>
    public KeptFile? Find(string path) => Files.FirstOrDefault(file => file.Path == path);

    /// <summary>The set with one file's text changed or added.</summary>
    public FileSet With(string path, string text) => With(KeptFile.FromText(path, text));

    /// <summary>The set with one file changed or added.</summary>
    public FileSet With(KeptFile added)
    {
        ArgumentNullException.ThrowIfNull(added);
        return new(Main.Path, Files.Where(file => file.Path != added.Path).Append(added));
    }

    /// <summary>Whether another set holds the same bytes under the same paths.</summary>
    public bool IsSameAs(FileSet other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Main.Path == other.Main.Path
            && Files.Select(static file => (file.Path, file.Hash)).SequenceEqual(other.Files.Select(static file => (file.Path, file.Hash)));
    }
}
