using BenchmarkDotNet.Attributes;
using Boardwright.Examinations;
using Boardwright.Files.Boards;
using Boardwright.Files.Results;
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
    Examination examination = Examination.Examine(new Board().WithNames());

    [GlobalSetup]
    public void Read()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Boardwright.slnx")))
            folder = folder.Parent;
        path = Path.Combine(folder?.FullName ?? ".", "examples", "tern", "tern.board.yaml");
        board = BoardFile.Read(path).Board ?? throw new InvalidOperationException($"{path} does not read.");
        examination = Examination.Examine(board);
    }

    [Benchmark(Baseline = true)]
    public int Examine() => Examination.Examine(board).Findings.Count;

    [Benchmark]
    public int FiguresAlone() => Examination.FiguresOf(board).Count;

    [Benchmark]
    public int ReadTheFiles() => BoardFile.Read(path).Complaints.Count;

    [Benchmark]
    public int SpreadOf256() => Spread.Sample(examination).Intervals.Count;

    [Benchmark]
    public int ResultAsJson() => ResultDocument.Write(examination).Length;
}
