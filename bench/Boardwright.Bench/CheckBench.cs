using BenchmarkDotNet.Attributes;
using Boardwright.Files;
using Boardwright.Parts;
using Boardwright.Spreads;

namespace Boardwright.Bench;

/// <summary>What a check of Tern is made of. The examination is the unit that the others are told in.</summary>
[MemoryDiagnoser]
[ShortRunJob]
public class CheckBench
{
    string path = "";
    Board board = new();
    Examination examination = Examination.Of(new Board().Named());

    [GlobalSetup]
    public void Read()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Boardwright.slnx")))
            folder = folder.Parent;
        path = Path.Combine(folder?.FullName ?? ".", "examples", "tern", "tern.board.yaml");
        board = BoardFile.Read(path).Board ?? throw new InvalidOperationException($"{path} does not read.");
        examination = Examination.Of(board);
    }

    [Benchmark(Baseline = true)]
    public int Examine() => Examination.Of(board).Findings.Count;

    [Benchmark]
    public int FiguresAlone() => Examination.FiguresOf(board).Count;

    [Benchmark]
    public int ReadTheFiles() => BoardFile.Read(path).Complaints.Count;

    [Benchmark]
    public int SpreadOf256() => Spread.Of(examination).Intervals.Count;

    [Benchmark]
    public int ResultAsJson() => ResultDocument.Write(examination).Length;
}
