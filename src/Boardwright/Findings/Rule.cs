namespace Boardwright.Findings;

/// <summary>Something that should be true of a board.</summary>
/// <typeparam name="TSubject">What the rule looks at.</typeparam>
public sealed class Rule<TSubject>
{
    readonly Func<TSubject, Needs, IEnumerable<Finding>?> check;

    /// <summary>States a rule.</summary>
    /// <param name="id">Stable id, dotted by trade topic.</param>
    /// <param name="where">The entry or place it is about.</param>
    /// <param name="claim">The sentence that should be true.</param>
    /// <param name="why">What happens otherwise, and how the claim is checked: equation and limit.</param>
    /// <param name="source">Where the equation and the limit come from.</param>
    /// <param name="check">Reads what it needs, then answers with findings; <c>null</c> or none where the rule does not apply.</param>
    public Rule(string id, string where, string claim, string why, Source source, Func<TSubject, Needs, IEnumerable<Finding>?> check)
    {
        (Id, Where, Claim, Why, Source) = (id, where, claim, why, source);
        this.check = check;
    }

    /// <summary>Stable id, dotted by trade topic.</summary>
    public string Id { get; }
    /// <summary>The entry or place it is about.</summary>
    public string Where { get; }
    /// <summary>The sentence that should be true.</summary>
    public string Claim { get; }
    /// <summary>What happens otherwise, and how the claim is checked.</summary>
    public string Why { get; }
    /// <summary>Where the equation and the limit come from.</summary>
    public Source Source { get; }

    /// <summary>Judges a subject.</summary>
    /// <param name="subject">The subject.</param>
    /// <param name="unchosen">Names the place of an entry for which nothing was chosen at all; the sentence then asks for a choice there
    /// rather than for each entry.</param>
    /// <returns>The findings; when something is missing one finding of level <see cref="Level.Measure"/> beside those that could be
    /// made.</returns>
    public IReadOnlyList<Finding> Judge(TSubject subject, Func<string, string?>? unchosen = null)
    {
        var needs = new Needs();
        // The check may be lazy, so it is run to its end before the needs are looked at.
        var findings = check(subject, needs)?.ToList() ?? [];
        if (needs.Beside || needs.HasNoAnswer)
            return [];
        findings = findings.ConvertAll(f => f with { From = needs.RestsOn });
        if (needs.Missing.Count == 0)
            return findings;
        return
        [
            .. findings,
            new Finding
            {
                Rule = Id,
                Level = Level.Measure,
                Where = Where,
                Needs = [.. needs.Missing],
                From = needs.RestsOn,
                Says = Phrases.CannotBeSaid(Claim, Phrases.Sorted(needs.Missing, unchosen)),
                Remedy = Phrases.FillIn(Phrases.Sorted(needs.Missing, unchosen)),
            },
        ];
    }

    /// <summary>A finding of this rule.</summary>
    public Finding Found(Level level, FormattableString says, FormattableString? remedy = null, Amount? value = null, Amount? limit = null,
        string? where = null, Change? mend = null) =>
        new()
        {
            Rule = Id,
            Level = level,
            Where = where ?? Where,
            Says = says,
            Value = value,
            Limit = limit,
            Mend = mend,
            Remedy = remedy is null ? default(Phrase) : remedy,
        };
}

static class Phrases
{
    /// <summary>Parts to choose and values to find out, each once.</summary>
    public static (IReadOnlyList<string> Parts, IReadOnlyList<string> Values) Sorted(
        IReadOnlyList<string> missing, Func<string, string?>? unchosen)
    {
        var places = missing.Select(key => (Key: key, Place: unchosen?.Invoke(key))).ToArray();
        return ([.. places.Where(p => p.Place is not null).Select(p => "the " + p.Place!.Replace('_', ' ')).Distinct(StringComparer.Ordinal)],
            [.. places.Where(p => p.Place is null).Select(p => p.Key)]);
    }

    public static FormattableString CannotBeSaid(string claim, (IReadOnlyList<string> Parts, IReadOnlyList<string> Values) missing)
    {
        var (parts, values) = missing;
        var chosen = parts.Count == 0 ? "" : $"{List(parts)} {(parts is ["the wheels"] || parts.Count > 1 ? "are" : "is")} chosen";
        var known = values.Count == 0 ? "" : $"{List(values)} {(values.Count == 1 ? "is" : "are")} known";
        var both = chosen.Length > 0 && known.Length > 0 ? " and " : "";
        return $"Cannot be said until {chosen}{both}{known}: {Uncapitalised(claim)}";
    }

    public static FormattableString FillIn((IReadOnlyList<string> Parts, IReadOnlyList<string> Values) missing)
    {
        var (parts, values) = missing;
        return parts.Count == 0 ? $"Measure or look up {List(values)}."
            : values.Count == 0 ? (FormattableString)$"Choose {List(parts)}."
            : $"Choose {List(parts)}; measure or look up {List(values)}.";
    }

    static string List(IReadOnlyList<string> keys) => keys.Count switch
    {
        1 => keys[0],
        _ => string.Join(", ", keys.Take(keys.Count - 1)) + " and " + keys[^1],
    };

    static string Uncapitalised(string claim) => char.ToLowerInvariant(claim[0]) + claim[1..];
}
