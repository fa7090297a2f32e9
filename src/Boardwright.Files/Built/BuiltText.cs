using System.Globalization;
using System.Text;
using Boardwright.Builds;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Parts;

namespace Boardwright.Files.Built;

/// <summary>Writes into the text of a built board, and leaves everything else as it stands: comments, order and layout.</summary>
public static class BuiltText
{
    const string States = "states";

    /// <summary>The text of a board that is begun.</summary>
    /// <param name="serial">Its serial number.</param>
    /// <param name="board">What it is built from: a name in the shop, or a board file.</param>
    /// <param name="revision">The revision in the shop; <c>null</c> for a board file.</param>
    /// <param name="begun">When.</param>
    /// <param name="who">Who begins it.</param>
    public static string Begin(string serial, string board, int? revision, Moment begun, string who)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"boardwright: {Board.Version}\nserial: {Quote(serial)}\nboard: {Quote(board)}\n");
        if (revision is { } number)
            text.Append(CultureInfo.InvariantCulture, $"revision: {number}\n");
        text.Append(CultureInfo.InvariantCulture, $"begun: {Moment.On(begun.Day)}\n");
        return BoardText.Append(text.ToString(), States, Item(new Marking { Is = BoardState.InBuilding, When = begun, Who = who })).Text;
    }

    /// <summary>Adds what was done, measured, fitted, noted, found or ridden, behind what is there.</summary>
    /// <param name="text">The text.</param>
    /// <param name="list">Key of the list, such as <c>bench</c>. States are written by <see cref="Mark"/> alone.</param>
    /// <param name="item">The item, of the list's type.</param>
    /// <exception cref="ArgumentException">The file has no such list, or not of such items.</exception>
    public static Changed Add(string text, string list, Sheet item)
    {
        ArgumentNullException.ThrowIfNull(item);
        if (list == States || Entry.ListEntries(typeof(BuiltBoard))
            .FirstOrDefault(entry => entry.Key == list) is not { Form: EntryForm.Sheets } entry || entry.ValueType != item.GetType())
            throw new ArgumentException($"{item.GetType().Name} cannot be added to {list}.", nameof(list));
        return InOrder(BoardText.Append(text, list, Item(item)), text);
    }

    /// <summary>Changes one value, or adds it where it is missing.</summary>
    /// <param name="text">The text.</param>
    /// <param name="key">Dotted key, such as <c>warranty.until</c> or <c>faults[2].mended</c>; not one of a state.</param>
    /// <param name="value">The value as it would be written.</param>
    public static Changed Change(string text, string key, string value)
    {
        ArgumentNullException.ThrowIfNull(key);
        return key.StartsWith(States, StringComparison.Ordinal)
            ? new(text, new("States are not changed.", "Put the board into a new state."))
            : InOrder(BoardText.ChangeIn(typeof(BuiltBoard), text, key, value), text);
    }

    /// <summary>Writes down how a fault was mended.</summary>
    /// <param name="text">The text.</param>
    /// <param name="number">Number of the fault, from 1.</param>
    /// <param name="how">How, and with what.</param>
    /// <param name="who">Who mended it.</param>
    /// <param name="when">When.</param>
    public static Changed Mend(string text, int number, string how, string who, Moment when)
    {
        var changed = new Changed(text, null);
        foreach (var (key, value) in new[] { ("mended", when.ToString()), ("mended_by", who), ("repair", how) })
        {
            changed = Change(changed.Text, FormattableString.Invariant($"faults[{number}].{key}"), value);
            if (changed.Refusal is not null)
                return changed with { Text = text };
        }

        return changed;
    }

    /// <summary>Puts the board into a state. This is the only way in which a state is written, and it asks for a reason where one is
    /// due.</summary>
    /// <param name="text">The text.</param>
    /// <param name="steps">Steps and checks of the design it was built from.</param>
    /// <param name="design">The design, examined.</param>
    /// <param name="state">The state.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="when">When.</param>
    /// <param name="why">Why.</param>
    public static Changed Mark(
        string text, IReadOnlyList<Step> steps, Examination design, BoardState state, string who, Moment when, string? why)
    {
        // What stands in the text is judged, and not what somebody read from it a while ago.
        if (BuiltFile.ReadText(text, "").Built is not { } built)
            return new(text, new("The file is not in order, so nothing was changed in it.", "Mend the file first."));
        var (marking, refusal) = Readiness.Compute(built, steps, design).Mark(state, who, when, why);
        return marking is null ? new(text, refusal) : InOrder(BoardText.Append(text, States, Item(marking)), text);
    }

    // What does not read afterwards is refused, with the first complaint as the reason.
    static Changed InOrder(Changed changed, string before)
    {
        if (changed.Refusal is not null || changed.Text == before || BuiltFile.ReadText(changed.Text, "").Complaints is not [var first, ..])
            return changed;
        return new(before, new(first.Says, first.Remedy));
    }

    /// <summary>A sheet in braces, as a file writes it; what is not known is left out.</summary>
    internal static string Item(Sheet sheet)
    {
        var pairs = Entry.ListEntries(sheet.GetType()).Select(entry => (entry.Key, Value: Value(entry, entry.Read(sheet))))
            .Where(static pair => pair.Value is not null).Select(static pair => $"{pair.Key}: {pair.Value}").ToList();
        return pairs.Count == 0 ? "{}" : $"{{ {string.Join(", ", pairs)} }}";
    }

    static string? Value(Entry entry, object value) => value switch
    {
        Sheet sheet => Item(sheet) is var written && written != "{}" ? written : null,
        IKnown { IsKnown: false } => null,
        IKnown { Content: Texts texts } => texts.Items.Count == 1 ? Quote(texts.Items[0]) : $"[{string.Join(", ", texts.Items.Select(Quote))}]",
        IKnown { Content: IQuantity quantity } => Quote(Quantity(entry, quantity.Si)),
        IKnown { Content: bool holds } => holds ? "yes" : "no",
        IKnown { Content: Enum word } => Quote(Entry.Word(word)),
        IKnown { Content: IFormattable other } => Quote(other.ToString(null, CultureInfo.InvariantCulture)),
        IKnown known => Quote(known.Content!.ToString()!),
        _ => throw new NotSupportedException($"{entry.Key} has a form that is not written here."),
    };

    // In the unit of the entry's example, as a person would write it, where that gives the value back.
    static string Quantity(Entry entry, double si)
    {
        var unit = entry.Dimension!.Find(entry.Example.Split(' ', 2) is [_, var symbol] ? symbol : "");
        if (unit is null)
            return QuantityText.Write(si, entry.Dimension);
        var text = FormattableString.Invariant($"{unit.FromSi(si):0.######} {unit.Symbol}");
        return QuantityText.Read(
            text, new QuantityRequest(entry.Dimension) { Least = double.MinValue, Greatest = double.MaxValue }) is { IsRead: true } read
            && Math.Abs(read.Si - si) <= 1e-12 * Math.Abs(si) ? text : QuantityText.Write(si, entry.Dimension);
    }

    static string Quote(string value) => BoardText.Quote(value, inFlow: true);
}
