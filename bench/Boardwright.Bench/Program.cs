using BenchmarkDotNet.Running;
using Boardwright.Bench;

switch (args)
{
    case ["solvers", var path]:
        SolverCase.Write(path);
        break;
    case ["rides"]:
        RideTimes.Print(Console.Out);
        break;
    case ["search"]:
        SearchTimes.Print(Console.Out);
        break;
    case ["logs"]:
        LogTimes.Print(Console.Out);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
        break;
}
