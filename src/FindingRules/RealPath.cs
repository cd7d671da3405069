namespace FindingRules;

/// <summary>Where a path leads once every link on the way has been followed.</summary>
internal static class RealPath
{
    private const int MostLinks = 40;

    public static string Of(string path)
    {
        var links = 0;
        var full = Path.GetFullPath(path);
        var root = Path.GetPathRoot(full)!;
        var rest = new Stack<string>(Parts(full[root.Length..]).Reverse());
        var real = root;
        while (rest.TryPop(out var part))
        {
            var next = Path.Combine(real, part);
            var target = new FileInfo(next).LinkTarget;
            if (target is null)
            {
                real = next;
                continue;
            }
            if (++links > MostLinks) throw new IOException("too many links, one after the other");
            // A target is seen from the folder that the link is in; its own parts may be links as well.
            var led = Path.GetFullPath(target, real);
            real = Path.GetPathRoot(led)!;
            foreach (var step in Parts(led[real.Length..]).Reverse()) rest.Push(step);
        }
        return real;
    }

    public static bool IsInside(string path, string folder) =>
        path.StartsWith(Path.TrimEndingDirectorySeparator(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private static IEnumerable<string> Parts(string path) =>
        path.Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries);
}
