using System.Text;
using Boardwright.UsualValues;

namespace Boardwright.App.Docs;

/// <summary>The page of the guide that lists every usual value, and what has none.</summary>
static class UsualValuesPage
{
    public static string Write()
    {
        var text = new StringBuilder($"{GeneratedPages.Mark}\n").Append("""
            # Usual values

            Listings do not print everything that a figure rests on. For what they leave out the program takes a **usual value** from what the
            board file does state, and says so: the report counts them, `check --all` lists them, the result document has them under
            `usual_values` and names those that each figure rests on, the workbench shows them in the empty fields.

            - A stated value always wins, also a worse one.
            - Each follows from what is stated; none rests on another usual value.
            - The spread is one standard deviation ×/÷ f: two cases in three lie between the value divided by f and the value times f.
              It widens the range of every figure that rests on it.
            - What a rule finds fine is tried again with each usual value two spreads away, either way. If it no longer holds, the finding asks for the value.
            - No paper prints one as a fact.

            The test `ListingCoverageTests` draws 200 boards from tables of motors and cells and from ranges of the road, leaves out what
            listings do not print, and counts how often the figure of the whole board lies in the range that the program gives. The ranges
            are meant to hold nine times out of ten; [the counts](../../tests/Boardwright.Tests/UsualValues/listing-coverage.txt).

            ## What is taken

            | entry | from | value | ×/÷ | holds for | source |
            | --- | --- | --- | ---: | --- | --- |

            """.ReplaceLineEndings("\n"));
        foreach (var row in UsualTable.All)
            text.Append($"| `{row.Key}` | {Cell(row.Inputs)} | {Cell(row.Equation)} | {(row.Factor > 1.0005 ? FormattableString.Invariant($"{row.Factor:0.0##}") : "")} | {Cell(row.Validity)} | {Cell(row.Source.Text)} |\n");
        text.Append("""

            A plug whose `contact_resistance` is not stated counts with 0.4 mΩ a pair (round contacts of 4 to 6 mm, new; common practice, no source).

            ## What has none

            | entries | why |
            | --- | --- |

            """.ReplaceLineEndings("\n"));
        foreach (var (what, why) in UsualTable.Never)
            text.Append($"| {Cell(what)} | {Cell(why)} |\n");
        return text.ToString();
    }

    static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal);
}
