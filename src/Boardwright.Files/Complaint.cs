namespace Boardwright.Files;

/// <summary>Something wrong in a file, and what to do about it.</summary>
/// <param name="File">Name of the file as it was given.</param>
/// <param name="Line">Line, counted from 1; 0 for the file as a whole.</param>
/// <param name="Column">Column, counted from 1; 0 where only the line is known.</param>
/// <param name="Key">Entry, element or column that it is about; may be empty.</param>
/// <param name="Says">What is wrong.</param>
/// <param name="Remedy">What to write instead.</param>
public sealed record Complaint(string File, int Line, int Column, string Key, string Says, string Remedy)
{
    /// <summary>File, place, complaint and remedy in one line.</summary>
    public override string ToString() => FormattableString.Invariant($"{File}:{Line}:{Column}: {Key}: {Says} {Remedy}");
}
