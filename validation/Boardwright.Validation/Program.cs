using Boardwright.Validation;

// Writes the pages into the folder docs of the repository that the program is run in.
var root = new DirectoryInfo(Directory.GetCurrentDirectory());
while (root is not null && !File.Exists(Path.Combine(root.FullName, "Boardwright.slnx")))
    root = root.Parent;
if (root is null)
{
    Console.Error.WriteLine("Run this inside the repository.");
    return 1;
}

var docs = Path.Combine(root.FullName, "docs");
Directory.CreateDirectory(Path.Combine(docs, "validation"));
var pages = ValidationPages.Write(Cases.All);
foreach (var old in Directory.EnumerateFiles(Path.Combine(docs, "validation"), "*.svg"))
{
    if (!pages.ContainsKey("validation/" + Path.GetFileName(old)))
        File.Delete(old);
}

foreach (var (path, text) in pages)
    File.WriteAllText(Path.Combine(docs, path), text);

var checks = Cases.All.SelectMany(static c => c.Checks).ToList();
Console.WriteLine($"{checks.Count} checks, {checks.Count(static c => c.IsMiss)} misses.");
return 0;
