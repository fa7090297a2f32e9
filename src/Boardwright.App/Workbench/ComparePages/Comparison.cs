using Boardwright.App.Workbench.BoardPages;
using Boardwright.App.Workbench.Frame;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Spreads;

namespace Boardwright.App.Workbench.ComparePages;

/// <summary>Where a variant's text comes from.</summary>
enum VariantKind
{
    /// <summary>The open board, as it is now.</summary>
    Open,
    /// <summary>The board as it is kept.</summary>
    Saved,
    /// <summary>The open board with one thing changed.</summary>
    Changed,
    /// <summary>Another board of the shop.</summary>
    Other,
}

/// <summary>A board in a comparison.</summary>
/// <param name="Number">Tells it from others on the page.</param>
/// <param name="Kind">Where its text comes from.</param>
/// <param name="Name">What the builder calls it.</param>
sealed record Variant(int Number, VariantKind Kind, string Name)
{
    /// <summary>What is changed, where something is.</summary>
    public (string Key, string Value)? Change { get; init; }
    /// <summary>Where another board is kept.</summary>
    public BoardSource? Source { get; init; }
    /// <summary>Its text.</summary>
    public string Text { get; init; } = "";
    /// <summary>What is wrong with it; <c>null</c> for nothing.</summary>
    public string? Trouble { get; init; }
    /// <summary>The board, examined; <c>null</c> when it is not in order.</summary>
    public Examination? Examination { get; init; }
}

/// <summary>Two to four variants of a board beside one another.</summary>
sealed class Comparison(EditSession session) : IFollowed, IDisposable
{
    /// <summary>Most variants that can be looked at together.</summary>
    public const int Most = 4;

    readonly List<Variant> variants = [];
    CancellationTokenSource sampling = new();
    string? followed;
    int last;

    /// <summary>Something has changed; may be raised from any thread.</summary>
    public event Action? Changed;
    /// <summary>The variants; the others are compared with the first.</summary>
    public IReadOnlyList<Variant> Variants => variants;
    /// <summary>How well the figures and their differences are known; <c>null</c> until that is computed.</summary>
    public SideBySide? Spread { get; private set; }
    /// <summary>Whether another variant can be added.</summary>
    public bool HasRoom => variants.Count < Most;

    /// <summary>Follows the open board: what is derived from it is derived anew.</summary>
    public async Task FollowAsync()
    {
        if (session.Source is null || session.Text == followed)
            return;
        followed = session.Text;
        if (variants.Count == 0)
        {
            variants.Add(new(++last, VariantKind.Open, "on the desk"));
            if (session.IsUnsaved)
                variants.Add(new(++last, VariantKind.Saved, "as saved"));
        }

        for (var i = 0; i < variants.Count; i++)
            variants[i] = await FilledAsync(variants[i]);
        Sample();
    }

    /// <summary>Adds the board as it is kept.</summary>
    public Task AddSavedAsync() => AddAsync(new(++last, VariantKind.Saved, "as saved"));

    /// <summary>Adds the board with one thing changed.</summary>
    /// <returns>Why that was refused, or <c>null</c>.</returns>
    public async Task<string?> AddChangedAsync(string key, string value, string name)
    {
        if (BoardText.Change(session.Text, key, new Entered(value)).Refusal is { } refusal)
            return $"{refusal.Says} {refusal.Remedy}";
        var variant = await FilledAsync(new(last + 1, VariantKind.Changed, name) { Change = (key, value) });
        if (variant.Trouble is { } trouble)
            return trouble;
        last++;
        variants.Add(variant);
        Sample();
        return null;
    }

    /// <summary>Adds another board of the shop, as it is kept.</summary>
    public Task AddOtherAsync(BoardSource board) => AddAsync(new(++last, VariantKind.Other, board.Name) { Source = board });

    /// <summary>Calls a variant something else.</summary>
    public void Rename(Variant variant, string name)
    {
        if (name.Length > 0)
            variants[variants.IndexOf(variant)] = variant with { Name = name };
        Changed?.Invoke();
    }

    /// <summary>Leaves a variant out.</summary>
    public void Remove(Variant variant)
    {
        variants.Remove(variant);
        Sample();
    }

    /// <summary>Takes a variant over: its text, or another board as a whole.</summary>
    public async Task TakeAsync(Variant variant)
    {
        if (variant.Source is { } other)
        {
            // It is the open board from now on, and need not lie beside itself.
            variants.Remove(variant);
            await session.OpenAsync(other);
        }
        else
        {
            session.Write(variant.Text, $"variant taken: {variant.Name}");
        }
    }

    /// <summary>Range and largest force of all variants, each in one picture.</summary>
    public IReadOnlyList<Chart> Pictures()
    {
        var known = variants.Where(v => v.Examination is not null).ToList();
        return known.Count < 2 ? [] :
        [
            .. new[]
            {
                Overlaid("compare-range", "Range over steady speed", $"How far a full charge carries on the level at each steady speed, down to the reserve or to where the taper cuts.", RangePicture.Draw),
                Overlaid("compare-traction", "Largest force over speed, full charge", $"The largest force at the wheels over speed, at full charge.", TractionPicture.Draw),
            }.OfType<Chart>(),
        ];

        // The first line of a board's own picture stands for the board.
        Chart? Overlaid(string name, string title, FormattableString says, Func<Examination, Findings.Answer<Chart>> picture)
        {
            var drawn = known.Select(v => (v.Name, Chart: picture(v.Examination!))).Where(d => d.Chart.IsKnown)
                .Select(d => (d.Name, Chart: d.Chart.Value)).ToList();
            if (drawn.Count < 2)
                return null;
            var lines = drawn.Select(
                (d, i) => ((Line)((LinePanel)d.Chart.Panels[0]).Series[0]) with { Name = $"{i + 1} {d.Name}", Pen = i, Stretches = [], LabelAt = null });
            var (across, panel) = (drawn[0].Chart.Across, (LinePanel)drawn[0].Chart.Panels[0]);
            return new Chart
            {
                Name = name,
                Title = title,
                Says = new(says),
                Across = across,
                Panels = [new LinePanel(panel.Up) { Series = [.. lines] }]
            };
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        sampling.Cancel();
        sampling.Dispose();
    }

    async Task AddAsync(Variant variant)
    {
        variants.Add(await FilledAsync(variant));
        Sample();
    }

    async Task<Variant> FilledAsync(Variant variant)
    {
        var source = variant.Source ?? session.Source!;
        var text = variant switch
        {
            { Kind: VariantKind.Saved or VariantKind.Other } => await source.ReadAsync(CancellationToken.None),
            { Change: var (key, value) } => BoardText.Change(session.Text, key, new Entered(value)).Text,
            _ => session.Text,
        };
        if (text == variant.Text)
            return variant;
        var loaded = await Task.Run(() => BoardFile.ReadText(text, source.Path, source.Files));
        return variant with
        {
            Text = text,
            Trouble = loaded.Complaints.Count > 0 ? $"{loaded.Complaints[0].Says} {loaded.Complaints[0].Remedy}" : null,
            Examination = loaded.Board is { } board ? Examination.Examine(board) : null,
        };
    }

    void Sample()
    {
        sampling.Cancel();
        sampling.Dispose();
        sampling = new CancellationTokenSource();
        Spread = null;
        Changed?.Invoke();
        Examination[] boards = [.. variants.Select(v => v.Examination).OfType<Examination>()];
        if (boards.Length == variants.Count && boards.Length > 1)
            _ = SampleAsync(boards, sampling.Token);
    }

    async Task SampleAsync(IReadOnlyList<Examination> boards, CancellationToken cancellation)
    {
        try
        {
            var spread = await Task.Run(() => SideBySide.Compare(boards, cancellation: cancellation), cancellation);
            if (cancellation.IsCancellationRequested)
                return;
            Spread = spread;
            Changed?.Invoke();
        }
        catch (OperationCanceledException)
        {
            // The variants are others by now.
        }
    }
}
