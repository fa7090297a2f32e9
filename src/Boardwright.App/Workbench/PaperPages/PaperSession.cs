using System.Collections.Concurrent;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.Documents.Papers;
using Boardwright.Documents.Templates;
using Boardwright.Files.Boards;

namespace Boardwright.App.Workbench.PaperPages;

/// <summary>The papers of one open board, as it stands, under an address that nobody guesses.</summary>
sealed class PaperSession : IDisposable
{
    readonly EditSession session;
    readonly PaperSessions all;
    readonly Lock gate = new();
    (PaperOrder Order, IReadOnlyList<(PaperKind Kind, WrittenPaper Paper)> Papers)? last;

    /// <summary>Registers the papers of an open board.</summary>
    public PaperSession(EditSession session, PaperSessions all)
    {
        (this.session, this.all) = (session, all);
        all.Add(this);
    }

    /// <summary>The part of the address that tells this board from others.</summary>
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
            if (session is not { Examination: { } examination, Outcome: { } outcome })
                return null;
            return new PaperOrder(examination)
            {
                Intervals = outcome.Spread,
                // A text with errors has no figures of its own; what is printed is from the one before.
                Revision = session.Complaints.Count == 0 ? RevisionOf(session.Text) : "draft",
                ShopAddress = Shop,
                // In the shop it may bear another name than in its own file.
                PageAddress = Shop is { } shop && session.Source is ShopBoard kept ? new Uri($"{shop.AbsoluteUri.TrimEnd('/')}/{PaperOrder.Slug(kept.Name)}") : null,
                Size = Size,
                Units = session.Units,
            };
        }
    }

    /// <summary>Name of the board in file names.</summary>
    public string Name => session.Source is { } source && BoardFile.IsCalledSo(source.Path) ? BoardFile.NameOf(source.Path)
        : PaperOrder.Slug(Order?.Name ?? "board");

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

/// <summary>The open boards whose papers may be fetched.</summary>
sealed class PaperSessions
{
    readonly ConcurrentDictionary<string, PaperSession> sessions = new(StringComparer.Ordinal);

    /// <summary>Lets a board's papers be fetched.</summary>
    public void Add(PaperSession papers) => sessions[papers.Token] = papers;
    /// <summary>Ends that.</summary>
    public void Remove(PaperSession papers) => sessions.TryRemove(papers.Token, out _);

    /// <summary>Answers a request for a paper.</summary>
    /// <param name="token">Which board.</param>
    /// <param name="name">Which file, such as <c>wiring.pdf</c>.</param>
    public IResult Answer(string token, string name)
    {
        if (!sessions.TryGetValue(token, out var papers) || papers.File(name) is not { } bytes)
            return Results.NotFound();
        var (type, isShown) = Path.GetExtension(name) switch
        {
            ".html" => ("text/html; charset=utf-8", true),
            ".svg" => ("image/svg+xml", true),
            ".pdf" => ("application/pdf", false),
            ".zip" => ("application/zip", false),
            _ => ("application/octet-stream", false),
        };
        return Results.File(bytes, type, isShown ? null : $"{papers.Name}.{name}");
    }
}
