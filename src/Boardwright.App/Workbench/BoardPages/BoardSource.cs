using System.Reflection;
using System.Text;
using Boardwright.Files;
using Boardwright.Files.Boards;

namespace Boardwright.App.Workbench.BoardPages;

/// <summary>What came of keeping a board.</summary>
/// <param name="IsKept">Whether the text is now where it belongs.</param>
/// <param name="Says">What happened, for the builder.</param>
/// <param name="Theirs">What somebody else kept meanwhile, where that is why it was not kept.</param>
sealed record SaveOutcome(bool IsKept, string Says, string? Theirs = null)
{
    /// <summary>The text as it was kept, where others' changes came into it; <c>null</c> where it is the text that was given.</summary>
    public string? Text { get; init; }
    /// <summary>What has to be chosen first, where somebody else changed the same.</summary>
    public Shops.Conflict? Conflict { get; init; }
}

/// <summary>Where a board's text comes from, and where it is kept.</summary>
abstract class BoardSource
{
    /// <summary>Short name, unique among the boards of the workbench, as in the page's address.</summary>
    public abstract string Name { get; }
    /// <summary>The board file's place in <see cref="Files"/>.</summary>
    public abstract string Path { get; }
    /// <summary>Where its shelf and routes are.</summary>
    public abstract FileTree Files { get; }
    /// <summary>Where it is kept, in a few words.</summary>
    public abstract string Place { get; }
    /// <summary>The text as it is kept now.</summary>
    public abstract Task<string> ReadAsync(CancellationToken cancellation);

    /// <summary>Keeps a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="before">The text that was read before, to see whether somebody else has kept another one meanwhile.</param>
    /// <param name="why">Why it was changed, in the builder's words; may be empty.</param>
    /// <param name="cancellation">Gives up.</param>
    public abstract Task<SaveOutcome> KeepAsync(string text, string before, string why, CancellationToken cancellation);
}

/// <summary>A board file on this machine.</summary>
sealed class BoardOnDisk(string path) : BoardSource
{
    /// <inheritdoc/>
    public override string Name { get; } = BoardFile.IsCalledSo(path) ? BoardFile.NameOf(path) : System.IO.Path.GetFileName(path);

    /// <inheritdoc/>
    public override string Path => path;

    /// <inheritdoc/>
    public override FileTree Files => FileTree.OnDisk;

    /// <inheritdoc/>
    public override string Place => $"the file {System.IO.Path.GetFileName(path)}";

    /// <inheritdoc/>
    public override Task<string> ReadAsync(CancellationToken cancellation) => File.ReadAllTextAsync(path, cancellation);

    /// <inheritdoc/>
    public override async Task<SaveOutcome> KeepAsync(string text, string before, string why, CancellationToken cancellation)
    {
        try
        {
            if (File.Exists(path) && await File.ReadAllTextAsync(path, cancellation) is var now && now != before)
                return new(false, $"{Place} was changed by somebody else meanwhile; nothing was written over it.", now);
            DurableFile.Write(path, text);
            return new(true, $"Saved in {Place}.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new(false, $"{Place} could not be written: {fault.Message} What was saved last is as it was.");
        }
    }
}

/// <summary>Tern, the board that comes with the program.</summary>
sealed class ExampleBoard : BoardSource
{
    const string Prefix = "examples/";
    static readonly Lazy<Dictionary<string, string>> Texts = new(ReadAll);

    /// <inheritdoc/>
    public override string Name => "tern";

    /// <inheritdoc/>
    public override string Path => "tern/tern.board.yaml";

    /// <inheritdoc/>
    public override FileTree Files { get; } = FileTree.FromTexts(Texts.Value);

    /// <inheritdoc/>
    public override string Place => "the examples";

    /// <inheritdoc/>
    public override Task<string> ReadAsync(CancellationToken cancellation) => Task.FromResult(Texts.Value[Path]);

    /// <inheritdoc/>
    public override Task<SaveOutcome> KeepAsync(string text, string before, string why, CancellationToken cancellation) =>
        Task.FromResult(new SaveOutcome(false, "Tern is an example and stays as it is. Keep it in the shop under a name of its own, on the Shop page."));

    static Dictionary<string, string> ReadAll()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return assembly.GetManifestResourceNames()
            .Select(name => name.Replace('\\', '/'))
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .ToDictionary(
                name => name[Prefix.Length..],
                name =>
                {
                    using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!, Encoding.UTF8);
                    return reader.ReadToEnd();
                },
                StringComparer.Ordinal);
    }
}
