using System.CommandLine;
using Boardwright.Files;
using Boardwright.Files.Cells;

namespace Boardwright.App.Commands;

/// <summary><c>cell</c>: fits cells to measurements, and tries them on others.</summary>
static class CellCommands
{
    /// <summary>The command with its two parts.</summary>
    public static Verb Build() => new Verb(
        "cell", "Fits cells to measured files, and tries them on others.",
        "boardwright cell fit pulses_25C.csv slow_25C.csv --name lark-21700", "boardwright cell replay shelf/cells.yaml drive_25C.csv --id lark-21700")
    { Fit(), Replay() };

    static Verb Fit()
    {
        var files = Files("Measured files: pulses (counter_Ah) and discharges at constant current (discharged_Ah), of one temperature or several; charges (charged_Ah) give the tail of a charge.");
        var name = new Option<string>("--name") { Description = "Id of the shelf part.", HelpName = "ID", DefaultValueFactory = _ => "fitted-cell" };
        name.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is not { Length: > 0 } id || !char.IsLetterOrDigit(id[0])
                || !id.All(c => char.IsLetterOrDigit(c) || c is '-' or '_' or '.'))
                result.AddError("--name wants a short word of letters, digits, hyphens, points and underlines, such as lark-21700.");
        });
        var temperature = TemperatureOption();
        var target = new Option<string>("--out") { Description = "Shelf file to write; without it the part is printed below the report.", HelpName = "FILE" };
        var command = new Verb(
            "fit", "Fits a cell with two branches to pulses and discharges, and writes it as a shelf part.",
            "boardwright cell fit pulses_25C.csv slow_25C.csv --name lark-21700 --out shelf/lark.yaml")
        { files, name, temperature, target };
        command.SetAction(parsed =>
        {
            var outcome = CellBench.Fit(
                parsed.GetRequiredValue(files), parsed.GetRequiredValue(name), Stated(parsed.GetValue(temperature)));
            if (outcome.Shelf is { } shelf && parsed.GetValue(target) is { } path)
                DurableFile.Write(path, shelf);
            else if (outcome.Shelf is not null)
                outcome = outcome with { Report = $"{outcome.Report}\n{outcome.Shelf}" };
            return Show(parsed, outcome);
        });
        return command;
    }

    static Verb Replay()
    {
        var cell = new Argument<string>("CELL") { Description = "Shelf file with the cell." };
        var files = Files("Measured files: drives, discharges or pulses that begin with the full cell.");
        var id = new Option<string>("--id") { Description = "Id of the cell, where the shelf file has several.", HelpName = "ID" };
        var temperature = TemperatureOption();
        var command = new Verb(
            "replay", "Sends measured currents through a cell, and reports how far its voltage and energy lie from the measured ones.",
            "boardwright cell replay shelf/cells.yaml drive_25C.csv --id lark-21700")
        { cell, files, id, temperature };
        command.SetAction(parsed => Show(parsed, CellBench.Replay(
            parsed.GetRequiredValue(cell), parsed.GetValue(id), parsed.GetRequiredValue(files), Stated(parsed.GetValue(temperature)))));
        return command;
    }

    static Argument<string[]> Files(string description) => new("FILES") { Description = description, Arity = ArgumentArity.OneOrMore };

    static Option<string> TemperatureOption()
    {
        var option = new Option<string>("--temperature") { Description = "Temperature of the cell for files that have none, such as \"25 °C\".", HelpName = "T" };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string>() is { } text && QuantityText.Read(text, Temperature.Dimension).Refusal is { } refusal)
                result.AddError($"--temperature: {refusal.Says} {refusal.Remedy}");
        });
        return option;
    }

    static Temperature? Stated(string? text) => text is null ? null : Temperature.FromSi(QuantityText.Read(text, Temperature.Dimension).Si);

    static int Show(ParseResult parsed, CellOutcome outcome)
    {
        parsed.InvocationConfiguration.Output.Write(outcome.Report);
        foreach (var complaint in outcome.Complaints)
            parsed.InvocationConfiguration.Error.WriteLine(complaint);
        return outcome.Complaints.Count > 0 ? 2 : 0;
    }
}
