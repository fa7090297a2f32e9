namespace Boardwright.Findings;

/// <summary>Collects what a question reads: the entries and answers it rests on, and those that are missing, so that all missing ones are
/// named at once.</summary>
public sealed class Needs
{
    readonly List<string> missing = [];
    readonly List<string> read = [];

    /// <summary>Keys that are not known.</summary>
    public IReadOnlyList<string> Missing => missing;
    /// <summary>Keys and ids that were read.</summary>
    public IReadOnlyList<string> RestsOn => read;
    /// <summary>Whether something is missing or has no answer: the values handed out so far are then not to be used.</summary>
    public bool Unmet => missing.Count > 0 || Beside || HasNoAnswer;
    /// <summary>Whether an earlier question had no physical answer, so that this one has none either.</summary>
    public bool HasNoAnswer { get; private set; }
    /// <summary>Whether the question does not arise on this board.</summary>
    public bool Beside { get; private set; }

    /// <summary>Reads an entry.</summary>
    /// <returns>Its value, or the type's default when it is missing; see <see cref="Unmet"/>.</returns>
    public T Read<T>(Known<T> known)
        where T : notnull
    {
        if (known.IsKnown)
        {
            Note(read, known.Key);
            return known.Value;
        }

        Note(missing, known.Key);
        return default!;
    }

    /// <summary>Reads an entry that has a default.</summary>
    public T Read<T>(Known<T> known, T otherwise)
        where T : notnull
    {
        if (known.IsKnown)
            Note(read, known.Key);
        return known.Or(otherwise);
    }

    /// <summary>Reads the first of two entries that is known; when neither is, the first counts as missing.</summary>
    public T Read<T>(Known<T> known, Known<T> instead, Func<T, T> convert)
        where T : notnull =>
        !known.IsKnown && instead.IsKnown ? convert(Read(instead)) : Read(known);

    /// <summary>Reads an earlier answer.</summary>
    /// <returns>Its value, or the type's default when it has none; see <see cref="Unmet"/>.</returns>
    public T Read<T>(Answer<T> answer)
        where T : notnull
    {
        if (answer.IsKnown)
        {
            if (answer.Id.Length > 0)
                Note(read, answer.Id);
            else
                Add(read, answer.From);
            return answer.Value;
        }

        Beside |= answer.IsBeside;
        HasNoAnswer |= !answer.IsBeside && answer.Missing.Count == 0;
        Add(missing, answer.Missing);
        return default!;
    }

    /// <summary>Says that a value is missing.</summary>
    public void Lack(string key) => Note(missing, key);

    static void Add(List<string> list, IReadOnlyList<string> keys)
    {
        foreach (var key in keys)
            Note(list, key);
    }

    static void Note(List<string> list, string key)
    {
        var name = key.Length > 0 ? key : "an entry without a name";
        if (!list.Contains(name))
            list.Add(name);
    }
}
