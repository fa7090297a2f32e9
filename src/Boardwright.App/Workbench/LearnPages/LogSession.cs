using System.Globalization;
using Boardwright.App.ShopWork;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.App.Workbench.Frame;
using Boardwright.Documents.Charts;
using Boardwright.Documents.Pictures;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Files.Logs;
using Boardwright.Findings;
using Boardwright.Lessons;
using Boardwright.Logs;
using Boardwright.Numerics;
using Boardwright.Spreads;

namespace Boardwright.App.Workbench.LearnPages;

/// <summary>Something that a ride taught, in words.</summary>
/// <param name="Title">What.</param>
/// <param name="Value">Its value with the unit.</param>
/// <param name="Range">Between which it lies nine times out of ten.</param>
/// <param name="Narrows">What would narrow the range.</param>
sealed record LogFinding(string Title, string Value, string Range, string Narrows);

/// <summary>A logged ride held against the open board: what it teaches, and where the model was off.</summary>
/// <remarks>Computed apart from the page; only the newest answer is shown.</remarks>
sealed class LogSession(EditSession session) : IFollowed, IDisposable
{
    /// <summary>Largest log taken from a browser, bytes.</summary>
    public const int MostBytes = 256 * 1024 * 1024;

    // As fine as a picture can show, and no more than a browser likes to hold.
    const int MostRows = 20_000;

    CancellationTokenSource work = new();
    byte[]? bytes;
    Examination? held;
    string name = "";

    /// <summary>Something has changed; may be raised from any thread.</summary>
    public event Action? Changed;
    /// <summary>Name of the ride.</summary>
    public string Name => name;
    /// <summary>How the log was read; <c>null</c> before there is one.</summary>
    public RideLogReading? Reading { get; private set; }
    /// <summary>What is said about its columns.</summary>
    public LogWishes Wishes { get; private set; } = new();
    /// <summary>What is known of the ride beside its log.</summary>
    public ReplayConditions Conditions { get; private set; } = new();
    /// <summary>What it teaches.</summary>
    public RideTeaching? Teaching { get; private set; }
    /// <summary>The same in words.</summary>
    public IReadOnlyList<LogFinding> Told { get; private set; } = [];
    /// <summary>Predicted against measured; <c>null</c> until that is computed.</summary>
    public Answer<RideComparison>? Comparison { get; private set; }
    /// <summary>Predicted beside measured over time.</summary>
    public IReadOnlyList<Chart> Charts { get; private set; } = [];
    /// <summary>Whether a newer answer is on its way.</summary>
    public bool IsReading { get; private set; }
    /// <summary>Number of the answer that is shown.</summary>
    public int Number { get; private set; }
    /// <summary>Why the last file was not taken.</summary>
    public string Refusal { get; private set; } = "";
    /// <summary>Which lesson the keys are at.</summary>
    public int Chosen { get; private set; }

    /// <summary>Takes a log that was brought to the page.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="content">Its bytes.</param>
    /// <param name="wishes">What is known of its columns already.</param>
    public void Bring(string file, byte[] content, LogWishes? wishes = null)
    {
        (name, bytes, Wishes, Refusal, Chosen) = (file, content, wishes ?? new(), "", 0);
        Conditions = new();
        Again();
    }

    /// <summary>Says why a file was not taken.</summary>
    public void Refuse(string says)
    {
        Refusal = says;
        Changed?.Invoke();
    }

    /// <summary>Says what a column holds.</summary>
    public void Hold(string column, string holds)
    {
        var columns = new Dictionary<string, string>(Wishes.Columns, StringComparer.OrdinalIgnoreCase);
        if (holds.Length == 0) columns.Remove(column);
        else columns[column] = holds;
        Wishes = Wishes with { Columns = columns };
        Again();
    }

    /// <summary>Says what is known of the ride beside its log.</summary>
    public void State(ReplayConditions conditions)
    {
        Conditions = conditions;
        Again();
    }

    /// <summary>Holds the ride against the board as it now is, unless that was done already.</summary>
    public void Follow()
    {
        if (session.Examination is { } now && !ReferenceEquals(now, held) && bytes is not null)
            Again();
    }

    /// <summary>Goes to another lesson.</summary>
    public void Choose(int index)
    {
        Chosen = Math.Clamp(index, 0, Math.Max(0, (Teaching?.Lessons.Count ?? 0) - 1));
        Changed?.Invoke();
    }

    /// <summary>Takes a lesson into the open board, as measured; a step that can be taken back.</summary>
    public void Take(Lesson lesson)
    {
        if (!lesson.CanBeTaken)
        {
            session.Say(lesson.Says);
            return;
        }

        var text = session.Text;
        foreach (var entry in lesson.Entries)
        {
            var changed = BoardText.Change(text, entry.Key, new Entered(entry.Value, entry.Give, "measured"));
            if (changed.Refusal is { } refusal)
            {
                session.Say($"{refusal.Says} {refusal.Remedy}");
                return;
            }

            text = changed.Text;
        }

        session.Write(text, LessonWriter.Why([lesson], name));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        work.Cancel();
        work.Dispose();
    }

    void Again()
    {
        work.Cancel();
        work.Dispose();
        work = new CancellationTokenSource();
        if (bytes is not { } content || session.Examination is not { } examination)
            return;
        held = examination;
        IsReading = true;
        Changed?.Invoke();
        _ = HoldAsync(content, examination, Wishes, Conditions, work.Token);
    }

    async Task HoldAsync(byte[] content, Examination examination, LogWishes wishes, ReplayConditions conditions,
        CancellationToken cancellation)
    {
        try
        {
            var (reading, teaching, replay) = await Task.Run(
                () =>
                {
                    var read = RideLogFile.Read(content, name, wishes);
                    return (read, read.Log is { } found ? RideTeaching.Learn(examination.Board, found) : null,
                        read.Log is { } one ? Replay.Run(examination.Board, one, conditions) : null);
                },
                cancellation);
            if (cancellation.IsCancellationRequested)
                return;
            (Reading, Teaching, Told, Comparison) = (reading, teaching, teaching is null ? [] : [.. Words(teaching)], null);
            Charts = replay is { IsKnown: true, Value: var known } && known.Seconds.Count <= MostRows
                ? [LearningPictures.Against(known, $"{name}: predicted against measured")] : [];
            Number++;
            IsReading = reading.Log is not null;
            Changed?.Invoke();
            if (reading.Log is not { } log)
                return;
            var comparison = await Task.Run(
                () => RideComparison.Compare(examination.Board, log, conditions, cancellation: cancellation), cancellation);
            if (cancellation.IsCancellationRequested)
                return;
            (Comparison, IsReading) = (comparison, false);
            Changed?.Invoke();
        }
        catch (OperationCanceledException)
        {
            // The builder has edited on, or brought another ride.
        }
    }

    static IEnumerable<LogFinding> Words(RideTeaching teaching)
    {
        if (teaching.Energy is { } energy)
            yield return new("Energy for the distance", Invariant($"{energy.Consumption.WattHoursPerKilometre:0.0} Wh/km over {energy.Distance.Kilometres:0.00} km"), "", "");
        if (teaching.Rolling?.Fit is { } fit)
        {
            yield return DescribeEstimate("Rolling coefficient, all that turns along in it", fit.RollingResistance, r => r.Value, "");
            yield return DescribeEstimate("Drag area", fit.DragArea, a => a.SquareMetres, "m²");
        }

        if (teaching.Pack is { } pack)
        {
            yield return DescribeEstimate("Resistance of the pack at once", pack.Resistance, r => r.Milliohms, "mΩ");
            if (pack.Slow is { } slow) yield return DescribeEstimate(Invariant($"Resistance after some {3 * slow.Seconds:0} s"), pack.Settled, r => r.Milliohms, "mΩ");
        }

        if (teaching.Capacity is { } capacity) yield return DescribeEstimate("Capacity by rest voltages", capacity, c => c.AmpereHours, "Ah");
        if (teaching.Against is { } against) yield return DescribeEstimate("Speed for a volt, over that of the board file", against, n => n.Value, "times");
        if (teaching.Heat is { } heat)
        {
            yield return DescribeEstimate("Heat capacity of a motor", heat.Capacity, c => c.JoulesPerKelvin, "J/K");
            yield return DescribeEstimate("Motor to the air while riding", heat.Riding, r => r.KelvinsPerWatt, "K/W");
        }
    }

    static LogFinding DescribeEstimate<T>(string title, Estimate<T> estimate, Func<T, double> of, string unit)
        where T : struct, IQuantity<T>
    {
        var width = Math.Abs(of(estimate.High) - of(estimate.Low));
        var decimals = width > 0 && double.IsFinite(width) ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(width)), 0, 6) : 3;
        string Figure(T x) => of(x).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return new(title, $"{Figure(estimate.Value)} {unit}".TrimEnd(), $"{Figure(estimate.Low)} to {Figure(estimate.High)}", estimate.Narrowing);
    }
}
