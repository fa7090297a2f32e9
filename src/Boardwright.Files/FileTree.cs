using System.Text;
using Boardwright.Files.Yaml;

namespace Boardwright.Files;

/// <summary>Where files are read from: the disk, or texts that are kept elsewhere.</summary>
public abstract class FileTree
{
    const int Part = 16 * 1024;
    const int LargestFile = 4 * 1024 * 1024;

    /// <summary>Files of the disk.</summary>
    public static FileTree OnDisk { get; } = Opening(
        static path => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
    /// <summary>Texts under their paths; <c>/</c> parts folders, and <c>..</c> leads out of one as on the disk.</summary>
    public static FileTree FromTexts(IReadOnlyDictionary<string, string> texts) => new Memory(texts);
    /// <summary>The same files, each parsed again only when its text has changed: for whoever reads a board at every key stroke. Not for
    /// two threads at once.</summary>
    public FileTree Remembering() => new Memo(this);
    /// <summary>Every text of a tree of texts by its path; none for the disk.</summary>
    public virtual IReadOnlyDictionary<string, string> Texts => new Dictionary<string, string>(StringComparer.Ordinal);

    internal static FileTree Opening(Func<string, Stream> open) => new Disk(open);

    internal abstract bool HasFile(string path);

    internal abstract bool HasFolder(string path);

    internal abstract IEnumerable<string> FilesIn(string folder);

    private protected abstract Stream Open(string path);

    /// <summary>Opens a file that is not read as text.</summary>
    internal Stream OpenToRead(string path) => Open(path);

    /// <summary>Reads a stream to its end, and takes no more room than there is to read.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="most">The most bytes it may hold.</param>
    /// <returns>Its bytes, at their beginning; <c>null</c> when there are more.</returns>
    /// <exception cref="IOException">The stream cannot be read.</exception>
    internal static MemoryStream? AtMost(Stream stream, long most)
    {
        var bytes = new MemoryStream();
        var part = new byte[Part];
        for (int count; (count = stream.Read(part)) > 0;)
        {
            bytes.Write(part, 0, count);
            if (bytes.Length > most)
                return null;
        }

        bytes.Position = 0;
        return bytes;
    }

    /// <summary>Reads a file as a YAML document.</summary>
    internal virtual Node? ReadNodes(string path, string shown, string whenEmpty, Complaints complaints) =>
        Read(path, shown, complaints) is { } text ? NodeReader.Read(text, shown, whenEmpty, complaints) : null;

    /// <summary>Reads a file as text, and says what is wrong with one that is none.</summary>
    /// <param name="path">Where it lies.</param>
    /// <param name="shown">How complaints name it.</param>
    /// <param name="complaints">Takes what is wrong.</param>
    /// <returns>The text, or <c>null</c> when there is none; that was then complained about.</returns>
    internal string? Read(string path, string shown, Complaints complaints)
    {
        var start = new SourceLocation(shown, 1, 1);
        try
        {
            if (HasFolder(path))
            {
                complaints.Add(start, "", "This is a folder, and a file is wanted.", "Name the board file inside it, which ends in .board.yaml.");
                return null;
            }

            using var stream = Open(path);
            using var content = AtMost(stream, LargestFile);
            if (content is null)
            {
                complaints.Add(start, "", "The file is larger than 4 MB, which no board or shelf file is.", "Check that it is the right file; a large shelf can be split into several files.");
                return null;
            }

            return Decode(content.GetBuffer().AsSpan(0, (int)content.Length), shown, complaints);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException
            or System.Security.SecurityException)
        {
            var (says, remedy) = fault switch
            {
                FileNotFoundException or DirectoryNotFoundException => ("There is no such file.", "Check the name and the folder."),
                UnauthorizedAccessException or System.Security.SecurityException => ("The file may not be read by this user.", "Give yourself the permission to read it."),
                PathTooLongException or ArgumentException or NotSupportedException => ("This is not a name that a file can have.", "Check the name."),
                _ => ("The file could not be read: the disk or another program is in the way.", "Close programs that use it and try again."),
            };
            complaints.Add(start, "", says, remedy);
            return null;
        }
    }

    static string? Decode(ReadOnlySpan<byte> bytes, string shown, Complaints complaints)
    {
        var start = new SourceLocation(shown, 1, 1);
        if (Wide(bytes) is { } wide)
        {
            complaints.Add(start, "", $"The file is encoded as {wide}, and UTF-8 is wanted.", "Save it again as UTF-8.");
            return null;
        }

        if (bytes.StartsWith(Encoding.UTF8.Preamble))
            bytes = bytes[Encoding.UTF8.Preamble.Length..];
        for (var i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] is < 32 and not ((byte)'\n' or (byte)'\r' or (byte)'\t') or 127)
            {
                complaints.Add(PlaceOf(bytes, i, shown), "", FormattableString.Invariant($"The byte 0x{bytes[i]:X2} does not occur in text, so this is not a text file."), "Check that it is the right file, and save it as plain UTF-8 text.");
                return null;
            }
        }

        var invalid = System.Text.Unicode.Utf8.IsValid(bytes) ? -1 : FirstInvalid(bytes);
        if (invalid >= 0)
        {
            complaints.Add(PlaceOf(bytes, invalid, shown), "", FormattableString.Invariant($"The byte 0x{bytes[invalid]:X2} is not UTF-8; the file is probably encoded as Latin-1 (Windows-1252), where it is '{(char)bytes[invalid]}'."), "Save the file again as UTF-8.");
            return null;
        }

        return Encoding.UTF8.GetString(bytes);
    }

    static string? Wide(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.UTF32.Preamble))
            return "UTF-32";
        if (bytes.StartsWith(Encoding.Unicode.Preamble) || bytes.StartsWith(Encoding.BigEndianUnicode.Preamble))
            return "UTF-16";
        // Without a mark at its start: every second byte of plain text is zero.
        var sample = bytes[..Math.Min(bytes.Length, 64)];
        var (even, odd) = (0, 0);
        for (var i = 0; i + 1 < sample.Length; i += 2)
        {
            even += sample[i] == 0 && sample[i + 1] >= 32 ? 1 : 0;
            odd += sample[i + 1] == 0 && sample[i] >= 10 ? 1 : 0;
        }

        return sample.Length >= 4 && Math.Max(even, odd) >= sample.Length / 2 * 0.9 ? "UTF-16" : null;
    }

    static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        for (var i = 0; i < bytes.Length;)
        {
            if (Rune.DecodeFromUtf8(bytes[i..], out _, out var consumed) != System.Buffers.OperationStatus.Done)
                return i;
            i += consumed;
        }

        return -1;
    }

    static SourceLocation PlaceOf(ReadOnlySpan<byte> bytes, int index, string shown)
    {
        var before = bytes[..index];
        var line = before.Count((byte)'\n') + 1;
        var column = index - before.LastIndexOf((byte)'\n');
        return new(shown, line, column);
    }

    sealed class Disk(Func<string, Stream> open) : FileTree
    {
        internal override bool HasFile(string path) => File.Exists(path);

        internal override bool HasFolder(string path) => Directory.Exists(path);

        internal override IEnumerable<string> FilesIn(string folder) => Directory.EnumerateFiles(folder);

        private protected override Stream Open(string path) => open(path);
    }

    sealed class Memory(IReadOnlyDictionary<string, string> texts) : FileTree
    {
        readonly Dictionary<string, string> texts = texts.ToDictionary(pair => Whole(pair.Key), pair => pair.Value, StringComparer.Ordinal);

        public override IReadOnlyDictionary<string, string> Texts { get; } = texts;

        internal override bool HasFile(string path) => texts.ContainsKey(Whole(path));

        internal override bool HasFolder(string path) => texts.Keys.Any(name => IsIn(name, path));

        internal override IEnumerable<string> FilesIn(string folder) =>
            texts.Keys.Where(name => IsIn(name, folder) && name.LastIndexOf('/') == Whole(folder).TrimEnd('/').Length)
            .Select(name => Path.Combine(folder, name[(name.LastIndexOf('/') + 1)..]));

        private protected override Stream Open(string path) =>
            texts.TryGetValue(Whole(path), out var text) ? new MemoryStream(Encoding.UTF8.GetBytes(text))
            : throw new FileNotFoundException();

        static bool IsIn(string name, string folder) => name.StartsWith(Whole(folder).TrimEnd('/') + "/", StringComparison.Ordinal);

        static string Whole(string path) => Path.GetFullPath("/" + path.Replace('\\', '/')).Replace('\\', '/');
    }

    sealed class Memo(FileTree tree) : FileTree
    {
        readonly Dictionary<(string Path, string Shown), (string Text, Node Root)> known = [];

        internal override bool HasFile(string path) => tree.HasFile(path);

        internal override bool HasFolder(string path) => tree.HasFolder(path);

        internal override IEnumerable<string> FilesIn(string folder) => tree.FilesIn(folder);

        private protected override Stream Open(string path) => tree.Open(path);

        internal override Node? ReadNodes(string path, string shown, string whenEmpty, Complaints complaints)
        {
            if (Read(path, shown, complaints) is not { } text)
                return null;
            if (known.TryGetValue((path, shown), out var before) && before.Text == text)
                return before.Root;
            var count = complaints.Count;
            var root = NodeReader.Read(text, shown, whenEmpty, complaints);
            // What was complained about is complained about again.
            if (root is not null && complaints.Count == count)
                known[(path, shown)] = (text, root);
            return root;
        }
    }
}
