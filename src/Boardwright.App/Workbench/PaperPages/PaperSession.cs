using System.Collections.Concurrent;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.Documents.Papers;
using Boardwright.Documents.Templates;
using Boardwright.Files.Boards;

namespace Boardwright.App.Workbench.PaperPages;

/// <summary>The papers of the board on one desk, as it stands there, under an address that nobody guesses.</summary>
sealed class PaperSession : IDisposable
{
    readonly EditSession desk;
    readonly PaperSessions all;
    readonly Lock gate = new();
    (PaperOrder Order, IReadOnlyList<(PaperKind Kind, WrittenPaper Paper)> Papers)? last;

    /// <summary>Registers the papers of a desk.</summary>
    public PaperSession(EditSession desk, PaperSessions all)
    {
        (this.desk, this.all) = (desk, all);
        all.Add(this);
    }

    /// <summary>The part of the address that tells this desk from others.</summary>
    public string Token { get; } = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));

    /// <summary>Size of the paper.</summary>
    public PaperSize Size { get; set; } = PaperSize.A4;

    /// <summary>Under which address the boards' pages are, for the code.</summary>
    public Uri? Shop { get; set; }

    /// <summary>What papers are asked for; <c>null</c> before a board is in order.</summary>
    public PaperOrder? Order
    {
        get
        {
            if (desk is not { Examination: { } examination, Outcome: { } outcome })
                return null;
            return new PaperOrder(examination)
            {
                Intervals = outcome.Spread,
                // A text with errors has no figures of its own; what is printed is from the one before.
                Revision = desk.Complaints.Count == 0 ? RevisionOf(desk.Text) : "draft",
                ShopAddress = Shop,
                // In the shop it may bear another name than in its own file.
                PageAddress = Shop is { } shop && desk.Source is ShopBoard kept ? new Uri($"{shop.AbsoluteUri.TrimEnd('/')}/{PaperOrder.Slug(kept.Name)}") : null,
                Size = Size,
                Units = desk.Units,
            };
        }
    }

    /// <summary>Name of the board in file names.</summary>
    public string Name => desk.Source is { } source && BoardFile.IsCalledSo(source.Path) ? BoardFile.NameOf(source.Path) : PaperOrder.Slug(Order?.Name ?? "board");

    /// <summary>Every paper of the board as it stands; written once for each state of it.</summary>
    public IReadOnlyList<(PaperKind Kind, WrittenPaper Paper)> Write()
    {
        lock (gate)
        {
            if (Order is not { } order)
                return [];
            if (last is { } before && before.Order == order)
                return before.Papers;
            var papers = PaperSet.All.Select(kind => (kind, kind.Write(order))).ToList();
            last = (order, papers);
            return papers;
        }
    }

    /// <summary>A file of the papers, or all of them as one.</summary>
    public byte[]? File(string name)
    {
        var files = Write().SelectMany(p => p.Paper.Files);
        return name == "papers.zip" ? Zipped(files) : files.FirstOrDefault(f => f.Name == name)?.Bytes;
    }

    /// <summary>Which state of a board a text is: the first digits of its SHA-256.</summary>
    public static string RevisionOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..8];

    /// <inheritdoc/>
    public void Dispose() => all.Remove(this);

    byte[] Zipped(IEnumerable<PaperFile> files)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var file in files)
            {
                var entry = zip.CreateEntry($"{Name}.{file.Name}");
                // The same board, the same bytes.
                entry.LastWriteTime = new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
                using var into = entry.Open();
                into.Write(file.Bytes);
            }
        }

        return stream.ToArray();
    }
}

/// <summary>The desks whose papers may be fetched.</summary>
sealed class PaperSessions
{
    readonly ConcurrentDictionary<string, PaperSession> desks = new(StringComparer.Ordinal);

    /// <summary>Lets a desk's papers be fetched.</summary>
    public void Add(PaperSession desk) => desks[desk.Token] = desk;

    /// <summary>Ends that.</summary>
    public void Remove(PaperSession desk) => desks.TryRemove(desk.Token, out _);

    /// <summary>Answers a request for a paper.</summary>
    /// <param name="token">Which desk.</param>
    /// <param name="name">Which file, such as <c>wiring.pdf</c>.</param>
    public IResult Answer(string token, string name)
    {
        if (!desks.TryGetValue(token, out var desk) || desk.File(name) is not { } bytes)
            return Results.NotFound();
        var (type, isShown) = Path.GetExtension(name) switch
        {
            ".html" => ("text/html; charset=utf-8", true),
            ".svg" => ("image/svg+xml", true),
            ".pdf" => ("application/pdf", false),
            ".zip" => ("application/zip", false),
            _ => ("application/octet-stream", false),
        };
        return Results.File(bytes, type, isShown ? null : $"{desk.Name}.{name}");
    }
}
