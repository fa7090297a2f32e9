using System.Text.RegularExpressions;

namespace Boardwright.Tests.House;

public sealed partial class NameTests
{
    // An entry point must be called Program; the database tools derive migrations' names from the tables; a test file may be linked into
    // two projects.
    static readonly string[] Forced = ["Program"];

    static IEnumerable<(string Name, string Space, string File)> Types =>
        from file in Repository.CSharpFiles
        let text = File.ReadAllText(file)
        let space = Namespace().Match(text).Groups["name"].Value
        from Match match in Declaration().Matches(text)
        select (match.Groups["name"].Value, space, file);

    [Fact]
    public void A_type_name_means_one_thing()
    {
        // Parts of one type and its generic form share name and namespace.
        var twice = from type in Types
                    where !Forced.Contains(type.Name)
                    group type by type.Name into same
                    where same.Select(t => t.Space).Distinct().Count() > 1
                    || same.Select(t => Path.GetFileName(t.File)).Distinct().Count() > 1 && !IsPartial(same)
                    select $"{same.Key}: {string.Join(", ", same.Select(t => Path.GetRelativePath(Repository.Root, t.File)))}";

        Assert.Empty(twice);
    }

    static bool IsPartial(IEnumerable<(string Name, string Space, string File)> same) =>
        same.All(t => Regex.IsMatch(File.ReadAllText(t.File), $@"\bpartial \w+(?: \w+)? {t.Name}\b", RegexOptions.None, TimeSpan.FromMinutes(1)));

    [GeneratedRegex(@"^namespace (?<name>[\w.]+);", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Namespace();

    [GeneratedRegex(@"^ *(?:(?:public|internal|private|protected|file|static|sealed|abstract|partial|readonly|ref|unsafe) )*(?:class|record struct|record class|record|struct|enum|interface) (?<name>\w+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 60_000)]
    private static partial Regex Declaration();
}
