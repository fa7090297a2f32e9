using Boardwright.Validation;

// Writes the pages into the folder docs/validation of the repository that the program is run in.
var root = new DirectoryInfo(Directory.GetCurrentDirectory());
while (root is not null && !File.Exists(Path.Combine(root.FullName, "Boardwright.slnx")))
    root = root.Parent;
if (root is null)
{
    Console.Error.WriteLine("Run this inside the repository.");
    return 1;
}

var folder = Directory.CreateDirectory(Path.Combine(root.FullName, "docs", "validation"));
var pages = ValidationPages.Write(Cases.All);
foreach (var old in folder.EnumerateFiles().Where(old => !pages.ContainsKey(old.Name)))
    old.Delete();
foreach (var (name, text) in pages)
    File.WriteAllText(Path.Combine(folder.FullName, name), text);

var checks = Cases.All.SelectMany(static c => c.Checks).ToList();
Console.WriteLine($"{checks.Count} checks, {checks.Count(static c => c.IsMiss)} misses.");
return 0;
