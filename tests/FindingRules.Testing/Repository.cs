namespace FindingRules.Testing;

/// <summary>Where the files of the checkout lie, wherever the tests were built.</summary>
public static class Repository
{
    private const string SolutionFile = "FindingRules.sln";

    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    public static string ReadText(params string[] parts) => File.ReadAllText(PathOf(parts));

    /// <summary>Files below a folder of the checkout, in order of path; what a build leaves behind is passed over.</summary>
    public static IEnumerable<string> Files(string folder, string pattern) =>
        Directory.EnumerateFiles(PathOf(folder), pattern, SearchOption.AllDirectories)
            .Where(path => !IsBuildOutput(path))
            .Order(StringComparer.Ordinal);

    /// <summary>The path as the repository names it, with forward slashes.</summary>
    public static string Relative(string path) => Path.GetRelativePath(Root, path).Replace('\\', '/');

    private static bool IsBuildOutput(string path) =>
        Relative(path).Split('/').Any(part => part is "bin" or "obj" or "artifacts" or "TestResults");

    private static string FindRoot(string start)
    {
        for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, SolutionFile)))
                return folder.FullName;
        throw new InvalidOperationException($"There is no {SolutionFile} above {start}.");
    }
}
