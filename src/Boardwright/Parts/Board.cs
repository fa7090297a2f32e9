namespace Boardwright.Parts;

/// <summary>The parts chosen for a board. A place for which nothing was chosen holds a part of which nothing is known.</summary>
public sealed record Fitted : Sheet
{
    /// <summary>The deck.</summary>
    [Entry("The deck.")]
    public Deck Deck { get; init; } = new();
    /// <summary>The front truck.</summary>
    [Entry("The front truck.")]
    public Truck FrontTruck { get; init; } = new();
    /// <summary>The rear truck.</summary>
    [Entry("The rear truck.")]
    public Truck RearTruck { get; init; } = new();
    /// <summary>The wheels.</summary>
    [Entry("The wheels, all of one kind.")]
    public Wheel Wheels { get; init; } = new();
    /// <summary>How the wheels are driven.</summary>
    [Entry("How the wheels are driven.")]
    public Drive Drive { get; init; } = new();
    /// <summary>The motor mounts.</summary>
    [Entry("The motor mount, one for each motor.")]
    public Mount Mount { get; init; } = new();
    /// <summary>The motors.</summary>
    [Entry("The motor.")]
    public Motor Motor { get; init; } = new();
    /// <summary>The motor pulleys.</summary>
    [Entry("The pulley on each motor's shaft.")]
    public Pulley MotorPulley { get; init; } = new();
    /// <summary>The wheel pulleys.</summary>
    [Entry("The pulley on each driven wheel.")]
    public Pulley WheelPulley { get; init; } = new();
    /// <summary>The belts.</summary>
    [Entry("The belt, one for each motor.")]
    public Belt Belt { get; init; } = new();
    /// <summary>The gearboxes.</summary>
    [Entry("The pair of gears, one for each motor.")]
    public Gearbox Gearbox { get; init; } = new();
    /// <summary>The controllers.</summary>
    [Entry("The motor controller.")]
    public Controller Controller { get; init; } = new();
    /// <summary>The cell.</summary>
    [Entry("The cell the pack is made of.")]
    public Cell Cell { get; init; } = new();
    /// <summary>The pack.</summary>
    [Entry("How the cells are put together.")]
    public Pack Pack { get; init; } = new();
    /// <summary>The charger.</summary>
    [Entry("The charger.")]
    public Charger Charger { get; init; } = new();
    /// <summary>The remote.</summary>
    [Entry("The hand remote with its receiver.")]
    public Remote Remote { get; init; } = new();
    /// <summary>The box.</summary>
    [Entry("The box under the deck.")]
    public Box Box { get; init; } = new();
    /// <summary>The main fuse.</summary>
    [Entry("The main fuse.")]
    public Fuse Fuse { get; init; } = new();
    /// <summary>What goes through the box's wall.</summary>
    [Entry("What goes through the box's wall: glands, socket, switch, gauge.")]
    public IReadOnlyList<Fitting> Fittings { get; init; } = [];

    /// <summary>The place to which an entry belongs, when nothing was chosen for it: asking for the part then says more than asking for one
    /// of its values.</summary>
    /// <param name="key">Dotted key of an entry, such as <c>motor.kv</c>.</param>
    /// <returns>Key of the place, such as <c>motor</c>; <c>null</c> when a part was chosen there, or the entry is none of a part.</returns>
    public string? UnchosenPlaceOf(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        var dot = key.IndexOf('.', StringComparison.Ordinal);
        var place = dot < 0 ? key : key[..dot];
        return Entry.ListEntries(typeof(Fitted)).FirstOrDefault(e => e.Key == place) is { } entry
            && entry.Read(this) is Part { IsChosen: false } ? place : null;
    }
}

/// <summary>Measured over predicted, by rides that were held against the model; 1 where it is right. Their spread widens the ranges of the
/// figures.</summary>
public sealed record ModelFactors : Sheet
{
    /// <summary>Of energy.</summary>
    [Entry("Measured over predicted energy; its give is the model's own spread.", Example = "1.00", Positive = true, Least = 0.2, Greatest = 5, Spread = SpreadKind.None)]
    public Known<Number> Energy { get; init; }
    /// <summary>Of how far the windings warm above the air.</summary>
    [Entry("Measured over predicted warming of the windings above the air; its give is the model's own spread.", Example = "1.00", Positive = true, Least = 0.2, Greatest = 5, Spread = SpreadKind.None)]
    public Known<Number> WindingRise { get; init; }
}

/// <summary>A board: the brief, the parts chosen and how they are joined.</summary>
public sealed record Board : Sheet
{
    /// <summary>Version of the file format.</summary>
    public const int Version = 1;
    /// <summary>Name of the board.</summary>
    [Entry("Name of the board.", Example = "Tern")]
    public Known<string> Name { get; init; }
    /// <summary>What the rider wants.</summary>
    [Entry("What the rider wants and where the board will be ridden.")]
    public Brief Brief { get; init; } = new();
    /// <summary>Folders of shelf parts.</summary>
    [Entry("Folders with shelf files, from the board file's folder.", Example = "[shelf/]")]
    public Known<Texts> Shelf { get; init; }
    /// <summary>The parts chosen.</summary>
    [Entry("The parts chosen: for each place an id on the shelf, an inline part, or { use: ID } with overrides.")]
    public Fitted Parts { get; init; } = new();
    /// <summary>Runs of wire.</summary>
    [Entry("Runs of wire.")]
    public IReadOnlyList<Run> Wiring { get; init; } = [];
    /// <summary>Controller limits.</summary>
    [Entry("What the builder has set, or means to set, in the controller.")]
    public Limits Limits { get; init; } = new();
    /// <summary>Screws.</summary>
    [Entry("What holds things together.")]
    public Fixings Fixings { get; init; } = new();
    /// <summary>Where things lie in the box, by their names; what is not named is proposed.</summary>
    [Entry("Where things lie in the box, by name: pack, controller, controller 2, receiver, fuse, gland 1, charge socket and so on. What is not named is proposed.", Example = "pack: { x: -80 mm, y: 0 mm, turn: 0 deg }")]
    public IReadOnlyDictionary<string, BoxPosition> Layout { get; init; } = new OrderedDictionary<string, BoxPosition>(
        StringComparer.Ordinal);
    /// <summary>Work and margin.</summary>
    [Entry("Work, overhead and margin.")]
    public Costs Money { get; init; } = new();
    /// <summary>What rides said of the model.</summary>
    [Entry("What the rides of the shop say of the program's own model: measured over predicted. Written by boardwright credibility.")]
    public ModelFactors Model { get; init; } = new();
    /// <summary>Kinds of plug that the shelf knows, by id and by name.</summary>
    public IReadOnlyDictionary<string, Plug> Plugs { get; init; } = new Dictionary<string, Plug>(TradeName.Comparer);

    /// <summary>The board with every entry named by its dotted key; parts are named without the leading <c>parts.</c>.</summary>
    public Board WithNames()
    {
        var board = (Board)WithNames(this, "");
        return board with { Plugs = Plugs.ToDictionary(p => p.Key, p => (Plug)WithNames(p.Value, $"plug {p.Key}"), TradeName.Comparer) };
    }

    /// <summary>A plug by its id or name: the shelf's, or one of the usual ones.</summary>
    /// <returns>The plug, or one of which nothing is known.</returns>
    public Plug PlugCalled(string name) =>
        Plugs.TryGetValue(name, out var plug) ? plug : UsualPlugs.Find(name) ?? (Plug)WithNames(new Plug(), $"plug {name}");

    /// <summary>Whether a plug of this name is described, on the shelf or among the usual ones.</summary>
    public bool KnowsPlug(string name) => Plugs.ContainsKey(name) || UsualPlugs.Find(name) is not null;

    /// <summary>Keys of all entries that have a value, places in the box left out.</summary>
    public IEnumerable<string> KnownKeys() => KeysOf(this).Distinct(StringComparer.Ordinal);

    /// <summary>The board as if nobody knew an entry.</summary>
    /// <param name="key">Dotted key of the entry.</param>
    public Board Without(string key) => (Board)Without(this, key);

    static IEnumerable<string> KeysOf(Sheet sheet) => Entry.ListEntries(sheet.GetType()).SelectMany(entry => entry.Read(sheet) switch
    {
        Sheet inner => KeysOf(inner),
        IReadOnlyList<Sheet> list => list.SelectMany(KeysOf),
        IKnown { IsKnown: true } known => [known.Key],
        _ => (IEnumerable<string>)[],
    });

    static Sheet Without(Sheet sheet, string key)
    {
        return sheet.With(Entry.ListEntries(sheet.GetType()).Select(entry => (entry, Emptied(entry))));

        object Emptied(Entry entry) => entry.Read(sheet) switch
        {
            Sheet inner => Without(inner, key),
            IReadOnlyList<Sheet> list => entry.Known(list.Select(item => Without(item, key)).ToArray()),
            IKnown known when known.Key == key => known.Emptied,
            var other => other,
        };
    }

    internal static Sheet WithNames(Sheet sheet, string prefix) => sheet.With(
        Entry.ListEntries(sheet.GetType()).Select(entry => (entry, entry.WithName(
            entry.Read(sheet),
            sheet is Board && entry.Key == "parts" ? "" : prefix.Length == 0 ? entry.Key : $"{prefix}.{entry.Key}"))));
}
