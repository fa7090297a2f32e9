using Boardwright.App.ShopWork;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.App.Workbench.Frame;
using Boardwright.Builds;
using Boardwright.Files;
using Boardwright.Files.Boards;
using Boardwright.Files.Built;
using Boardwright.Files.Logs;
using Boardwright.Shops;

namespace Boardwright.App.Workbench.BuiltPages;

/// <summary>One built board in somebody's hands: what is known of it, and how what is done is written down.</summary>
/// <param name="boards">The shop.</param>
/// <param name="judge">Judges boards.</param>
/// <param name="user">Who is signed in.</param>
sealed class BuildSession(OpenBoards boards, BuiltJudge judge, CurrentUser user) : IFollowed
{
    string? signed;

    /// <summary>Something has changed.</summary>
    public event Action? Changed;
    /// <summary>Who works; as the revisions name them.</summary>
    public string Who => signed ?? user.Name;
    /// <summary>Whether it is known who works, so that no other name can be given.</summary>
    public bool IsSignedIn => user.IsSignedIn;
    /// <summary>The board; <c>null</c> while none is open or its file is not in order.</summary>
    public JudgedBuilt? Judged { get; private set; }
    /// <summary>What is wrong in the files of the board or of its design.</summary>
    public IReadOnlyList<Complaint> Complaints { get; private set; } = [];
    /// <summary>Why nothing is shown, or why the last attempt did nothing; <c>null</c> for nothing.</summary>
    public string? Trouble { get; private set; }
    /// <summary>What was done last.</summary>
    public string Notice { get; private set; } = "";
    /// <summary>The time now, by the clock on the wall.</summary>
    public static Moment Now => Moment.At(TimeProvider.System.GetLocalNow());

    /// <summary>Says who works.</summary>
    public void Sign(string who)
    {
        signed = who.Trim() is { Length: > 0 } name && !IsSignedIn ? name : null;
        Changed?.Invoke();
    }

    /// <summary>Opens a board.</summary>
    public Task OpenAsync(string serial) => RunAndReportAsync(async () =>
    {
        if (Judged is not null && !string.Equals(Judged.Place.Name, serial, StringComparison.OrdinalIgnoreCase))
            (Judged, Notice) = (null, "");
        if (await BuiltInShop.FindAsync(await boards.ShopAsync(), serial) is { } place)
            await ReadAsync(place);
        else
            Trouble = $"There is no built board {serial} in the shop.";
    });

    /// <summary>Changes the board's file.</summary>
    /// <param name="change">Makes the new text.</param>
    /// <param name="why">Why, for the log.</param>
    /// <param name="done">What to say when it is done.</param>
    public Task ChangeAsync(Func<string, Changed> change, string why, string done) =>
        ChangeAsync(null, (text, _) => change(text), why, done);

    /// <summary>Changes the board's file, and keeps another file with it.</summary>
    public Task ChangeAsync(AttachedFile? attached, Func<string, string, Changed> change, string why, string done) =>
        RunAndReportAsync(async () =>
    {
        if (Judged is not { } judged)
            return;
        if (Who.Length == 0)
        {
            Trouble = "Say who you are first, at the top of the page.";
            return;
        }

        var changed = await judged.Place.ChangeAsync(attached, change, new(Who, why));
        if (changed.Refusal is { } refusal)
        {
            Trouble = $"{refusal.Says} {refusal.Remedy}";
            return;
        }

        Notice = done;
        await ReadAsync(judged.Place);
    });

    /// <summary>Writes down a step or a check.</summary>
    public Task DoneAsync(Step step, DoneStep done)
    {
        var judgement = Judgement.Judge(step, done);
        var word = judgement.Result switch { Result.Passed => step.List == StepList.Building ? "done" : "passed", Result.Failed => "failed", _ => "written down, still open" };
        return ChangeAsync(text => BuiltText.Add(text, step.List == StepList.Building ? "steps" : "bench", done), $"{step.Id} {word}", $"{step.Id} {word}. {judgement.Says}".TrimEnd());
    }

    /// <summary>Reads the log of a ride that is to be kept.</summary>
    public async Task<UploadedRide?> ArriveAsync(string name, byte[] bytes, LogWishes? wishes)
    {
        UploadedRide? arrived = null;
        await RunAndReportAsync(async () =>
        {
            if (Judged is { } judged)
                arrived = await Task.Run(
                    () => UploadedRide.OfAsync(judged.Place, BuiltFileNames.Ride(name), bytes, wishes, CancellationToken.None));
        });
        return arrived;
    }

    /// <summary>Keeps a ride.</summary>
    public Task KeepAsync(UploadedRide arrived, LoggedRide ride) => RunAndReportAsync(async () =>
    {
        if (Judged is not { } judged)
            return;
        var changed = await arrived.KeepAsync(judged.Place, ride, new(Who, "ride " + Path.GetFileName(arrived.File)), CancellationToken.None);
        if (changed.Refusal is { } refusal)
            Trouble = $"{refusal.Says} {refusal.Remedy}";
        else
            Notice = arrived.IsRecalled ? "The ride is kept; its columns are read as confirmed before." : "The ride is kept, and how its columns are read is remembered.";
        await ReadAsync(judged.Place);
    });

    async Task ReadAsync(BuiltStore place) => (Judged, Complaints) = await Task.Run(() => judge.OfAsync(place));

    // What the shop refuses is said in its own words, and nothing on the page is lost by it.
    async Task RunAndReportAsync(Func<Task> what)
    {
        Trouble = null;
        try
        {
            await what();
        }
        catch (ShopException fault)
        {
            Trouble = fault.Message;
        }

        Changed?.Invoke();
    }
}
