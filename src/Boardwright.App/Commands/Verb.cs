using System.CommandLine;

namespace Boardwright.App.Commands;

/// <summary>A command with examples of how it is used.</summary>
sealed class Verb(string name, string description, params IReadOnlyList<string> examples) : Command(name, description)
{
    /// <summary>Whole command lines that work.</summary>
    public IReadOnlyList<string> Examples { get; } = examples;
}
