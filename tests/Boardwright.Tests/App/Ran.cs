using Boardwright.App;
using Boardwright.App.Reports;

namespace Boardwright.Tests.App;

/// <summary>Runs the program inside the test, with what it writes captured.</summary>
static class Ran
{
    public static (int Code, string Out, string Error) With(params string[] args) => Answering(null, args);

    /// <summary>The same with somebody at the terminal, who types these lines.</summary>
    public static (int Code, string Out, string Error) Answering(string? typed, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var input = new StringReader(typed ?? "");
        var code = Program.Run(args, new Terminal(output, error) { In = input, IsInteractive = typed is not null });
        return (code, output.ToString(), error.ToString());
    }
}

/// <summary>A folder that is gone when the test is over.</summary>
sealed class Folder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("boardwright-").FullName;

    public string Write(string name, string text)
    {
        var file = At(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
        return file;
    }

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
