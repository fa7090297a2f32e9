namespace Boardwright.Tests.App;

/// <summary>The shop on the command line, in a folder of its own.</summary>
public sealed class ShopCommandsTests : IDisposable
{
    const string Heron = "boardwright: 1\nname: Heron\nshelf: [shelf/]\nbrief:\n  rider_mass: 80 kg   # with shoes\n  cruise_speed: 25 km/h\n";
    const string Motors = "- id: m1\n  kind: motor\n  name: Larkmere 63\n  price: 92 EUR\n  stock: 4\n";
    readonly Folder folder = new();

    public ShopCommandsTests()
    {
        folder.Write("heron.board.yaml", Heron);
        folder.Write("shelf/motors.yaml", Motors);
    }

    [Fact]
    public void A_board_is_kept_listed_shown_and_written_with_its_shelf_as_it_was()
    {
        Assert.Equal((0, "heron: revision 1\n", ""), Shop("save", File("heron.board.yaml"), "--why", "begun", "--by", "Ada"));
        Assert.Matches(@"^heron  board  1  \d{4}-\d\d-\d\d \d\d:\d\dZ  Ada  begun\n$", Shop("list").Out);
        Assert.Equal((0, Heron, ""), Shop("show", "HERON"));

        Assert.Equal(0, Shop("show", "heron", "--out", File("out")).Code);
        Assert.Equal(Heron, System.IO.File.ReadAllText(File("out/heron.board.yaml")));
        Assert.Equal(Motors, System.IO.File.ReadAllText(File("out/shelf/motors.yaml")));
    }

    [Fact]
    public void People_are_let_in_given_another_password_and_sent_away()
    {
        Assert.Equal((0, "Nobody yet. Add yourself with: boardwright shop people add NAME\n", ""), Shop("people", "list"));
        folder.Write("word", "a few words in a row\n");
        folder.Write("short", "too short\n");

        Assert.Equal((0, "Ada may sign in.\n", ""), Shop("people", "add", "Ada", "--password-from", File("word")));
        Assert.Equal((0, "Bo Ö. may sign in.\n", ""), Shop("people", "add", "Bo Ö.", "--password-from", File("word")));
        Assert.Equal("Somebody of that name may sign in already.\nGive another one.\n", Shop("people", "add", "ADA", "--password-from", File("word")).Error);
        Assert.StartsWith("A password has at least 12 letters", Shop("people", "password", "ada", "--password-from", File("short")).Error, StringComparison.Ordinal);
        Assert.StartsWith("There is nobody at this terminal", Shop("people", "add", "Cy").Error, StringComparison.Ordinal);
        Assert.Equal(0, Shop("people", "password", "ada", "--password-from", File("word")).Code);
        Assert.Equal(0, Shop("people", "remove", "ada").Code);
        Assert.Equal("Bo Ö.\n", Shop("people", "list").Out);
        Assert.Equal(2, Shop("people", "remove", "ada").Code);
    }

    [Fact]
    public void Two_people_with_files_of_their_own_both_get_their_changes_into_shop_and_file()
    {
        folder.Write("bo/heron.board.yaml", Heron.Replace("25 km/h", "28 km/h", StringComparison.Ordinal));
        folder.Write("bo/shelf/motors.yaml", Motors);
        Shop("save", File("heron.board.yaml"), "--why", "begun", "--by", "Ada");
        Shop("save", File("bo/heron.board.yaml"), "--why", "faster", "--by", "Bo");
        folder.Write("heron.board.yaml", Heron.Replace("80 kg", "85 kg", StringComparison.Ordinal));

        var (code, said, _) = Shop("save", File("heron.board.yaml"), "--why", "heavier", "--by", "Ada");

        Assert.Equal(0, code);
        Assert.Equal($"{File("heron.board.yaml")} now holds what others saved too\nheron: revision 3, merged with what others saved\nheron.board.yaml\n  brief.cruise_speed: 25 km/h -> 28 km/h\n", said);
        Assert.Equal(Heron.Replace("80 kg", "85 kg", StringComparison.Ordinal).Replace("25 km/h", "28 km/h", StringComparison.Ordinal),
            System.IO.File.ReadAllText(File("heron.board.yaml")));
        Assert.Equal("heron: as revision 3; nothing to save\n", Shop("save", File("heron.board.yaml"), "--why", "again", "--by", "Ada").Out);
    }

    [Fact]
    public void The_same_key_changed_by_two_is_asked_for_and_nothing_is_saved_until_it_is_answered()
    {
        Shop("save", File("heron.board.yaml"), "--why", "begun", "--by", "Ada");
        folder.Write("heron.board.yaml", Heron.Replace("80 kg", "85 kg", StringComparison.Ordinal));
        Shop("save", File("heron.board.yaml"), "--why", "heavier", "--by", "Ada");
        folder.Write("heron.board.yaml", Heron.Replace("80 kg", "90 kg", StringComparison.Ordinal));

        var (code, said, error) = Shop("save", File("heron.board.yaml"), "--why", "heaviest", "--by", "Bo", "--onto", "1");
        Assert.Equal((1, ""), (code, said));
        Assert.Contains("  brief.rider_mass\n    was     80 kg\n    mine    90 kg\n    theirs  85 kg\n", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Bo", Shop("log", "heron").Out, StringComparison.Ordinal);

        Assert.Equal(0, Shop("save", File("heron.board.yaml"), "--why", "heaviest", "--by", "Bo", "--onto", "1", "--prefer", "mine").Code);
        Assert.Contains("90 kg   # with shoes", Shop("show", "heron").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Revisions_are_logged_compared_restored_branched_copied_renamed_deleted_and_brought_back()
    {
        Shop("save", File("heron.board.yaml"), "--why", "begun", "--by", "Ada");
        folder.Write("heron.board.yaml", Heron.Replace("80 kg", "85 kg", StringComparison.Ordinal));
        Shop("save", File("heron.board.yaml"), "--why", "heavier", "--by", "Ada");

        Assert.Equal("heron, revision 1 to 2\nheron.board.yaml\n  brief.rider_mass: 80 kg -> 85 kg\n", Shop("diff", "heron").Out);
        Assert.Contains("     5 -   rider_mass: 80 kg   # with shoes\n     5 +   rider_mass: 85 kg   # with shoes\n", Shop("diff", "heron", "1", "2", "--lines").Out, StringComparison.Ordinal);
        Assert.Equal("heron: revision 3, which is revision 1 again\n", Shop("restore", "heron", "1").Out);
        Assert.Equal("Egret: revision 1, from revision 2 of heron\n", Shop("branch", "heron", "Egret", "--revision", "2").Out);
        Assert.EndsWith("Branched from revision 2 of heron.\n", Shop("log", "Egret").Out, StringComparison.Ordinal);
        Assert.Equal("Plover: revision 1\n", Shop("duplicate", "heron", "Plover").Out);
        Assert.Equal("Dunlin: revision 2, formerly Plover\n", Shop("rename", "Plover", "Dunlin").Out);
        Assert.Contains("bring-back \"Dunlin\"", Shop("delete", "dunlin", "--why", "no use").Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Dunlin", Shop("list").Out, StringComparison.Ordinal);
        Assert.Contains("deleted: no use", Shop("list", "--all").Out, StringComparison.Ordinal);
        Assert.Equal("Dunlin: revision 4\n", Shop("bring-back", "dunlin").Out);
        Assert.Equal(["3", "2", "1"], Shop("log", "heron").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' ')[0]));
    }

    [Fact]
    public void The_shelf_is_searched_and_its_stock_and_prices_are_written()
    {
        Shop("save", File("shelf/motors.yaml"), "--why", "what lies there");

        Assert.Equal((0, "m1  motor  Larkmere 63    92 EUR  4 there\n", ""), Shop("find", "LARKMERE"));
        Assert.Equal("m1.stock: 3\nm1.price: 95 EUR\n", Shop("find", "m1", "--stock", "3", "--price", "95 EUR").Out);
        Assert.Equal(Motors.Replace("92", "95", StringComparison.Ordinal).Replace("stock: 4", "stock: 3", StringComparison.Ordinal), Shop("show", "motors").Out);
        Assert.Equal(1, Shop("find", "nothing").Code);
        Assert.Equal(2, Shop("find", "nothing", "--stock", "1").Code);
    }

    [Fact]
    public void A_shop_is_exported_imported_backed_up_and_recovered()
    {
        Shop("save", File("heron.board.yaml"), "--why", "begun");
        Assert.Equal(0, Shop("export", File("folder")).Code);
        Assert.Equal(0, Ran.With("shop", "import", File("folder"), "--shop", File("second.db")).Code);
        Assert.Equal(Shop("log", "heron"), Ran.With("shop", "log", "heron", "--shop", File("second.db")));
        Assert.Equal(0, Shop("backup", File("copy.db")).Code);
        Shop("delete", "heron", "--why", "a slip");

        Assert.Contains("What was there before is in", Shop("recover", File("copy.db")).Out, StringComparison.Ordinal);
        Assert.StartsWith("heron", Shop("list").Out, StringComparison.Ordinal);
        Assert.Equal(2, Shop("recover", File("nowhere.db")).Code);
        Assert.Equal(2, Shop("import", File("folder")).Code);
    }

    [Fact]
    public void What_is_wrong_is_said_in_words_with_a_remedy_and_without_a_trace()
    {
        folder.Write("text.db", "no database at all, but long enough to be looked at as if it were one");
        Shop("save", File("heron.board.yaml"), "--why", "begun");
        foreach (var (args, word) in new (string[], string)[]
        {
            (["show", "hero"], "Was heron meant?"),
            (["show", "heron", "--revision", "7"], "has no revision 7"),
            (["save", File("nowhere.board.yaml"), "--why", "x"], "cannot be read"),
            (["save", File("heron.board.yaml"), "--as", "other", "--why", " "], "who made it and why"),
            (["list", "--shop", File("text.db")], "is not a database"),
            (["list", "--shop", folder.Path], "is a folder"),
            (["list", "--shop", "Host=127.0.0.1;Port=1;Password=secret"], "does not answer"),
            (["list", "--shop", "Host=x;Nonsense=y"], "connection string"),
        })
        {
            var (code, said, error) = args.Contains("--shop", StringComparer.Ordinal) ? Ran.With(["shop", .. args]) : Shop(args);
            Assert.Equal((2, ""), (code, said));
            Assert.Contains(word, error.Replace('\n', ' '), StringComparison.Ordinal);
            Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
            Assert.DoesNotContain("secret", error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_help_of_a_part_names_the_whole_command()
    {
        Assert.Contains("\n  boardwright shop save FILE [options]\n", Ran.With("shop", "save", "--help").Out, StringComparison.Ordinal);
        Assert.Contains("--shop PLACE", Ran.With("shop", "save", "--help").Out, StringComparison.Ordinal);
    }

    public void Dispose() => folder.Dispose();

    (int Code, string Out, string Error) Shop(params string[] args) => Ran.With(["shop", .. args, "--shop", File("shop.db")]);

    string File(string name) => folder.At(name);
}
