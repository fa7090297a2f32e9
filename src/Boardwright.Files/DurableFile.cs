using System.Runtime.InteropServices;
using System.Text;

namespace Boardwright.Files;

/// <summary>The one writer of a user's files: each is the old one or the new one, whenever the power fails or the disk is full.</summary>
/// <remarks>
/// A file is written beside its place, brought onto the disk, and only then moved over the old one, whose permissions it
/// takes. A link stays: what it leads to is replaced. A file that is marked read-only is refused.
/// </remarks>
public static class DurableFile
{
    /// <summary>What tests run before each step, to stop there as a full disk or a killed program would.</summary>
    internal static AsyncLocal<Action<WriteStep>?> BeforeStep { get; } = new();
    /// <summary>Writes a text as UTF-8. The folder is made where it is not there.</summary>
    public static void Write(string path, string text) => Write(path, Encoding.UTF8.GetBytes(text));
    /// <summary>Writes bytes. The folder is made where it is not there.</summary>
    public static void Write(string path, byte[] bytes) => Write([(path, bytes)]);

    /// <summary>Writes files that belong together: nothing is replaced before all of them are on the disk.</summary>
    public static void Write(IEnumerable<(string Path, byte[] Bytes)> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var drafts = new List<Draft>();
        try
        {
            foreach (var (path, bytes) in files)
            {
                var draft = new Draft(path);
                drafts.Add(draft);
                draft.Fill(bytes);
                draft.Settle();
            }

            Place(drafts);
        }
        finally
        {
            drafts.ForEach(static draft => draft.Dispose());
        }
    }

    /// <summary>Writes what comes bit by bit.</summary>
    /// <param name="path">The file.</param>
    /// <param name="fill">Writes the content into the stream that it is given.</param>
    public static async Task WriteAsync(string path, Func<Stream, Task> fill)
    {
        ArgumentNullException.ThrowIfNull(fill);
        using var draft = new Draft(path);
        Enter(WriteStep.Fill);
        await fill(draft.Stream);
        draft.Settle();
        Place([draft]);
    }

    /// <summary>Puts a file that something else wrote into a place where nothing is yet.</summary>
    /// <exception cref="IOException">Something is there.</exception>
    public static void Adopt(string written, string path)
    {
        using (var file = new FileStream(written, FileMode.Open, FileAccess.ReadWrite))
            file.Flush(flushToDisk: true);
        File.Move(written, path, overwrite: false);
        SettleFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
    }

    static void Place(List<Draft> drafts)
    {
        foreach (var draft in drafts)
            draft.Place();
        Enter(WriteStep.SettleFolder);
        foreach (var folder in drafts.Select(static draft => draft.Folder).Distinct(StringComparer.Ordinal))
            SettleFolder(folder);
    }

    static void Enter(WriteStep step) => BeforeStep.Value?.Invoke(step);

    // The new name is in the folder, which the framework neither opens nor flushes; Windows does it by itself.
    static void SettleFolder(string folder)
    {
        if (OperatingSystem.IsWindows() || OpenFolder(Encoding.UTF8.GetBytes(folder + '\0'), 0) is not (>= 0 and var handle))
            return;
        _ = FlushFolder(handle);
        _ = CloseFolder(handle);
    }

    [DllImport("libc", EntryPoint = "open"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int OpenFolder(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "fsync"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int FlushFolder(int handle);

    [DllImport("libc", EntryPoint = "close"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    static extern int CloseFolder(int handle);

    /// <summary>A file on its way, beside its place and under a name that nobody else takes.</summary>
    sealed class Draft : IDisposable
    {
        readonly string target;
        readonly string written;

        public Draft(string path)
        {
            Enter(WriteStep.Create);
            target = Path.GetFullPath(path);
            // Nothing can be moved over a terminal or a pipe.
            var isDevice = target.StartsWith("/dev/", StringComparison.Ordinal)
                && !target.StartsWith("/dev/shm/", StringComparison.Ordinal);
            if (!isDevice && new FileInfo(target) is { LinkTarget: not null } link)
                target = link.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? target;
            Folder = Path.GetDirectoryName(target)!;
            Directory.CreateDirectory(Folder);
            var old = isDevice || !File.Exists(target) ? null : new FileInfo(target);
            if (old is { IsReadOnly: true })
                throw new UnauthorizedAccessException($"{path} is marked read-only and was left as it is.");
            written = isDevice ? target : $"{target}.{Path.GetRandomFileName()}.partial";
            Stream = new(written, isDevice ? FileMode.Open : FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
            if (!OperatingSystem.IsWindows() && old is not null && old.UnixFileMode != File.GetUnixFileMode(Stream.SafeFileHandle))
                File.SetUnixFileMode(Stream.SafeFileHandle, old.UnixFileMode);
        }

        public FileStream Stream { get; }

        public string Folder { get; }

        public void Fill(byte[] bytes)
        {
            Enter(WriteStep.Fill);
            try
            {
                Stream.Write(bytes);
            }
            catch (ArgumentOutOfRangeException fault)
            {
                // So the framework calls a file that the system will not let grow.
                throw new IOException($"{target} cannot be written: the system allows no file of {bytes.Length} bytes there.", fault);
            }
        }

        public void Settle()
        {
            Enter(WriteStep.Settle);
            Stream.Flush(flushToDisk: true);
            Stream.Dispose();
        }

        public void Place()
        {
            Enter(WriteStep.Replace);
            if (written != target)
                File.Move(written, target, overwrite: true);
        }

        public void Dispose()
        {
            Stream.Dispose();
            if (written != target)
                File.Delete(written);
        }
    }
}

/// <summary>The steps of <see cref="DurableFile"/>, in their order.</summary>
enum WriteStep
{
    Create,
    Fill,
    Settle,
    Replace,
    SettleFolder,
}
