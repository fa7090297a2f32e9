namespace Boardwright.Validation;

/// <summary>The comparisons of one topic. To add one, derive a class, put it into the folder of its room and into
/// <see cref="Cases.All"/>.</summary>
public abstract class Case
{
    IReadOnlyList<Check>? checks;

    /// <summary>The room of the core that is compared, such as <c>Drivetrains</c>; <c>Boards</c> for whole boards.</summary>
    public abstract string Room { get; }
    /// <summary>The topic, unique, as a heading.</summary>
    public abstract string Topic { get; }
    /// <summary>What is compared and what is not, in a few sentences.</summary>
    public abstract string About { get; }
    /// <summary>The topic as the name of its page: small letters, digits, and hyphens for blanks.</summary>
    public string Slug => string.Concat(Topic.ToLowerInvariant().Where(static c => char.IsAsciiLetterOrDigit(c) || c is ' ' or '-'))
        .Replace(' ', '-');
    /// <summary>Every check, in the order of the page; computed once.</summary>
    public IReadOnlyList<Check> Checks => checks ??= [.. Compare()];
    /// <summary>Computes the checks.</summary>
    protected abstract IEnumerable<Check> Compare();
}
