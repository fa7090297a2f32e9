namespace Boardwright.Findings;

/// <summary>The answer to a question about a board: a value with what it rests on, or the entries without which nothing can be said, or
/// word that the question does not arise.</summary>
/// <typeparam name="T">Type of the value.</typeparam>
public sealed class Answer<T>
    where T : notnull
{
    readonly T? value;

    Answer(string id, T? value, bool isKnown, bool isBeside, IReadOnlyList<string> from, IReadOnlyList<string> missing)
    {
        this.value = value;
        (Id, IsKnown, IsBeside, From, Missing) = (id, isKnown, isBeside, from, missing);
    }

    /// <summary>Id under which the answer is quoted by those that rest on it; empty where its own entries are quoted instead.</summary>
    public string Id { get; }
    /// <summary>Whether there is a value.</summary>
    public bool IsKnown { get; }
    /// <summary>Whether the question does not arise on this board.</summary>
    public bool IsBeside { get; }
    /// <summary>Entries and answers it rests on.</summary>
    public IReadOnlyList<string> From { get; }
    /// <summary>Entries that are missing.</summary>
    public IReadOnlyList<string> Missing { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public T Value => IsKnown ? value! : throw new InvalidOperationException($"'{Id}' cannot be said without {string.Join(", ", Missing)}.");

    /// <summary>Asks a question. The function reads everything it needs first and returns anything at all once <see cref="Needs.Unmet"/> is
    /// true.</summary>
    public static Answer<T> Ask(string id, Func<Needs, T?> question)
    {
        var needs = new Needs();
        var answered = question(needs);
        return needs.Beside ? new(id, default, false, true, [], [])
            : needs.Unmet || answered is null ? new(id, default, false, false, needs.RestsOn, needs.Missing)
            : new(id, answered, true, false, needs.RestsOn, []);
    }

    /// <summary>The question does not arise on this board.</summary>
    public static Answer<T> Beside { get; } = new("", default, false, true, [], []);
}
