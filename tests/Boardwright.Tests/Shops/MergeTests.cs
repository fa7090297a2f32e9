using Boardwright.Files.Yaml;
using Boardwright.Shops;
using Boardwright.Shops.Merging;

namespace Boardwright.Tests.Shops;

public sealed class MergeTests
{
    static readonly string Tern = File.ReadAllText(Repository.At("examples", "tern", "tern.board.yaml"));

    [Fact]
    public void Any_two_keys_of_a_board_are_changed_by_two_people_at_once_and_nothing_else_moves()
    {
        var leaves = KeyedText.Read(Tern)!.Leaves.Values.ToList();
        Assert.InRange(leaves.Count, 40, 200);
        // Every pair of neighbours, where lines meet, and a spread of the others.
        foreach (var (i, j) in Enumerable.Range(0, leaves.Count - 1)
            .SelectMany(i => new[] { (i, i + 1), (i + 1, i), (i, (7 * i + 3) % leaves.Count) }).Where(pair => pair.Item1 != pair.Item2))
        {
            var (mine, theirs) = (Changed(Tern, leaves[i], "mine"), Changed(Tern, leaves[j], "theirs"));
            var (first, second) = i < j ? (j, i) : (i, j);
            var both = Changed(Changed(Tern, leaves[first], first == i ? "mine" : "theirs"), leaves[second], second == i ? "mine" : "theirs");

            var merge = FileMerge.Compute(Board(Tern), Board(mine), Board(theirs));

            Assert.Empty(merge.Choices);
            Assert.Equal(both, merge.Resolve(Never).Main.Text);
        }
    }

    [Fact]
    public void Any_key_that_both_change_is_the_one_choice_and_either_answer_stands_alone_in_the_text()
    {
        foreach (var leaf in KeyedText.Read(Tern)!.Leaves.Values.Where(leaf => !leaf.Key.StartsWith("comment #", StringComparison.Ordinal)))
        {
            var (mine, theirs) = (Changed(Tern, leaf, "mine"), Changed(Tern, leaf, "theirs"));
            var merge = FileMerge.Compute(Board(Tern), Board(mine), Board(theirs));

            Assert.Equal(leaf.Key, Assert.Single(merge.Choices).Key);
            Assert.Equal(mine, merge.Resolve(_ => MergeSide.Mine).Main.Text);
            Assert.Equal(theirs, merge.Resolve(_ => MergeSide.Theirs).Main.Text);
        }
    }

    [Theory]
    [InlineData("a: 1\nb: 2\n", "a: 1\nb: 2\nc: 3\n", "a: 1\nb: 2\nd: 4\n", "a: 1\nb: 2\nc: 3\nd: 4\n")]
    [InlineData("a: 1\nb: 2\n", "b: 2\n", "a: 1\nb: 3\n", "b: 3\n")]
    [InlineData("a: { b: 1, c: 2 }\n", "a: { b: 1, c: 2, d: 3 }\n", "a: { b: 5, c: 2 }\n", "a: { b: 5, c: 2, d: 3 }\n")]
    [InlineData("a: { b: 1, c: 2 }\n", "a: { c: 2 }\n", "a: { b: 1, c: 5 } # why\n", "a: { c: 5 } # why\n")]
    [InlineData("a: { b: 1, c: 2 }\n", "a: { b: 1 }\n", "a: { b: 4, c: 2 }\n", "a: { b: 4 }\n")]
    [InlineData("a: 1\r\nb: 2\r\n", "a: 3\r\nb: 2\r\n", "a: 1\r\nb: 4\r\n", "a: 3\r\nb: 4\r\n")]
    [InlineData("\uFEFFa: 1\nb: 2\n", "\uFEFFa: 3\nb: 2\n", "\uFEFFa: 1\nb: 4\n", "\uFEFFa: 3\nb: 4\n")]
    [InlineData("a: 1\n# one\nb: 2\n", "a: 1\n# two\nb: 2\n", "a: 1\n# three\nb: 2\n", "a: 1\n# two\n# three\nb: 2\n")]
    [InlineData("- id: a\n  stock: 1\n", "- id: a\n  stock: 1\n- id: b\n  stock: 2\n", "- id: a\n  stock: 5\n- id: c\n  stock: 3\n", "- id: a\n  stock: 5\n- id: c\n  stock: 3\n- id: b\n  stock: 2\n")]
    [InlineData("- id: a\n  bolts: [1, 2]\n  stock: 1\n", "- id: a\n  bolts: [1, 3]\n  stock: 1\n", "- id: a\n  bolts: [1, 2]\n  stock: 4\n", "- id: a\n  bolts: [1, 3]\n  stock: 4\n")]
    public void Changes_of_both_are_in_the_outcome(string before, string mine, string theirs, string both)
    {
        var merge = FileMerge.Compute(Board(before), Board(mine), Board(theirs));

        Assert.Empty(merge.Choices);
        Assert.Equal(both, merge.Resolve(Never).Main.Text);
    }

    [Theory]
    [InlineData("a: 1\n", "a: 2\n", "# gone\nb: 1\n", "a", "1", "2", null)]
    [InlineData("a: 1\n", "a: 1\nb: 2\n", "a: 1\nb: 3\n", "b", null, "2", "3")]
    [InlineData("a: 1\n", "a: 2\n", "a: [\n", "", "a: 1\n", "a: 2\n", "a: [\n")]
    public void What_cannot_be_both_is_a_choice(string before, string mine, string theirs, string key, string? b, string? m, string? t)
    {
        var merge = FileMerge.Compute(Board(before), Board(mine), Board(theirs));

        Assert.Equal(new Choice("x.board.yaml", key, b, m, t), Assert.Single(merge.Choices));
        foreach (var (side, value) in new[] { (MergeSide.Mine, m), (MergeSide.Theirs, t) })
        {
            var text = merge.Resolve(_ => side).Main.Text;
            if (key.Length == 0)
                Assert.Equal(value, text);
            else
                Assert.Equal(value, KeyedText.Read(text)!.Leaves.GetValueOrDefault(key)?.Written);
        }
    }

    [Fact]
    public void Files_that_one_side_added_or_took_out_come_and_go_and_a_route_is_chosen_whole()
    {
        var before = Board("a: 1\n").With("old.yaml", "x: 1\n").With("hill.csv", "1\n2\n");
        var mine = before.With("new.yaml", "y: 1\n").With("hill.csv", "1\n3\n");
        var theirs = new FileSet("x.board.yaml", before.Files.Where(file => file.Path != "old.yaml")).With("hill.csv", "0\n2\n");

        var merge = FileMerge.Compute(before, mine, theirs);

        Assert.Equal(new Choice("hill.csv", "", "1\n2\n", "1\n3\n", "0\n2\n"), Assert.Single(merge.Choices));
        var merged = merge.Resolve(_ => MergeSide.Theirs);
        Assert.Equal(["hill.csv", "new.yaml", "x.board.yaml"], merged.Files.Select(file => file.Path));
        Assert.Equal("0\n2\n", merged.Find("hill.csv")!.Text);
    }

    [Fact]
    public void The_difference_of_lines_leads_from_one_text_to_the_other_and_none_is_shorter()
    {
        foreach (var seed in Enumerable.Range(0, 2000))
        {
            var random = new Random(seed);
            var (old, changed) = (Lines(random), Lines(random));
            var hunks = LineDifference.Compute(old, changed);

            var built = new List<string>();
            var at = 0;
            foreach (var hunk in hunks)
            {
                built.AddRange(old[at..hunk.Old]);
                built.AddRange(changed[hunk.New..(hunk.New + hunk.NewCount)]);
                at = hunk.Old + hunk.OldCount;
            }

            built.AddRange(old[at..]);
            Assert.Equal(changed, built);
            Assert.Equal(old.Count + changed.Count - 2 * Common(old, changed), hunks.Sum(hunk => hunk.OldCount + hunk.NewCount));
        }
    }

    [Fact]
    public void Texts_that_have_little_in_common_are_still_told_apart()
    {
        var (old, changed) = (Enumerable.Range(0, 3000).Select(static n => $"a{n}").ToList(),
            Enumerable.Range(0, 3000).Select(static n => n % 1000 == 0 ? $"a{n}" : $"b{n}").ToList());
        var hunks = LineDifference.Compute(old, changed);

        Assert.Equal(new Hunk(1, 2999, 1, 2999), Assert.Single(hunks));
    }

    [Fact]
    public void A_merge_with_a_side_that_changed_nothing_is_the_other_side()
    {
        foreach (var seed in Enumerable.Range(0, 500))
        {
            var random = new Random(seed);
            var (old, changed) = (Lines(random), Lines(random));
            foreach (var stand in Enum.GetValues<MergeText>())
            {
                Assert.Equal(string.Concat(changed), LineMerge.Merge(old, changed, old, stand));
                Assert.Equal(string.Concat(changed), LineMerge.Merge(old, old, changed, stand));
                Assert.Equal(string.Concat(changed), LineMerge.Merge(old, changed, changed, stand));
            }
        }
    }

    static List<string> Lines(Random random) => [.. Enumerable.Range(0, random.Next(12)).Select(_ => $"{(char)('a' + random.Next(4))}\n")];

    // The textbook table for the longest common subsequence.
    static int Common(List<string> a, List<string> b)
    {
        var table = new int[a.Count + 1, b.Count + 1];
        for (var i = 1; i <= a.Count; i++)
        {
            for (var j = 1; j <= b.Count; j++)
                table[i, j] = a[i - 1] == b[j - 1] ? table[i - 1, j - 1] + 1 : Math.Max(table[i - 1, j], table[i, j - 1]);
        }

        return table[a.Count, b.Count];
    }

    static string Changed(string text, Leaf leaf, string word) =>
        string.Concat(text.AsSpan(0, leaf.Start), leaf.Key.StartsWith("comment ", StringComparison.Ordinal) ? $"# {word}" : word, text.AsSpan(leaf.End));

    static FileSet Board(string text) => FileSet.FromText("x.board.yaml", text);

    static MergeSide Never(Choice choice) => throw new InvalidOperationException($"{choice.Key} was asked for.");
}
