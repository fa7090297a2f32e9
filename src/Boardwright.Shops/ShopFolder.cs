using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Boardwright.Files;
using Microsoft.EntityFrameworkCore;

namespace Boardwright.Shops;

/// <summary>The whole shop as a folder of plain files, and back.</summary>
/// <remarks>
/// Each item has a folder with its <c>history.json</c> and one folder for each revision that brought new files; a file
/// that did not change is written once. Nothing in the folder depends on the database, the machine or the time.
/// </remarks>
static class ShopFolder
{
    const int Version = 1;
    const string IndexFile = "shop.json";
    const string HistoryFile = "history.json";
    const string ReadMe = """
        This folder is a whole Boardwright shop, written by: boardwright shop export

        boards/NAME, shelf/NAME, built/SERIAL and loggers/ID hold one item each. history.json lists its revisions: who saved, when (UTC) and why,
        and for each file in which numbered folder it lies; a file that did not change stays in the folder of the
        revision that brought it. The files are as they were saved, byte for byte.

        boardwright shop import FOLDER reads all of it into an empty shop.

        """;

    static readonly JsonSerializerOptions Json = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false) },
    };

    /// <summary>Writes everything. The folder appears under its name when it is whole.</summary>
    public static async Task WriteAsync(ShopContext context, string folder, IProgress<int>? progress, CancellationToken cancel)
    {
        folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
            throw new ShopException(ShopError.Refused, $"{folder} is there already and not empty; nothing was written.", "Name a new folder.");
        var partial = folder + ".partial";
        if (Directory.Exists(partial))
            Directory.Delete(partial, recursive: true);
        Directory.CreateDirectory(partial);
        try
        {
            await WriteFiles(context, partial, progress, cancel);
            if (Directory.Exists(folder))
                Directory.Delete(folder);
            Directory.Move(partial, folder);
        }
        catch
        {
            Directory.Delete(partial, recursive: true);
            throw;
        }
    }

    static async Task WriteFiles(ShopContext context, string folder, IProgress<int>? progress, CancellationToken cancel)
    {
        var items = await context.Items.AsNoTracking().ToListAsync(cancel);
        var index = new List<FolderItem>();
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var item in items.OrderBy(static item => item.Id.ToString(), StringComparer.Ordinal))
        {
            var named = $"{Place(item.Kind)}/{Slug(item.Name)}";
            var place = named;
            for (var i = 2; !taken.Add(place); i++)
                place = string.Create(CultureInfo.InvariantCulture, $"{named}-{i}");
            await WriteItem(context, item, Path.Combine(folder, place), cancel);
            index.Add(new(place, item.Name, item.Folded is null));
            progress?.Report(index.Count);
        }

        DurableFile.Write(Path.Combine(folder, "README.txt"), ReadMe);
        DurableFile.Write(Path.Combine(folder, IndexFile),
            Bytes(new FolderIndex(Version, [.. index.OrderBy(static item => item.Folder, StringComparer.Ordinal)])));
    }

    static string Place(ItemKind kind) => kind switch
    {
        ItemKind.Board => "boards",
        ItemKind.Shelf => "shelf",
        ItemKind.Built => "built",
        ItemKind.Logger => "loggers",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    static async Task WriteItem(ShopContext context, ItemRow item, string folder, CancellationToken cancel)
    {
        var revisions = await context.Revisions.AsNoTracking().Where(row => row.ItemId == item.Id).OrderBy(static row => row.Number)
            .ToListAsync(cancel);
        var files = (await context.Files.AsNoTracking().Where(row => row.ItemId == item.Id).ToListAsync(cancel))
            .ToLookup(static row => row.Number);
        var written = new Dictionary<(string Path, string Hash), int>();
        var history = new List<FolderRevision>();
        foreach (var revision in revisions)
        {
            var told = new List<FolderFile>();
            foreach (var file in files[revision.Number].OrderBy(static file => file.Path, StringComparer.Ordinal))
            {
                if (written.TryAdd((file.Path, file.Hash), revision.Number))
                {
                    var content = await context.Contents.AsNoTracking().SingleAsync(row => row.Hash == file.Hash, cancel);
                    DurableFile.Write(Path.Combine(folder, Numbered(revision.Number), file.Path), content.Bytes);
                }

                told.Add(new(file.Path, file.Hash, Numbered(written[(file.Path, file.Hash)])));
            }

            var when = DateTimeOffset.FromUnixTimeMilliseconds(revision.Milliseconds).ToString(TimeForm, CultureInfo.InvariantCulture);
            history.Add(new(revision.Number, when, revision.Who, revision.Why, revision.Act, revision.Of, revision.Name, revision.Main,
                told));
        }

        DurableFile.Write(Path.Combine(folder, HistoryFile),
            Bytes(new FolderHistory(item.Id, item.Kind, item is { FromItem: { } from, FromNumber: { } number } ? new(from, number) : null,
            history)));
    }

    /// <summary>Reads everything into an empty shop, inside the caller's transaction.</summary>
    public static async Task ReadAsync(ShopContext context, string folder, CancellationToken cancel)
    {
        var index = Read<FolderIndex>(Path.Combine(folder, IndexFile));
        if (index.BoardwrightShop != Version)
            throw new ShopException(ShopError.NotOurs, FormattableString.Invariant($"{folder} was written in version {index.BoardwrightShop} of the format, and this program reads version {Version}."), "Use a newer Boardwright.");
        var known = new HashSet<string>(StringComparer.Ordinal);
        var names = new HashSet<(ItemKind, string)>();
        var ids = new HashSet<Guid>();
        foreach (var listed in index.Items)
        {
            var place = Path.Combine(folder, new KeptFile(listed.Folder, []).Path);
            var path = Path.Combine(place, HistoryFile);
            var history = Read<FolderHistory>(path);
            if (history.Revisions is not [.., var last]
                || !history.Revisions.Select(static told => told.Number).SequenceEqual(Enumerable.Range(1, history.Revisions.Count)))
                throw Damaged(path, "its revisions are not numbered from 1 without a gap");
            if (!ids.Add(history.Id))
                throw Damaged(path, "another item has its id");
            var folded = last.Act == Act.Deleted ? null : Shop.Fold(last.Name);
            if (folded is not null && !names.Add((history.Kind, folded)))
                throw Damaged(path, $"another item is called {last.Name} too");
            context.Items.Add(new()
            {
                Id = history.Id,
                Kind = history.Kind,
                Name = last.Name,
                Folded = folded,
                Latest = last.Number,
                FromItem = history.From?.Item,
                FromNumber = history.From?.Number
            });
            FileSet? files = null;
            foreach (var told in history.Revisions)
                files = ReadRevision(context, history, told, place, known);
            if (history.Kind == ItemKind.Shelf)
                context.Parts.AddRange(ShelfIndex.Create(history.Id, files!.Main));
            await context.SaveChangesAsync(cancel);
            context.ChangeTracker.Clear();
        }
    }

    static FileSet ReadRevision(ShopContext context, FolderHistory history, FolderRevision told, string place, HashSet<string> known)
    {
        if (!DateTimeOffset.TryParseExact(told.When, TimeForm, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var when))
            throw Damaged(Path.Combine(place, HistoryFile), $"'{told.When}' is not a time");
        context.Revisions.Add(new()
        {
            ItemId = history.Id,
            Number = told.Number,
            Milliseconds = when.ToUnixTimeMilliseconds(),
            Who = told.Who,
            Why = told.Why,
            Act = told.Act,
            Of = told.Of,
            Name = told.Name,
            Main = told.Main,
        });
        var files = new List<KeptFile>();
        foreach (var lying in told.Files)
        {
            var path = Path.Combine(place, new KeptFile(lying.In, []).Path, new KeptFile(lying.Path, []).Path);
            if (!File.Exists(path))
                throw Damaged(path, "it is missing");
            var file = new KeptFile(lying.Path, File.ReadAllBytes(path));
            if (file.Hash != lying.Sha256)
                throw Damaged(path, "it is not what was exported");
            files.Add(file);
            if (known.Add(file.Hash))
                context.Contents.Add(new() { Hash = file.Hash, Bytes = file.Bytes });
            context.Files.Add(new() { ItemId = history.Id, Number = told.Number, Path = file.Path, Hash = file.Hash });
        }

        return new(told.Main, files);
    }

    static T Read<T>(string path)
    {
        try
        {
            return JsonSerializer.Deserialize<T>(File.ReadAllBytes(path), Json) ?? throw Damaged(path, "it is empty");
        }
        catch (JsonException fault)
        {
            throw Damaged(path, FormattableString.Invariant($"line {fault.LineNumber + 1} is not as it was written"));
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new ShopException(ShopError.NotThere, $"There is no {path}, so this is not an exported shop.", "Name the folder that boardwright shop export wrote.", fault);
        }
    }

    static ShopException Damaged(string path, string says) => new(ShopError.Damaged, $"{path} cannot be used: {says}. Nothing was read.", "Take the folder from its backup, or export it again.");

    const string TimeForm = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    static byte[] Bytes<T>(T told) => [.. JsonSerializer.SerializeToUtf8Bytes(told, Json), (byte)'\n'];

    static string Numbered(int number) => number.ToString("D4", CultureInfo.InvariantCulture);

    /// <summary>A name that every system takes for a folder.</summary>
    static string Slug(string name)
    {
        var slug = string.Concat(name.ToLowerInvariant().Select(static c => char.IsAsciiLetterOrDigit(c) ? c : '-')).Trim('-');
        // Some systems have devices of three or four letters.
        return slug.Length is 0 ? "item"
            : slug is "con" or "prn" or "aux" or "nul"
            || (slug.Length == 4 && (slug.StartsWith("com", StringComparison.Ordinal) || slug.StartsWith("lpt", StringComparison.Ordinal)))
            ? slug + "-item" : slug[..Math.Min(slug.Length, 60)];
    }

    sealed record FolderIndex(int BoardwrightShop, IReadOnlyList<FolderItem> Items);

    sealed record FolderItem(string Folder, string Name, bool IsDeleted);

    sealed record FolderHistory(Guid Id, ItemKind Kind, BranchOrigin? From, IReadOnlyList<FolderRevision> Revisions);

    sealed record FolderRevision(
        int Number, string When, string Who, string Why, Act Act, int? Of, string Name, string Main, IReadOnlyList<FolderFile> Files);

    sealed record FolderFile(string Path, string Sha256, string In);
}
