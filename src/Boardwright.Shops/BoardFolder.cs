using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Files.Yaml;

namespace Boardwright.Shops;

/// <summary>Files as they were found on the disk.</summary>
/// <param name="Kind">Whether they are a board, a shelf file or a built board.</param>
/// <param name="Files">The files, by their paths from the folder.</param>
/// <param name="Folder">The folder that holds them all.</param>
/// <param name="Missing">What the board names and could not be taken along: it is not there, or is named by a path that means something on
/// this machine only.</param>
public sealed record GatheredFiles(ItemKind Kind, FileSet Files, string Folder, IReadOnlyList<string> Missing)
{
    /// <summary>Writes what became of the files in the shop back to where they were found.</summary>
    /// <param name="now">The files in the shop.</param>
    /// <returns>The paths of the files that were written; those that say the same already are left alone.</returns>
    public IReadOnlyList<string> Update(FileSet now)
    {
        ArgumentNullException.ThrowIfNull(now);
        var changed = now.Files.Where(file => Files.Find(file.Path)?.Hash != file.Hash)
            .Select(file => (Path: Path.Combine(Folder, file.Path), file.Bytes)).ToList();
        DurableFile.Write(changed);
        return [.. changed.Select(static file => file.Path)];
    }
}

/// <summary>A board's files in a folder of the disk.</summary>
public static class BoardFolder
{
    // Lists of a built board whose items may name a file.
    static readonly string[] WithFiles = ["notes", "rides"];

    /// <summary>Gathers a board file and what it names: the files of its shelf and its route. A shelf file, which is a list of parts, is
    /// gathered alone; a built board with its photos and logs.</summary>
    /// <param name="path">The board file, shelf file or file of a built board.</param>
    /// <exception cref="ShopException">The file cannot be read.</exception>
    public static GatheredFiles Gather(string path)
    {
        var main = Path.GetFullPath(path);
        var bytes = Bytes(main);
        var root = NodeReader.Read(System.Text.Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF'), path, "", new Complaints());
        if (root is SequenceNode)
            return new(ItemKind.Shelf, new FileSet(Path.GetFileName(main), [new(Path.GetFileName(main), bytes)]),
                Path.GetDirectoryName(main)!, []);
        if (BuiltFile.IsCalledSo(main))
            return Built(main, bytes, root as MapNode);
        var found = new SortedDictionary<string, byte[]>(StringComparer.Ordinal) { [main] = bytes };
        var missing = new List<string>();
        var folder = Path.GetDirectoryName(main)!;
        foreach (var (name, isShelf) in NamedFiles(root as MapNode))
        {
            var place = Path.GetFullPath(Path.Combine(folder, name));
            if (Path.IsPathRooted(name) || !(isShelf ? Directory.Exists(place) : File.Exists(place)))
            {
                missing.Add(name);
                continue;
            }

            foreach (var file in isShelf ? ShelfFiles(place) : [place])
                found[file] = Bytes(file);
        }

        var top = found.Keys.Aggregate(folder, static (shared, file) => Shared(shared, Path.GetDirectoryName(file)!));
        string Inside(string file) => Path.GetRelativePath(top, file).Replace('\\', '/');
        return new(ItemKind.Board, new FileSet(Inside(main), found.Select(file => new KeptFile(Inside(file.Key), file.Value))), top,
            missing);
    }

    // With the photos and logs that it names; they lie in its folder or below it.
    static GatheredFiles Built(string main, byte[] bytes, MapNode? root)
    {
        var folder = Path.GetDirectoryName(main)!;
        var files = new List<KeptFile> { new(Path.GetFileName(main), bytes) };
        var missing = new List<string>();
        foreach (var name in WithFiles.SelectMany(list => root?.Find(list) is SequenceNode items ? items.Items : []).OfType<MapNode>()
            .Select(static item => (item.Find("file") as ScalarNode)?.Text).OfType<string>().Distinct(StringComparer.Ordinal))
        {
            var isInside = !Path.IsPathRooted(name)
                && Path.GetFullPath(Path.Combine(folder, name)).StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);
            if (isInside && File.Exists(Path.Combine(folder, name)))
                files.Add(new(name, Bytes(Path.Combine(folder, name))));
            else
                missing.Add(name);
        }

        return new(ItemKind.Built, new FileSet(files[0].Path, files), folder, missing);
    }

    /// <summary>Writes files into a folder, all of them or none.</summary>
    /// <exception cref="ShopException">A file is there already and says something else.</exception>
    public static void Write(FileSet files, string folder)
    {
        ArgumentNullException.ThrowIfNull(files);
        foreach (var file in files.Files)
        {
            var path = Path.Combine(folder, file.Path);
            if (File.Exists(path) && !File.ReadAllBytes(path).AsSpan().SequenceEqual(file.Bytes))
                throw new ShopException(ShopError.Refused, $"{path} is there already and says something else; nothing was written.", "Name an empty folder with --out.");
        }

        DurableFile.Write(files.Files.Select(file => (Path.Combine(folder, file.Path), file.Bytes)));
    }

    static IEnumerable<(string Name, bool IsShelf)> NamedFiles(MapNode? board)
    {
        switch (board?.Find("shelf"))
        {
            case SequenceNode list:
                foreach (var item in list.Items.OfType<ScalarNode>().Where(static item => item.Text.Length > 0))
                    yield return (item.Text, true);
                break;
            case ScalarNode { Text.Length: > 0 } one:
                yield return (one.Text, true);
                break;
        }

        if (board?.Find("brief") is MapNode brief && brief.Find("route") is ScalarNode { Text.Length: > 0 } route)
            yield return (route.Text, false);
    }

    static IEnumerable<string> ShelfFiles(string folder) => Directory.EnumerateFiles(folder).Where(BoardFile.IsCalledAsShelf);

    static string Shared(string a, string b)
    {
        static string Ended(string folder) => Path.EndsInDirectorySeparator(folder) ? folder : folder + Path.DirectorySeparatorChar;
        while (!Ended(b).StartsWith(Ended(a), StringComparison.Ordinal))
            a = Path.GetDirectoryName(a) ?? throw new ShopException(ShopError.Refused, $"{b} lies on another drive than the board.", "Keep the board and its shelf on one drive.");
        return a;
    }

    static byte[] Bytes(string path)
    {
        try
        {
            return File.ReadAllBytes(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new ShopException(ShopError.NotThere, $"{path} cannot be read.", "Check the name, and that you may read the file.", fault);
        }
    }
}
