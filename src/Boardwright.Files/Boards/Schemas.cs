using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Boardwright.Parts;

namespace Boardwright.Files.Boards;

/// <summary>JSON Schemas (draft 2020-12) of the kinds of file, made from the entries, so that editors complete and check them.</summary>
public static class Schemas
{
    const string Number = @"(?:[+\-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+\-]?[0-9]+)?|[+\-]?(?:[0-9]+[ \-])?[0-9]+\/[0-9]+)";
    const string Gauge = @"AWG ?(?:[0-9]{1,2}|[1-4]\/0|000?0?)|(?:[0-9]{1,2}|[1-4]\/0|000?0?) ?AWG";

    static readonly JsonSerializerOptions Layout =
        new() { WriteIndented = true, IndentSize = 2, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema of a board file.</summary>
    public static string Board()
    {
        var definitions = new Definitions();
        var board = definitions.Sheet(typeof(Board));
        ((JsonObject)board["properties"]!).Insert(0, BoardFile.VersionKey, new JsonObject
        {
            ["const"] = Parts.Board.Version,
            ["description"] = "Version of the file format.",
        });
        board["required"] = new JsonArray(BoardFile.VersionKey);
        return Document("A board of Boardwright: what the rider wants, the parts chosen and how they are joined.", board, definitions);
    }

    /// <summary>The schema of a shelf file.</summary>
    public static string Shelf()
    {
        var definitions = new Definitions();
        var cases = new JsonArray();
        foreach (var (kind, type) in PartKinds.OnShelf)
        {
            cases.Add(new JsonObject
            {
                ["if"] = new JsonObject { ["properties"] = new JsonObject { [SheetReader.Kind] = new JsonObject { ["const"] = kind } } },
                ["then"] = definitions.ShelfPart(kind, type),
            });
        }

        return Document(
            "A shelf file of Boardwright: a list of parts.",
            new JsonObject
            {
                ["type"] = "array",
                ["items"] = new JsonObject
                {
                    ["type"] = "object",
                    ["required"] = new JsonArray(SheetReader.Id, SheetReader.Kind),
                    ["properties"] = new JsonObject
                    {
                        [SheetReader.Kind] = new JsonObject
                        {
                            ["enum"] = Words(PartKinds.OnShelf.Keys),
                            ["description"] = "What kind of part it is.",
                        },
                    },
                    ["allOf"] = cases,
                },
            },
            definitions);
    }

    /// <summary>The schema of the file of a built board.</summary>
    public static string Built()
    {
        var definitions = new Definitions();
        var built = definitions.Sheet(typeof(Builds.BuiltBoard));
        ((JsonObject)built["properties"]!).Insert(0, BoardFile.VersionKey, new JsonObject
        {
            ["const"] = Parts.Board.Version,
            ["description"] = "Version of the file format.",
        });
        built["required"] = new JsonArray(BoardFile.VersionKey, "serial");
        return Document("A board that was built with Boardwright's papers: what is in it, who did what when, what was measured, how it was ridden.", built, definitions);
    }

    static string Document(string title, JsonObject body, Definitions definitions)
    {
        var document = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = title,
        };
        foreach (var (key, value) in body.ToArray())
        {
            body.Remove(key);
            document[key] = value;
        }

        document["$defs"] = definitions.Finished();
        return document.ToJsonString(Layout) + "\n";
    }

    /// <summary>A word of a choice as it may be written: a hyphen and a space are alike.</summary>
    static IEnumerable<string> Spellings(string word) =>
        new[] { word, word.Replace('-', ' '), word.Replace(' ', '-') }.Distinct(StringComparer.Ordinal);

    static JsonArray Words(IEnumerable<string> words) => [.. words.Select(static word => (JsonNode)word)];

    static JsonObject Any(params IEnumerable<JsonNode> choices) => new() { ["anyOf"] = new JsonArray([.. choices]) };

    static JsonObject ReferTo(string name) => new() { ["$ref"] = $"#/$defs/{name}" };

    /// <summary>The pattern of a quantity: a number, at most one space, a unit in any spelling.</summary>
    internal static string Pattern(Dimension dimension)
    {
        var spellings = dimension.Units.SelectMany(static unit => unit.Spellings.Prepend(unit.Symbol))
            .Where(static spelling => spelling.Length > 0).Select(Escape);
        var pattern = $"{Number} ?(?:{string.Join('|', spellings)})";
        return dimension == Area.Dimension ? $"^(?:{pattern}|{Gauge})$" : $"^{pattern}$";
    }

    static string Escape(string literal) =>
        string.Concat(literal.Select(static c => @"\^$.|?*+()[]{}/".Contains(c) ? @"\" + c : c.ToString()));

    /// <summary>Definitions that are referred to by name, each written once.</summary>
    sealed class Definitions
    {
        readonly SortedDictionary<string, JsonObject> named = new(StringComparer.Ordinal);

        public JsonObject Finished()
        {
            var all = new JsonObject();
            foreach (var (name, definition) in named)
                all[name] = definition;
            return all;
        }

        public JsonObject Sheet(Type type)
        {
            var properties = new JsonObject();
            foreach (var entry in Entry.ListEntries(type))
                properties[entry.Key] = Property(entry);
            foreach (var joined in JoinedEntry.Within(type))
            {
                properties[joined.Key] = new JsonObject
                {
                    ["type"] = new JsonArray("string", "object"),
                    ["description"] = joined.Says,
                    ["examples"] = new JsonArray(joined.Example),
                };
            }

            return Closed(properties);
        }

        public JsonObject ShelfPart(string kind, Type type) => Once($"shelf_{kind}", () =>
        {
            var part = Sheet(type);
            var properties = (JsonObject)part["properties"]!;
            properties.Remove("count");
            properties.Insert(0, SheetReader.Id, new JsonObject { ["type"] = "string", ["pattern"] = @"^[\p{L}\p{N}][\p{L}\p{N}._\-]*$", ["description"] = "Id of the part, unique on the shelf." });
            properties.Insert(1, SheetReader.Kind, new JsonObject { ["const"] = kind });
            properties.Insert(2, SheetReader.Use, new JsonObject { ["type"] = "string", ["description"] = $"Id of another {kind} whose entries hold where this part has none." });
            return part;
        });

        static JsonObject Closed(JsonObject properties) => new()
        {
            ["type"] = "object",
            ["properties"] = properties,
            ["additionalProperties"] = false,
        };

        JsonObject Once(string name, Func<JsonObject> definition)
        {
            if (named.TryAdd(name, []))
                named[name] = definition();
            return ReferTo(name);
        }

        JsonObject Property(Entry entry)
        {
            var schema = entry.Form switch
            {
                EntryForm.Sheet when entry.ValueType.IsSubclassOf(typeof(Part)) => Slot(entry.ValueType),
                EntryForm.Sheet => Any(Once($"sheet_{Entry.Snake(entry.ValueType.Name)}", () => Sheet(entry.ValueType)), Nothing()),
                EntryForm.Sheets => Any(
                    new JsonObject
                    {
                        ["type"] = "array",
                        ["items"] = entry.ValueType.IsSubclassOf(typeof(Part)) ? Slot(entry.ValueType) : Once($"sheet_{Entry.Snake(entry.ValueType.Name)}", () => Sheet(entry.ValueType)),
                    },
                    Nothing()),
                EntryForm.NamedSheets => Any(
                    new JsonObject
                    {
                        ["type"] = "object",
                        ["additionalProperties"] = Once($"sheet_{Entry.Snake(entry.ValueType.Name)}", () => Sheet(entry.ValueType)),
                    },
                    Nothing()),
                EntryForm.Quantity => Framed(Quantity(entry.Dimension!), "known_" + NameOf(entry.Dimension!)),
                _ => Framed(Plain(entry), NameOf(entry)),
            };
            schema["description"] = entry.About.Measure is { } measure ? $"{entry.About.Says} To measure: {measure}" : entry.About.Says;
            if (entry.Example.Length > 0
                && entry.Form is not (EntryForm.Choice or EntryForm.Sheet or EntryForm.Sheets or EntryForm.NamedSheets))
                schema["examples"] = new JsonArray(
                    entry.Form == EntryForm.Count ? int.Parse(entry.Example, CultureInfo.InvariantCulture) : entry.Example);
            return schema;
        }

        JsonObject Slot(Type type)
        {
            var kind = PartKinds.WordOf(type);
            var part = Once($"part_{kind}", () =>
            {
                var inline = Sheet(type);
                var properties = (JsonObject)inline["properties"]!;
                properties.Insert(0, SheetReader.Kind, new JsonObject { ["const"] = kind });
                if (type != typeof(Pack))
                    properties.Insert(1, SheetReader.Use, new JsonObject { ["type"] = "string", ["description"] = $"Id of a {kind} on the shelf, whose entries hold where none are written here." });
                return inline;
            });
            return type == typeof(Pack)
                ? Any(part, new JsonObject { ["type"] = "string", ["pattern"] = "^[0-9]+ ?[sS] ?[0-9]+ ?[pP]( \\?)?$", ["description"] = "Cells in series and parallel, such as 12S4P." }, Nothing())
                : Any(new JsonObject { ["type"] = "string", ["description"] = $"Id of a {kind} on the shelf." }, part, Nothing());
        }

        JsonObject Plain(Entry entry) => entry.Form switch
        {
            EntryForm.Count => new() { ["type"] = "integer", ["minimum"] = entry.Least, ["maximum"] = entry.Greatest },
            EntryForm.Text => Once("text", static () => new() { ["type"] = new JsonArray("string", "number", "boolean") }),
            EntryForm.Choice => new() { ["enum"] = Words(entry.Choices.SelectMany(Spellings)) },
            EntryForm.YesNo => new() { ["enum"] = new JsonArray("yes", "no", true, false) },
            EntryForm.Money => Once("money", static () => new() { ["type"] = "string", ["pattern"] = @"^[0-9]+(?:\.[0-9]+)? [A-Z]{3}$", ["description"] = "An amount and a currency in three capital letters." }),
            EntryForm.Moment => Once("moment", static () => new() { ["type"] = "string", ["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}(?:[ T][0-9]{2}:[0-9]{2})?$", ["description"] = "A day, with or without the time." }),
            EntryForm.HourlyRate => Once("hourly_rate", static () => new() { ["type"] = "string", ["pattern"] = @"^[0-9]+(?:\.[0-9]+)? [A-Z]{3}\/h$", ["description"] = "An amount for an hour and a currency in three capital letters." }),
            EntryForm.Texts => Any(Once("text", static () => new() { ["type"] = new JsonArray("string", "number", "boolean") }),
                new JsonObject { ["type"] = "array", ["items"] = ReferTo("text") }),
            EntryForm.Quantities => Any(Quantity(entry.Dimension!), List(Quantity(entry.Dimension!))),
            EntryForm.Curve => new()
            {
                ["type"] = "object",
                ["propertyNames"] = Quantity(entry.Over!),
                ["additionalProperties"] = Quantity(entry.Dimension!),
                ["minProperties"] = 2,
            },
            EntryForm.ResistanceTable => Any(
                Quantity(entry.Dimension!),
                new JsonObject
                {
                    ["type"] = "object",
                    ["properties"] = new JsonObject { ["temperatures"] = List(Quantity(Temperature.Dimension)) },
                    ["patternProperties"] = new JsonObject
                    {
                        [Pattern(Fraction.Dimension)] = Any(
                        Quantity(entry.Dimension!), List(Quantity(entry.Dimension!)))
                    },
                    ["additionalProperties"] = false,
                }),
            EntryForm.RollingTable => Any(
                Quantity(entry.Dimension!),
                new JsonObject
                {
                    ["type"] = "object",
                    ["properties"] = new JsonObject(
                        Enum.GetValues<Surface>().SelectMany(surface => Spellings(Entry.Word(surface)))
                        .Select(word => KeyValuePair.Create(word, (JsonNode?)Quantity(entry.Dimension!)))),
                    ["additionalProperties"] = false,
                }),
            _ => throw new NotSupportedException($"{entry.Key} has a form that schemas do not hold."),
        };

        /// <summary>A value alone, or one that says how well it is known.</summary>
        JsonObject Framed(JsonObject plain, string? name)
        {
            JsonObject Frame() => Any(
                plain,
                Once("guess", static () => new() { ["type"] = "string", ["pattern"] = @"^[^ ].* \?$", ["description"] = "A guess: the value with a question mark behind it." }),
                new JsonObject
                {
                    ["type"] = "object",
                    ["properties"] = new JsonObject
                    {
                        ["value"] = plain.DeepClone(),
                        ["give"] = Once("give", static () => new() { ["type"] = new JsonArray("string", "number"), ["description"] = "One standard deviation: a percentage of the value, or with the value's own unit." }),
                        ["from"] = Once("from", static () =>
                            new() { ["enum"] = Words(Entry.StatedOrigins.Select(origin => Entry.Word(origin))), ["description"] = "Where the value comes from." }),
                    },
                    ["required"] = new JsonArray("value"),
                    ["additionalProperties"] = false,
                });
            return name is null ? Frame() : Once(name, Frame);
        }

        JsonObject Quantity(Dimension dimension) => Once(NameOf(dimension), () =>
        {
            var units = string.Join(", ", dimension.Units.Select(static unit => unit.Symbol).Where(static symbol => symbol.Length > 0));
            var text = new JsonObject { ["type"] = "string", ["pattern"] = Pattern(dimension) };
            var isBare = dimension.Find("") is not null || dimension == SpeedConstant.Dimension;
            var schema = isBare ? Any(new JsonObject { ["type"] = "number" }, text) : text;
            schema["description"] = $"{char.ToUpperInvariant(QuantityText.WithArticle(dimension)[0])}{QuantityText.WithArticle(dimension)[1..]}, in {units}{(dimension == Area.Dimension ? ", or a wire gauge such as AWG 12" : "")}.";
            schema["examples"] = new JsonArray(dimension.Example);
            return schema;
        });

        static JsonObject List(JsonObject items) => new() { ["type"] = "array", ["items"] = items, ["minItems"] = 1 };

        static JsonObject Nothing() => new() { ["type"] = "null" };

        /// <summary>The name of a definition that entries of the same form share; none where each has bounds or words of its own.</summary>
        static string? NameOf(Entry entry) => entry.Form switch
        {
            EntryForm.Text or EntryForm.Texts or EntryForm.Money or EntryForm.HourlyRate or EntryForm.YesNo or EntryForm.Moment =>
                "known_" + Entry.Snake(entry.Form.ToString()),
            EntryForm.Quantities => $"known_{NameOf(entry.Dimension!)}_list",
            EntryForm.Count => FormattableString.Invariant($"known_count_{entry.Least:0}_to_{entry.Greatest:0}"),
            _ => null,
        };

        static string NameOf(Dimension dimension) => dimension.Name.Replace(' ', '_');
    }
}
