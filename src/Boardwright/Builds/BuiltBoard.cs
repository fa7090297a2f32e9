using Boardwright.Logs;
using Boardwright.Parts;

namespace Boardwright.Builds;

/// <summary>A board that was built: what is in it, who did what when, what was measured, how it was ridden.</summary>
/// <remarks>It says what happened and computes nothing; <see cref="Readiness"/> judges it against the design it was built from.</remarks>
public sealed record BuiltBoard : Sheet
{
    /// <summary>Serial number, as it stands on the board.</summary>
    [Entry("Serial number, as it stands on the board: letters, digits, points and hyphens.", Example = "TERN-0001")]
    public Known<string> Serial { get; init; }
    /// <summary>The design: its name in the shop, or its board file.</summary>
    [Entry("What it was built from: the name of a board in the shop, or a board file, from this file's folder.", Example = "Tern")]
    public Known<string> Board { get; init; }
    /// <summary>Revision of the design in the shop.</summary>
    [Entry("Which revision of that board in the shop; left out for a board file.", Least = 1, Example = "3")]
    public Known<int> Revision { get; init; }
    /// <summary>When building began.</summary>
    [Entry("When building began.", Example = "2026-04-18")]
    public Known<Moment> Begun { get; init; }
    /// <summary>Who it is for.</summary>
    [Entry("Who it is for, in a word that tells you.", Example = "shop board")]
    public Known<string> For { get; init; }
    /// <summary>Warranty.</summary>
    [Entry("From when to when you stand for it, and for what.")]
    public Warranty Warranty { get; init; } = new();
    /// <summary>What was fitted.</summary>
    [Entry("What was fitted, with the maker's batch and serial numbers.")]
    public IReadOnlyList<FittedPart> Fitted { get; init; } = [];
    /// <summary>Steps of the build sheet that were done.</summary>
    [Entry("Steps of the build sheet, as they were done. The last line of a step counts.")]
    public IReadOnlyList<DoneStep> Steps { get; init; } = [];
    /// <summary>Lines of the bench list that were measured.</summary>
    [Entry("Lines of the bench list, as they were measured. The last line of a check counts.")]
    public IReadOnlyList<DoneStep> Bench { get; init; } = [];
    /// <summary>Notes and photos.</summary>
    [Entry("Notes and photos.")]
    public IReadOnlyList<Note> Notes { get; init; } = [];
    /// <summary>Faults and repairs.</summary>
    [Entry("Faults that were found, and how they were mended.")]
    public IReadOnlyList<BoardFault> Faults { get; init; } = [];
    /// <summary>Logged rides.</summary>
    [Entry("Rides that were logged.")]
    public IReadOnlyList<LoggedRide> Rides { get; init; } = [];
    /// <summary>Riding without a log.</summary>
    [Entry("What it was ridden beside the logs.")]
    public Unlogged Unlogged { get; init; } = new();
    /// <summary>States it was put into; the last one counts.</summary>
    [Entry("The states it was put into, each with who and when; the last one counts. Let the program write them: it asks for a reason where one is due.")]
    public IReadOnlyList<Marking> States { get; init; } = [];
    /// <summary>How far it was ridden: by the logs, and beside them.</summary>
    public Length Ridden => Length.FromMetres(
        Rides.Sum(static ride => ride.Distance.Or(default).Metres) + Unlogged.Distance.Or(default).Metres);
    /// <summary>How long it was ridden: by the logs, and beside them.</summary>
    public Duration RidingTime =>
        Duration.FromSeconds(Rides.Sum(static ride => ride.Lasting.Or(default).Seconds) + Unlogged.Lasting.Or(default).Seconds);
    /// <summary>Faults that nobody mended yet, with their number from 1.</summary>
    public IEnumerable<(int Number, BoardFault Fault)> OpenFaults =>
        Faults.Select(static (fault, i) => (i + 1, fault)).Where(static pair => !pair.fault.IsMended);
    /// <summary>The board with every entry named by its dotted key.</summary>
    public BuiltBoard WithNames() => (BuiltBoard)Parts.Board.WithNames(this, "");

    /// <summary>What was written last for a step or a check.</summary>
    public DoneStep? Last(Step step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return (step.List == StepList.Building ? Steps : Bench).LastOrDefault(done => done.Step.Or("") == step.Id);
    }
}

/// <summary>Warranty of a board.</summary>
public sealed record Warranty : Sheet
{
    /// <summary>First day.</summary>
    [Entry("First day.", Example = "2026-05-10")]
    public Known<Moment> From { get; init; }
    /// <summary>Last day.</summary>
    [Entry("Last day.", Example = "2028-05-09")]
    public Known<Moment> Until { get; init; }
    /// <summary>What it covers.</summary>
    [Entry("What it covers, in a few words.", Example = "all but tyres and belts")]
    public Known<string> Covers { get; init; }
}

/// <summary>A part that was fitted.</summary>
public sealed record FittedPart : Sheet
{
    /// <summary>Place on the board.</summary>
    [Entry("Its place on the board, as in the board file.", Example = "motor")]
    public Known<string> Part { get; init; }
    /// <summary>Which of several.</summary>
    [Entry("Which of several, from 1.", Least = 1, Greatest = 100, Example = "1")]
    public Known<int> Number { get; init; }
    /// <summary>What it is.</summary>
    [Entry("What it is: its id on the shelf, or its name.", Example = "m6374-170")]
    public Known<string> Is { get; init; }
    /// <summary>Maker's batch number.</summary>
    [Entry("The maker's batch number.", Example = "B2604-117")]
    public Known<string> Batch { get; init; }
    /// <summary>Maker's serial number.</summary>
    [Entry("The maker's serial number.", Example = "00213")]
    public Known<string> Serial { get; init; }
    /// <summary>When.</summary>
    [Entry("When it was fitted.", Example = Moment.Example)]
    public Known<Moment> When { get; init; }
    /// <summary>Who.</summary>
    [Entry("Who fitted it.", Example = "Ada")]
    public Known<string> Who { get; init; }
    /// <summary>Anything else.</summary>
    [Entry("Anything else worth knowing.", Example = "second hand")]
    public Known<string> Remark { get; init; }
}

/// <summary>A step of the build sheet, or a line of the bench list, as it was done.</summary>
public sealed record DoneStep : Sheet
{
    /// <summary>Which one.</summary>
    [Entry("Id of the step or check, as boardwright built show lists it.", Example = "belt-1.note")]
    public Known<string> Step { get; init; }
    /// <summary>When.</summary>
    [Entry("When it was done.", Example = Moment.Example)]
    public Known<Moment> When { get; init; }
    /// <summary>Who.</summary>
    [Entry("Who did it.", Example = "Ada")]
    public Known<string> Who { get; init; }
    /// <summary>What was measured.</summary>
    [Entry("What was measured, with its unit; a list where it was measured several times.", Example = "41.3 V")]
    public Known<Texts> Value { get; init; }
    /// <summary>Whether it passed, by the judgement of who did it.</summary>
    [Entry("Whether it passed, where no range decides that; no counts against every range.")]
    public Known<bool> Passed { get; init; }
    /// <summary>Anything else.</summary>
    [Entry("Anything else worth knowing.", Example = "left lead sleeved again")]
    public Known<string> Remark { get; init; }
}

/// <summary>A note, with a photo or another file where there is one.</summary>
public sealed record Note : Sheet
{
    /// <summary>What it says.</summary>
    [Entry("What there is to say.", Example = "lead of motor 2 before it was sleeved")]
    public Known<string> Says { get; init; }
    /// <summary>The file.</summary>
    [Entry("A photo or another file, from this file's folder.", Example = "photos/motor-lead.jpg")]
    public Known<string> File { get; init; }
    /// <summary>What it belongs to.</summary>
    [Entry("Id of the step, check or part it belongs to.", Example = "belt-1.note")]
    public Known<string> About { get; init; }
    /// <summary>When.</summary>
    [Entry("When it was written.", Example = Moment.Example)]
    public Known<Moment> When { get; init; }
    /// <summary>Who.</summary>
    [Entry("Who wrote it.", Example = "Ada")]
    public Known<string> Who { get; init; }
}

/// <summary>A fault, and how it was mended.</summary>
public sealed record BoardFault : Sheet
{
    /// <summary>What was wrong.</summary>
    [Entry("What is wrong.", Example = "belt 2 jumps under hard braking")]
    public Known<string> Says { get; init; }
    /// <summary>When it was found.</summary>
    [Entry("When it was found.", Example = Moment.Example)]
    public Known<Moment> Found { get; init; }
    /// <summary>Who found it.</summary>
    [Entry("Who found it.", Example = "Jo")]
    public Known<string> Who { get; init; }
    /// <summary>When it was mended.</summary>
    [Entry("When it was mended; left out while it is open.", Example = Moment.Example)]
    public Known<Moment> Mended { get; init; }
    /// <summary>Who mended it.</summary>
    [Entry("Who mended it.", Example = "Ada")]
    public Known<string> MendedBy { get; init; }
    /// <summary>How it was mended.</summary>
    [Entry("How it was mended, and with what.", Example = "mount had slid: two new bolts, medium thread lock")]
    public Known<string> Repair { get; init; }
    /// <summary>Whether somebody mended it.</summary>
    public bool IsMended => Mended.IsKnown;
}

/// <summary>A ride that was logged. The log is kept as the logger wrote it.</summary>
public sealed record LoggedRide : Sheet
{
    /// <summary>The log.</summary>
    [Entry("The log as the logger wrote it, from this file's folder.", Example = "rides/harbour.csv")]
    public Known<string> File { get; init; }
    /// <summary>When.</summary>
    [Entry("When it was ridden.", Example = Moment.Example)]
    public Known<Moment> When { get; init; }
    /// <summary>Who.</summary>
    [Entry("Who rode.", Example = "Jo")]
    public Known<string> Who { get; init; }
    /// <summary>How far.</summary>
    [Entry("How far, by the log.", Example = "11.8 km", Greatest = 1e9)]
    public Known<Length> Distance { get; init; }
    /// <summary>How long.</summary>
    [Entry("How long, by the log.", Example = "37 min", Greatest = 1e9)]
    public Known<Duration> Lasting { get; init; }
    /// <summary>Mass of rider and gear.</summary>
    [Entry("Mass of rider and gear, where it was not that of the board file.", Example = "92 kg")]
    public Known<Mass> Load { get; init; }
    /// <summary>How its columns are read.</summary>
    [Entry("How its columns are read, as somebody confirmed it.")]
    public LoggerColumns Columns { get; init; } = new();
    /// <summary>Rows.</summary>
    [Entry("Rows of the log.", Greatest = 1e9, Example = "26100")]
    public Known<int> Rows { get; init; }
    /// <summary>Rows that could not be used.</summary>
    [Entry("Rows that could not be used.", Greatest = 1e9, Example = "12")]
    public Known<int> BadRows { get; init; }
    /// <summary>Anything else.</summary>
    [Entry("Anything else worth knowing.", Example = "strong wind from the sea")]
    public Known<string> Remark { get; init; }
}

/// <summary>Decimal mark of a log.</summary>
public enum DecimalMark
{
    /// <summary>A point.</summary>
    Point,
    /// <summary>A comma.</summary>
    Comma,
}

/// <summary>How the columns of a logger are read, as somebody confirmed it.</summary>
public sealed record LoggerColumns : Sheet
{
    /// <summary>How times are written.</summary>
    [Entry("How times are written.")]
    public Known<TimeForm> Time { get; init; }
    /// <summary>Decimal mark.</summary>
    [Entry("The decimal mark.")]
    public Known<DecimalMark> Decimal { get; init; }
    /// <summary>What each column holds.</summary>
    [Entry("What each column holds: its name, =, and time, none, or a channel with its unit.", Example = "[t=time, v=speed km/h]")]
    public Known<Texts> Columns { get; init; }
}

/// <summary>Riding that no log tells of.</summary>
public sealed record Unlogged : Sheet
{
    /// <summary>How far.</summary>
    [Entry("How far.", Example = "120 km", Greatest = 1e9)]
    public Known<Length> Distance { get; init; }
    /// <summary>How long.</summary>
    [Entry("How long.", Example = "6 h", Greatest = 1e9)]
    public Known<Duration> Lasting { get; init; }
}

/// <summary>What a built board is up to.</summary>
[Spaced]
public enum BoardState
{
    /// <summary>It is being put together.</summary>
    InBuilding,
    /// <summary>It is measured and tried.</summary>
    OnTheBench,
    /// <summary>Its builder rides it, for the checks that can only be done on the road.</summary>
    OnTrial,
    /// <summary>It may be ridden.</summary>
    ReadyToRide,
    /// <summary>Its rider has it.</summary>
    HandedOver,
    /// <summary>Something is being mended.</summary>
    InRepair,
    /// <summary>It is ridden no more.</summary>
    OutOfUse,
}

/// <summary>A state that somebody put a board into.</summary>
public sealed record Marking : Sheet
{
    /// <summary>The state.</summary>
    [Entry("The state.")]
    public Known<BoardState> Is { get; init; }
    /// <summary>When.</summary>
    [Entry("When.", Example = Moment.Example)]
    public Known<Moment> When { get; init; }
    /// <summary>Who.</summary>
    [Entry("Who.", Example = "Ada")]
    public Known<string> Who { get; init; }
    /// <summary>Why.</summary>
    [Entry("Why, in a sentence; due where something was open.", Example = "ramp test waits for dry ground; ridden by Ada only")]
    public Known<string> Why { get; init; }
    /// <summary>What was open.</summary>
    [Entry("What was open then and is answered for by the reason.", Example = "[undone brake.ramp]")]
    public Known<Texts> Despite { get; init; }
}
