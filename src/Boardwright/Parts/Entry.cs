using System.Collections.Concurrent;
using System.Reflection;
using System.Text;

namespace Boardwright.Parts;

/// <summary>What kind of thing an entry holds, for readers, schemas and forms.</summary>
public enum EntryForm
{
    /// <summary>A quantity with a unit.</summary>
    Quantity,
    /// <summary>A whole number.</summary>
    Count,
    /// <summary>Words, such as the name of an interface.</summary>
    Text,
    /// <summary>One of a few words.</summary>
    Choice,
    /// <summary>yes or no.</summary>
    YesNo,
    /// <summary>A day, with or without the time of day.</summary>
    Moment,
    /// <summary>Money.</summary>
    Money,
    /// <summary>Money for each hour.</summary>
    HourlyRate,
    /// <summary>A list of quantities; one alone stands for a list of one.</summary>
    Quantities,
    /// <summary>A list of words; one alone stands for a list of one.</summary>
    Texts,
    /// <summary>A map from one quantity to another.</summary>
    Curve,
    /// <summary>A resistance: one value, a map over charge, or a table over charge and temperature.</summary>
    ResistanceTable,
    /// <summary>Rolling resistance: one number or a map from surfaces to numbers.</summary>
    RollingTable,
    /// <summary>A sheet inside the sheet.</summary>
    Sheet,
    /// <summary>A list of sheets.</summary>
    Sheets,
    /// <summary>A map from names to sheets, in the order of the file.</summary>
    NamedSheets,
}

/// <summary>An entry of a sheet: its key, meaning, bounds and how it is read and replaced. Found from the sheet's own type, so that files,
/// schemas, forms and samples cannot disagree with it.</summary>
public abstract class Entry
{
    static readonly ConcurrentDictionary<Type, IReadOnlyList<Entry>> Cache = new();

    private protected Entry(PropertyInfo property, EntryAttribute about)
    {
        Property = property;
        About = about;
        Key = about.Key ?? Snake(property.Name);
    }

    /// <summary>The key in the file.</summary>
    public string Key { get; }
    /// <summary>What the entry is, how to measure it, an example.</summary>
    public EntryAttribute About { get; }
    /// <summary>What kind of thing it holds.</summary>
    public abstract EntryForm Form { get; }
    /// <summary>Type of the value itself: the quantity, the enum, the sheet.</summary>
    public abstract Type ValueType { get; }
    /// <summary>Dimension of the value, of the items of a list, or of what a curve answers.</summary>
    public virtual Dimension? Dimension => null;
    /// <summary>Dimension of a curve's first variable.</summary>
    public virtual Dimension? Over => null;
    /// <summary>Words to choose from, as the file writes them.</summary>
    public virtual IReadOnlyList<string> Choices => [];
    /// <summary>Least value, SI.</summary>
    public double Least => double.IsNaN(About.Least) ? Dimension?.Least ?? 0 : About.Least;
    /// <summary>Greatest value, SI.</summary>
    public double Greatest => double.IsNaN(About.Greatest) ? Dimension?.Greatest ?? 1e6 : About.Greatest;
    /// <summary>A right value as a person would write it.</summary>
    public string Example => About.Example ?? Dimension?.Example ?? (Choices.Count > 0 ? Choices[0] : "");
    /// <summary>The entry's value on a sheet: a <see cref="IKnown"/>, a <see cref="Sheet"/> or a list of sheets.</summary>
    public object Read(Sheet sheet) => Property.GetValue(sheet)!;
    /// <summary>A known value of this entry's type, for the plain value (a number in SI for a quantity).</summary>
    public abstract object Known(object value, double? spread = null, Origin? from = null);

    /// <summary>Where a value that is written in a file can come from.</summary>
    public static IReadOnlyList<Origin> StatedOrigins { get; } = [Origin.Maker, Origin.Measured, Origin.Guess];

    /// <summary>All entries of a type of sheet, in the order in which they are declared, inherited ones first.</summary>
    public static IReadOnlyList<Entry> ListEntries(Type sheet) => Cache.GetOrAdd(sheet, static type =>
    {
        var chain = new List<Type>();
        for (var t = type; t is not null && t != typeof(object); t = t.BaseType)
            chain.Insert(0, t);
        var entries = new List<Entry>();
        foreach (var t in chain)
        {
            foreach (var property in t.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.DeclaredOnly))
            {
                if (property.GetCustomAttribute<EntryAttribute>() is { } about)
                    entries.Add(For(property, about));
            }
        }

        return entries;
    });

    /// <summary>A name in capitals as a key: <c>ShaftLength</c> is <c>shaft_length</c>.</summary>
    public static string Snake(string name)
    {
        var text = new StringBuilder();
        foreach (var c in name)
        {
            if (char.IsUpper(c) && text.Length > 0)
                text.Append('_');
            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }

    /// <summary>An enum's member as the file writes it: <c>DropThrough</c> is <c>drop-through</c>; those of a <see cref="SpacedAttribute"/>
    /// are written with spaces.</summary>
    public static string Word(Enum member) =>
        Snake(member.ToString()).Replace('_', member.GetType().IsDefined(typeof(SpacedAttribute), inherit: false) ? ' ' : '-');

    private protected PropertyInfo Property { get; }

    /// <summary>One standard deviation that holds where the file says nothing, in SI units (in parts of the whole for a table).</summary>
    public double DefaultSpread(double si, Origin? from)
    {
        var origin = from ?? Origin.Maker;
        var kind = About.Spread != SpreadKind.OfItsType ? About.Spread
            : ValueType == typeof(Length) ? SpreadKind.Length
            : ValueType == typeof(Resistance) || Form == EntryForm.ResistanceTable ? SpreadKind.Resistance
            : ValueType == typeof(ThermalResistance) ? SpreadKind.Thermal
            : Form == EntryForm.RollingTable ? SpreadKind.Rolling
            : ValueType == typeof(Mass) || ValueType == typeof(SpeedConstant) || ValueType == typeof(Charge)
                || ValueType == typeof(Inertia) || ValueType == typeof(HeatCapacity) || ValueType == typeof(Inductance) ? SpreadKind.Usual
            : SpreadKind.None;
        if (kind == SpreadKind.None)
            return 0;
        if (kind == SpreadKind.Length && origin != Origin.Guess)
            return origin == Origin.Measured ? 0.05e-3 : 0.2e-3;
        var part = (origin, kind) switch
        {
            (Origin.Measured, _) => 0.02,
            (_, SpreadKind.DragArea) => 0.12,
            (_, SpreadKind.Rolling) => 0.20,
            (_, SpreadKind.NoLoad) => 0.15,
            (_, SpreadKind.Thermal) => 0.25,
            (Origin.Guess, _) => 0.15,
            (_, SpreadKind.Resistance) => 0.10,
            _ => 0.05,
        };
        return part * Math.Abs(si);
    }

    /// <summary>The value moved by a number of standard deviations, kept within the entry's bounds; itself where nothing is
    /// uncertain.</summary>
    public virtual object Moved(object known, double deviations) => known;
    /// <summary>One standard deviation of a value of this entry, stated or by default; zero where nothing is uncertain.</summary>
    public virtual double SpreadOf(object known) => 0;
    /// <summary>One standard deviation of the same value if it were measured; never more than it has.</summary>
    public virtual double MeasuredSpreadOf(object known) => SpreadOf(known);

    /// <summary>What a table is multiplied by: a usual value is off by a factor either way, a stated one by a difference.</summary>
    private protected static double TimesOf(Origin? from, double moved) =>
        from == Origin.Usual ? Math.Exp(moved) : Math.Max(0.05, 1 + moved);

    internal void Write(Sheet sheet, object value) => Property.SetValue(sheet, value);

    /// <summary>The value of a sheet with the full dotted name of each entry.</summary>
    internal abstract object WithName(object value, string key);

    static Entry For(PropertyInfo property, EntryAttribute about)
    {
        var type = property.PropertyType;
        if (typeof(Sheet).IsAssignableFrom(type))
            return new SheetEntry(property, about, type);
        if (type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
            return new SheetsEntry(property, about, type.GetGenericArguments()[0]);
        if (type == typeof(IReadOnlyDictionary<string, BoxPosition>))
            return new NamedSheetsEntry<BoxPosition>(property, about);
        var value = type.GetGenericArguments()[0];
        if (Forms.TryGetValue(value, out var make))
            return make(property, about);
        var form = typeof(IQuantity).IsAssignableFrom(value) ? typeof(QuantityEntry<>).MakeGenericType(value)
            : value.IsGenericType && value.GetGenericTypeDefinition() == typeof(Quantities<>)
            ? typeof(QuantitiesEntry<>).MakeGenericType(value.GetGenericArguments()[0])
            : value.IsGenericType && value.GetGenericTypeDefinition() == typeof(Curve<,>)
            ? typeof(CurveEntry<,>).MakeGenericType(value.GetGenericArguments())
            : typeof(PlainEntry<>).MakeGenericType(value);
        return (Entry)Activator.CreateInstance(
            form, BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public, null, [property, about], null)!;
    }

    // Named one by one so that a published program has them compiled ahead; a type that is not named here works as well, and starts more
    // slowly.
    static Dictionary<Type, Func<PropertyInfo, EntryAttribute, Entry>> Forms { get; } = new()
    {
        [typeof(Length)] = static (p, a) => new QuantityEntry<Length>(p, a),
        [typeof(Area)] = static (p, a) => new QuantityEntry<Area>(p, a),
        [typeof(Mass)] = static (p, a) => new QuantityEntry<Mass>(p, a),
        [typeof(Duration)] = static (p, a) => new QuantityEntry<Duration>(p, a),
        [typeof(Speed)] = static (p, a) => new QuantityEntry<Speed>(p, a),
        [typeof(Angle)] = static (p, a) => new QuantityEntry<Angle>(p, a),
        [typeof(Temperature)] = static (p, a) => new QuantityEntry<Temperature>(p, a),
        [typeof(Torque)] = static (p, a) => new QuantityEntry<Torque>(p, a),
        [typeof(Power)] = static (p, a) => new QuantityEntry<Power>(p, a),
        [typeof(Charge)] = static (p, a) => new QuantityEntry<Charge>(p, a),
        [typeof(Current)] = static (p, a) => new QuantityEntry<Current>(p, a),
        [typeof(Voltage)] = static (p, a) => new QuantityEntry<Voltage>(p, a),
        [typeof(Resistance)] = static (p, a) => new QuantityEntry<Resistance>(p, a),
        [typeof(Inductance)] = static (p, a) => new QuantityEntry<Inductance>(p, a),
        [typeof(Capacitance)] = static (p, a) => new QuantityEntry<Capacitance>(p, a),
        [typeof(SpeedConstant)] = static (p, a) => new QuantityEntry<SpeedConstant>(p, a),
        [typeof(AngularSpeed)] = static (p, a) => new QuantityEntry<AngularSpeed>(p, a),
        [typeof(Frequency)] = static (p, a) => new QuantityEntry<Frequency>(p, a),
        [typeof(Inertia)] = static (p, a) => new QuantityEntry<Inertia>(p, a),
        [typeof(Fraction)] = static (p, a) => new QuantityEntry<Fraction>(p, a),
        [typeof(Number)] = static (p, a) => new QuantityEntry<Number>(p, a),
        [typeof(ThermalResistance)] = static (p, a) => new QuantityEntry<ThermalResistance>(p, a),
        [typeof(HeatCapacity)] = static (p, a) => new QuantityEntry<HeatCapacity>(p, a),
        [typeof(AngularStiffness)] = static (p, a) => new QuantityEntry<AngularStiffness>(p, a),
        [typeof(BendPerMass)] = static (p, a) => new QuantityEntry<BendPerMass>(p, a),
        [typeof(FusingIntegral)] = static (p, a) => new QuantityEntry<FusingIntegral>(p, a),
        [typeof(Quantities<Length>)] = static (p, a) => new QuantitiesEntry<Length>(p, a),
        [typeof(Quantities<Angle>)] = static (p, a) => new QuantitiesEntry<Angle>(p, a),
        [typeof(Curve<Fraction, Voltage>)] = static (p, a) => new CurveEntry<Fraction, Voltage>(p, a),
        [typeof(Curve<Voltage, Current>)] = static (p, a) => new CurveEntry<Voltage, Current>(p, a),
        [typeof(int)] = static (p, a) => new PlainEntry<int>(p, a),
        [typeof(string)] = static (p, a) => new PlainEntry<string>(p, a),
        [typeof(bool)] = static (p, a) => new PlainEntry<bool>(p, a),
        [typeof(Moment)] = static (p, a) => new PlainEntry<Moment>(p, a),
        [typeof(Money)] = static (p, a) => new PlainEntry<Money>(p, a),
        [typeof(HourlyRate)] = static (p, a) => new PlainEntry<HourlyRate>(p, a),
        [typeof(Texts)] = static (p, a) => new PlainEntry<Texts>(p, a),
        [typeof(ResistanceTable)] = static (p, a) => new PlainEntry<ResistanceTable>(p, a),
        [typeof(RollingTable)] = static (p, a) => new PlainEntry<RollingTable>(p, a),
        [typeof(Mounting)] = static (p, a) => new PlainEntry<Mounting>(p, a),
        [typeof(Kingpin)] = static (p, a) => new PlainEntry<Kingpin>(p, a),
        [typeof(DriveKind)] = static (p, a) => new PlainEntry<DriveKind>(p, a),
        [typeof(Driven)] = static (p, a) => new PlainEntry<Driven>(p, a),
        [typeof(Placement)] = static (p, a) => new PlainEntry<Placement>(p, a),
        [typeof(Fixing)] = static (p, a) => new PlainEntry<Fixing>(p, a),
        [typeof(Sensor)] = static (p, a) => new PlainEntry<Sensor>(p, a),
        [typeof(Failsafe)] = static (p, a) => new PlainEntry<Failsafe>(p, a),
        [typeof(Stance)] = static (p, a) => new PlainEntry<Stance>(p, a),
        [typeof(Weather)] = static (p, a) => new PlainEntry<Weather>(p, a),
        [typeof(BoxWall)] = static (p, a) => new PlainEntry<BoxWall>(p, a),
        [typeof(FittingRole)] = static (p, a) => new PlainEntry<FittingRole>(p, a),
        [typeof(Surface)] = static (p, a) => new PlainEntry<Surface>(p, a),
    };

    sealed class QuantityEntry<T>(PropertyInfo property, EntryAttribute about) : Entry(property, about)
        where T : struct, IQuantity<T>
    {
        public override EntryForm Form => EntryForm.Quantity;

        public override Type ValueType => typeof(T);

        public override Dimension? Dimension => T.Dimension;

        public override object Known(object value, double? spread = null, Origin? from = null) =>
            new Known<T>(value is double si ? T.FromSi(si) : (T)value, spread, from);

        public override double SpreadOf(object known) =>
            known is Known<T> { IsKnown: true } value ? value.Spread ?? DefaultSpread(value.Value.Si, value.From) : 0;

        public override double MeasuredSpreadOf(object known) =>
            known is Known<T> { IsKnown: true } value ? Math.Min(SpreadOf(known), DefaultSpread(value.Value.Si, Origin.Measured)) : 0;

        public override object Moved(object known, double deviations)
        {
            var value = (Known<T>)known;
            var spread = SpreadOf(known);
            if (spread == 0)
                return known;
            var least = About.Positive || Least == 0 ? 0.05 * value.Value.Si : Least;
            var moved = value.From == Origin.Usual ? value.Value.Si * Math.Exp(deviations * spread / value.Value.Si)
                : value.Value.Si + deviations * spread;
            return value.With(T.FromSi(Math.Clamp(moved, Math.Min(least, value.Value.Si), Math.Max(Greatest, value.Value.Si))));
        }

        internal override object WithName(object value, string key) => ((Known<T>)value).WithName(key);
    }

    sealed class QuantitiesEntry<T>(PropertyInfo property, EntryAttribute about) : Entry(property, about)
        where T : struct, IQuantity<T>
    {
        public override EntryForm Form => EntryForm.Quantities;

        public override Type ValueType => typeof(T);

        public override Dimension? Dimension => T.Dimension;

        public override object Known(object value, double? spread = null, Origin? from = null) =>
            new Known<Quantities<T>>(
            value is IEnumerable<double> si ? new Quantities<T>([.. si.Select(T.FromSi)]) : (Quantities<T>)value, spread, from);

        internal override object WithName(object value, string key) => ((Known<Quantities<T>>)value).WithName(key);
    }

    sealed class CurveEntry<TX, TY>(PropertyInfo property, EntryAttribute about) : Entry(property, about)
        where TX : struct, IQuantity<TX>
        where TY : struct, IQuantity<TY>
    {
        public override EntryForm Form => EntryForm.Curve;

        public override Type ValueType => typeof(Curve<TX, TY>);

        public override Dimension? Dimension => TY.Dimension;

        public override Dimension? Over => TX.Dimension;

        public override object Known(object value, double? spread = null, Origin? from = null) =>
            new Known<Curve<TX, TY>>(
            value is IEnumerable<(double X, double Y)> points ? new Curve<TX, TY>(points) : (Curve<TX, TY>)value, spread, from);

        public override double SpreadOf(object known) =>
            known is Known<Curve<TX, TY>> { IsKnown: true } value ? value.Spread ?? DefaultSpread(1, value.From) : 0;

        public override double MeasuredSpreadOf(object known) => Math.Min(SpreadOf(known), DefaultSpread(1, Origin.Measured));

        public override object Moved(object known, double deviations)
        {
            var value = (Known<Curve<TX, TY>>)known;
            var spread = SpreadOf(known);
            return spread == 0 ? known : value.With(value.Value.Scaled(TimesOf(value.From, deviations * spread)));
        }

        internal override object WithName(object value, string key) => ((Known<Curve<TX, TY>>)value).WithName(key);
    }

    sealed class PlainEntry<T>(PropertyInfo property, EntryAttribute about) : Entry(property, about)
        where T : notnull
    {
        public override EntryForm Form { get; } =
            typeof(T) == typeof(int) ? EntryForm.Count
            : typeof(T) == typeof(string) ? EntryForm.Text
            : typeof(T) == typeof(bool) ? EntryForm.YesNo
            : typeof(T) == typeof(Moment) ? EntryForm.Moment
            : typeof(T).IsEnum ? EntryForm.Choice
            : typeof(T) == typeof(Money) ? EntryForm.Money
            : typeof(T) == typeof(HourlyRate) ? EntryForm.HourlyRate
            : typeof(T) == typeof(Texts) ? EntryForm.Texts
            : typeof(T) == typeof(ResistanceTable) ? EntryForm.ResistanceTable
            : typeof(T) == typeof(RollingTable) ? EntryForm.RollingTable
            : throw new NotSupportedException($"{property.DeclaringType}.{property.Name} has a type that entries do not hold.");

        public override Type ValueType => typeof(T);

        public override Dimension? Dimension =>
            Form == EntryForm.ResistanceTable ? Resistance.Dimension : Form == EntryForm.RollingTable ? Number.Dimension : null;

        public override IReadOnlyList<string> Choices { get; } =
            typeof(T).IsEnum ? [.. Enum.GetValues(typeof(T)).Cast<Enum>().Select(Word)] : [];

        public override object Known(object value, double? spread = null, Origin? from = null) =>
            new Known<T>(value is string word && typeof(T).IsEnum
                ? (T)Enum.GetValues(typeof(T)).Cast<object>().First(m => Word((Enum)m) == word)
                : (T)value, spread, from);

        public override double SpreadOf(object known) => known switch
        {
            Known<ResistanceTable> { IsKnown: true } table => table.Spread ?? DefaultSpread(1, table.From),
            Known<RollingTable> { IsKnown: true } table => table.Spread ?? DefaultSpread(1, table.From),
            _ => 0,
        };

        public override double MeasuredSpreadOf(object known) => Math.Min(SpreadOf(known), DefaultSpread(1, Origin.Measured));

        public override object Moved(object known, double deviations)
        {
            var spread = SpreadOf(known);
            if (spread == 0)
                return known;
            var times = TimesOf(((IKnown)known).From, deviations * spread);
            return known switch
            {
                Known<ResistanceTable> table => table.With(table.Value.Scaled(times)),
                Known<RollingTable> table => table.With(table.Value.Scaled(times)),
                _ => known,
            };
        }

        internal override object WithName(object value, string key) => ((Known<T>)value).WithName(key);
    }

    sealed class SheetEntry(PropertyInfo property, EntryAttribute about, Type type) : Entry(property, about)
    {
        public override EntryForm Form => EntryForm.Sheet;

        public override Type ValueType => type;

        public override object Known(object value, double? spread = null, Origin? from = null) => value;

        internal override object WithName(object value, string key) => Board.WithNames((Sheet)value, key);
    }

    sealed class SheetsEntry(PropertyInfo property, EntryAttribute about, Type type) : Entry(property, about)
    {
        public override EntryForm Form => EntryForm.Sheets;

        public override Type ValueType => type;

        public override object Known(object value, double? spread = null, Origin? from = null)
        {
            var items = ((IEnumerable<Sheet>)value).ToArray();
            var list = Array.CreateInstance(type, items.Length);
            items.CopyTo(list, 0);
            return list;
        }

        internal override object WithName(object value, string key) =>
            Known(((IEnumerable<Sheet>)value).Select((item, i) => Board.WithNames(item, $"{key}[{i + 1}]")));
    }

    sealed class NamedSheetsEntry<T>(PropertyInfo property, EntryAttribute about) : Entry(property, about)
        where T : Sheet
    {
        public override EntryForm Form => EntryForm.NamedSheets;

        public override Type ValueType => typeof(T);

        public override object Known(object value, double? spread = null, Origin? from = null) =>
            new OrderedDictionary<string, T>(
            ((IEnumerable<KeyValuePair<string, Sheet>>)value).Select(p => KeyValuePair.Create(p.Key, (T)p.Value)), StringComparer.Ordinal);

        internal override object WithName(object value, string key) =>
            Known(((IReadOnlyDictionary<string, T>)value).Select(p => KeyValuePair.Create(p.Key, Board.WithNames(p.Value, $"{key}.{p.Key}"))));
    }
}
