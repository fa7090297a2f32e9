using Boardwright.Files.Yaml;

namespace Boardwright.Shops.Merging;

/// <summary>One of two people who changed the same thing.</summary>
public enum MergeSide
{
    /// <summary>What was to be saved.</summary>
    Mine,
    /// <summary>What someone else saved in the meantime.</summary>
    Theirs,
}

/// <summary>Something that two people changed differently.</summary>
/// <param name="File">The file.</param>
/// <param name="Key">The key, such as <c>motor.kv</c>; empty when the whole file has to be chosen.</param>
/// <param name="Base">What both began with, as it is written; <c>null</c> where it was not there.</param>
/// <param name="Mine">What one side wrote, or <c>null</c> where it took it out.</param>
/// <param name="Theirs">What the other wrote, or <c>null</c> where it took it out.</param>
public sealed record Choice(string File, string Key, string? Base, string? Mine, string? Theirs);

/// <summary>Puts two changes of the same files together.</summary>
/// <remarks>
/// What the outcome has to say is settled by key, comments included. Its text is then looked for line by line, so that
/// everything stays as somebody wrote it, and mended by key where that is not enough. It is taken only when reading it
/// gives exactly what was settled.
/// </remarks>
sealed class FileMerge
{
    readonly FileSet before;
    readonly FileSet mine;
    readonly FileSet theirs;
    readonly List<FileChange> changes = [];

    FileMerge(FileSet before, FileSet mine, FileSet theirs)
    {
        (this.before, this.mine, this.theirs) = (before, mine, theirs);
        foreach (var path in new[] { before, mine, theirs }.SelectMany(static set => set.Files).Select(static file => file.Path)
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
            changes.Add(new(path, before.Find(path), mine.Find(path), theirs.Find(path)));
    }

    /// <summary>What has to be chosen; nothing where the two can be put together without asking.</summary>
    public IReadOnlyList<Choice> Choices => [.. changes.SelectMany(static change => change.Choices)];
    /// <summary>What the other side changed and this side did not.</summary>
    public IReadOnlyList<KeyChange> TakenOver =>
        [.. FileDifference.Compute(before, theirs).Keys.Except(FileDifference.Compute(before, mine).Keys)];
    /// <summary>Compares two changes of the same files.</summary>
    public static FileMerge Compute(FileSet before, FileSet mine, FileSet theirs) => new(before, mine, theirs);

    /// <summary>The files with both changes.</summary>
    public FileSet Resolve(Func<Choice, MergeSide> pick)
    {
        var main = mine.Main.Path == before.Main.Path ? theirs.Main.Path : mine.Main.Path;
        return new(main, changes.Select(change => change.Resolve(pick)).OfType<KeptFile>());
    }

    sealed class FileChange
    {
        readonly string path;
        readonly KeptFile? before, mine, theirs;
        readonly Dictionary<string, string> settled = new(StringComparer.Ordinal);
        readonly bool byKey;

        public FileChange(string path, KeptFile? before, KeptFile? mine, KeptFile? theirs)
        {
            (this.path, this.before, this.mine, this.theirs) = (path, before, mine, theirs);
            if (mine?.Hash == theirs?.Hash || before?.Hash == mine?.Hash || before?.Hash == theirs?.Hash)
                return;
            byKey = Settle() && Texts(settled, static choice => choice.Mine) is not null
                && Texts(settled, static choice => choice.Theirs) is not null;
            if (!byKey)
                Choices = [new(path, "", before?.Text, mine?.Text, theirs?.Text)];
        }

        public List<Choice> Choices { get; private set; } = [];

        public KeptFile? Resolve(Func<Choice, MergeSide> pick)
        {
            if (mine?.Hash == theirs?.Hash || before?.Hash == theirs?.Hash)
                return mine;
            if (before?.Hash == mine?.Hash)
                return theirs;
            if (!byKey)
                return pick(Choices[0]) == MergeSide.Mine ? mine : theirs;
            var text = Texts(settled, choice => pick(choice) == MergeSide.Mine ? choice.Mine : choice.Theirs)
                ?? throw new ShopException(ShopError.Refused, $"{path} cannot be put together from these choices.", "Take everything from one of the two, and make the other changes by hand.");
            return KeptFile.FromText(path, text);
        }

        /// <summary>Settles by key what the outcome says, and what has to be chosen.</summary>
        bool Settle()
        {
            if (before is null || mine is null || theirs is null
                || !(path.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || path.EndsWith(".yml", StringComparison.OrdinalIgnoreCase)))
                return false;
            if (KeyedText.Read(before.Text) is not { } old || KeyedText.Read(mine.Text) is not { } left
                || KeyedText.Read(theirs.Text) is not { } right)
                return false;
            var choices = new List<Choice>();
            foreach (var key in left.Entries.Concat(right.Entries).Concat(old.Entries).Select(static entry => entry.Key)
                .Distinct(StringComparer.Ordinal))
            {
                var (b, m, t) = (old.Leaves.GetValueOrDefault(key)?.Written, left.Leaves.GetValueOrDefault(key)?.Written,
                    right.Leaves.GetValueOrDefault(key)?.Written);
                if (m == t || b == t)
                    Set(key, m);
                else if (b == m)
                    Set(key, t);
                else
                    choices.Add(new(path, key, b, m, t));
            }

            Choices = choices;
            return true;
        }

        void Set(string key, string? written)
        {
            if (written is not null)
                settled[key] = written;
        }

        /// <summary>A text that says what was settled and chosen.</summary>
        string? Texts(Dictionary<string, string> settled, Func<Choice, string?> chosen)
        {
            var wanted = new Dictionary<string, string>(settled, StringComparer.Ordinal);
            foreach (var choice in Choices)
            {
                if (chosen(choice) is { } written)
                    wanted[choice.Key] = written;
            }

            var (old, left, right) = (LineDifference.Lines(before!.Text), LineDifference.Lines(mine!.Text),
                LineDifference.Lines(theirs!.Text));
            return new[] { MergeText.Mine, MergeText.Theirs, MergeText.Both }.Select(
                stand => KeyedText.Fitted(LineMerge.Merge(old, left, right, stand), wanted))
                .FirstOrDefault(static text => text is not null);
        }
    }
}
