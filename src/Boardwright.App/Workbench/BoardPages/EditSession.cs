using Boardwright.App.Workbench.Frame;
using Boardwright.Examinations;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Findings;
using Boardwright.Parts;
using Boardwright.Spreads;

namespace Boardwright.App.Workbench.BoardPages;

/// <summary>One board that one builder has open: its text, what follows from it, and the steps that led there.</summary>
/// <param name="samples">How many boards like this one are examined to say how well its figures are known.</param>
/// <remarks>Every edit is a new text, so the text on the page and the forms cannot disagree, and undoing is going back to a text.</remarks>
sealed class EditSession(int samples = Spread.DefaultPoints) : IFollowed, IDisposable
{
    // The figures are painted before all cores are taken for how well they are known, and an edit that is followed by another is not
    // sampled at all.
    static readonly TimeSpan Settled = TimeSpan.FromMilliseconds(100);

    // A page that has just been opened is still being set up for longer.
    static readonly TimeSpan LaidOut = TimeSpan.FromMilliseconds(500);

    readonly List<EditStep> steps = [];
    Func<string, Entered?>? entered;
    int at = -1;
    BoardSource? source;
    FileTree? files;
    string saved = "";
    CancellationTokenSource sampling = new();

    /// <summary>Something has changed; may be raised from any thread.</summary>
    public event Action? Changed;
    /// <summary>Where the board is kept; <c>null</c> before one was opened.</summary>
    public BoardSource? Source => source;
    /// <summary>The board file's text.</summary>
    public string Text => at < 0 ? "" : steps[at].Text;
    /// <summary>What is wrong in the text; the figures are then those of the last text that was in order.</summary>
    public IReadOnlyList<Complaint> Complaints { get; private set; } = [];
    /// <summary>The shelf.</summary>
    public Shelf Shelf { get; private set; } = Shelf.Empty;
    /// <summary>The board as it was last in order; <c>null</c> when it never was.</summary>
    public Examination? Examination { get; private set; }
    /// <summary>What was computed and found, with intervals as soon as they are there.</summary>
    public CheckOutcome? Outcome { get; private set; }
    /// <summary>The figures before the last edit, to show what it did.</summary>
    public CheckOutcome? Before { get; private set; }
    /// <summary>Units on the pages.</summary>
    public UnitSystem Units { get; private set; } = UnitSystem.Metric;
    /// <summary>The place of the board that is looked at, such as <c>motor</c>; <c>null</c> for none.</summary>
    public string? Chosen { get; private set; }
    /// <summary>What the last attempt did or why it did nothing.</summary>
    public string Notice { get; private set; } = "";
    /// <summary>What has to be chosen before the board can be saved; <c>null</c> for nothing.</summary>
    public Shops.Conflict? Conflict { get; private set; }
    /// <summary>Whether there is anything that is not kept yet.</summary>
    public bool IsUnsaved => source is not null && Text != saved;
    /// <summary>What would be taken back; <c>null</c> for nothing.</summary>
    public string? Undoable => at > 0 ? steps[at].What : null;
    /// <summary>What would be done again; <c>null</c> for nothing.</summary>
    public string? Redoable => at + 1 < steps.Count ? steps[at + 1].What : null;
    /// <summary>The rule whose remedy was tried in the last step.</summary>
    public string? Tried => at > 0 ? steps[at].Rule : null;

    /// <summary>Opens a board.</summary>
    public async Task OpenAsync(BoardSource board, CancellationToken cancellation = default)
    {
        var text = await board.ReadAsync(cancellation);
        (source, files, saved) = (board, board.Files.Remembering(), text);
        steps.Clear();
        (at, Examination, Outcome, Before, Chosen, Conflict) = (-1, null, null, null, null, null);
        Take(new EditStep(text, "opened", null));
    }

    /// <summary>What the board file itself says under a key.</summary>
    /// <returns>The value as it is written; <c>null</c> when the file does not give it itself.</returns>
    public Entered? FindEntered(string key) => (entered ??= BoardText.Reader(Text))(key);

    /// <summary>Takes a whole new text.</summary>
    public void Write(string text, string what, string? rule = null)
    {
        if (text == Text)
            return;
        Take(new EditStep(text, what, rule));
    }

    /// <summary>Changes one value.</summary>
    /// <returns>Why it was refused, or <c>null</c>.</returns>
    public Refusal? Set(string key, Entered value)
    {
        if (FindEntered(key) == value)
            return null;
        // A bare new value keeps what the file says about its origin, as a correction of a typing error should.
        return Apply(value.IsPlain ? BoardText.Change(Text, key, value.Value) : BoardText.Change(Text, key, value), $"{key}: {value.Value}");
    }

    /// <summary>Says where a value comes from and how well it is known.</summary>
    public Refusal? State(string key, Entered value) => Apply(BoardText.Change(Text, key, value), $"{key}: {value.Value}{(value.From is { } from ? $", {from}" : "")}");
    /// <summary>Takes a value out of the board file, so that the shelf's own counts again.</summary>
    public Refusal? Remove(string key) => Apply(BoardText.Remove(Text, key), $"{key} taken out");
    /// <summary>Tries the change that a finding offers.</summary>
    public Refusal? Try(Finding finding) =>
        finding.Mend is { } mend ? Apply(BoardText.Change(Text, mend.Key, mend.Text), $"{mend.Key}: {mend.Text}", finding.Rule) : null;

    /// <summary>Goes back one step.</summary>
    public void Undo()
    {
        if (at <= 0)
            return;
        at--;
        Follow();
    }

    /// <summary>Goes forward one step again.</summary>
    public void Redo()
    {
        if (at + 1 >= steps.Count)
            return;
        at++;
        Follow();
    }

    /// <summary>Keeps the text where it belongs.</summary>
    public async Task<SaveOutcome> KeepAsync(string why, CancellationToken cancellation = default)
    {
        if (source is null)
            return new(false, "No board is open.");
        var text = Text;
        var kept = await source.KeepAsync(text, saved, why, cancellation);
        Settle(kept, text);
        return kept;
    }

    /// <summary>Takes over what came of keeping a text.</summary>
    public void Settle(SaveOutcome kept, string text)
    {
        Notice = kept.Says;
        Conflict = kept.Conflict;
        if (kept.IsKept)
        {
            saved = kept.Text ?? text;
            // Others' changes are in the text from now on; one can still go back to one's own text.
            if (saved != Text && Text == text)
            {
                Write(saved, "merged with what others saved");
                return;
            }
        }

        Changed?.Invoke();
    }

    /// <summary>The steps since the board was opened or taken up, as a reason for saving.</summary>
    public string WhyByItself =>
        steps.Take(at + 1).Skip(1).Select(step => step.What).Distinct(StringComparer.Ordinal).TakeLast(6) is var what
        && string.Join("; ", what) is { Length: > 0 } all ? all : "kept";

    /// <summary>The same board, kept elsewhere from now on.</summary>
    public void Moved(BoardSource to)
    {
        (source, files, saved) = (to, to.Files.Remembering(), Text);
        Notice = $"Kept in {to.Place}.";
        Changed?.Invoke();
    }

    /// <summary>Looks at a part.</summary>
    public void Choose(string? place)
    {
        Chosen = place;
        Changed?.Invoke();
    }

    /// <summary>Shows other units.</summary>
    public void Show(UnitSystem units)
    {
        Units = units;
        Changed?.Invoke();
    }

    /// <summary>Says something to the builder.</summary>
    public void Say(string notice)
    {
        Notice = notice;
        Changed?.Invoke();
    }

    /// <summary>The board with another part in one place, examined; the text stays as it is.</summary>
    /// <returns>The examination, or <c>null</c> when the board is not in order.</returns>
    public Examination? With(string place, Part part)
    {
        if (Examination is not { } now)
            return null;
        var entry = Entry.ListEntries(typeof(Fitted)).Single(e => e.Key == place);
        var fitted = part with { IsChosen = true, Count = ((Part)entry.Read(now.Board.Parts)).Count };
        return Examination.Examine((now.Board with { Parts = (Fitted)now.Board.Parts.With([(entry, fitted)]) }).WithNames());
    }

    /// <summary>The files of the board's shelf by path.</summary>
    public IReadOnlyList<(string Path, string Text)> ShelfTexts() => source switch
    {
        null => [],
        BoardOnDisk file => [.. Shops.BoardFolder.Gather(file.Path).Files.Files.Where(f => IsShelf(f.Path, file.Path))
            .Select(f => (f.Path, f.Text))],
        var kept => [.. kept.Files.Texts.Where(t => IsShelf(t.Key, kept.Path)).OrderBy(t => t.Key, StringComparer.Ordinal)
            .Select(t => (t.Key, t.Value))],
    };

    static bool IsShelf(string path, string board) => path != board && BoardFile.IsCalledAsShelf(path);

    /// <inheritdoc/>
    public void Dispose()
    {
        sampling.Cancel();
        sampling.Dispose();
    }

    Refusal? Apply(Changed changed, string what, string? rule = null)
    {
        if (changed.Refusal is { } refusal)
        {
            Notice = $"{refusal.Says} {refusal.Remedy}";
            Changed?.Invoke();
            return refusal;
        }

        Notice = "";
        Write(changed.Text, what, rule);
        return null;
    }

    void Take(EditStep step)
    {
        steps.RemoveRange(at + 1, steps.Count - at - 1);
        steps.Add(step);
        at = steps.Count - 1;
        Follow();
    }

    void Follow()
    {
        sampling.Cancel();
        sampling.Dispose();
        sampling = new CancellationTokenSource();
        entered = null;
        var loaded = BoardFile.ReadText(Text, source!.Path, files);
        Complaints = loaded.Complaints;
        if (loaded.Board is { } board)
        {
            Before = Outcome;
            Shelf = loaded.Shelf;
            Examination = Examination.Examine(board);
            Outcome = CheckOutcome.Create(Examination);
            _ = SampleAsync(Examination, sampling.Token);
        }

        Changed?.Invoke();
    }

    // The figures are shown at once; how well they are known follows as soon as it is computed, and not at all when the builder has edited
    // on.
    async Task SampleAsync(Examination examination, CancellationToken cancellation)
    {
        try
        {
            await Task.Delay(steps.Count > 1 ? Settled : LaidOut, cancellation);
            var intervals = await Task.Run(() => Spread.Sample(examination, samples, cancellation: cancellation), cancellation);
            if (ReferenceEquals(examination, Examination))
            {
                Outcome = CheckOutcome.Create(examination, intervals);
                Changed?.Invoke();
            }
        }
        catch (OperationCanceledException)
        {
            // There is a newer text.
        }
    }

    sealed record EditStep(string Text, string What, string? Rule);
}
