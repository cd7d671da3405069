using FindingRules.Model.Messages;

namespace FindingRules;

/// <summary>What a misspelt path probably meant.</summary>
public static class NearbyPath
{
    /// <summary>A neighbour in the same folder with nearly the same name, written the way the path was written.</summary>
    public static string? Closest(string path)
    {
        var folder = Path.GetDirectoryName(path.TrimEnd('/', '\\'));
        var name = Path.GetFileName(path.TrimEnd('/', '\\'));
        var place = string.IsNullOrEmpty(folder) ? "." : folder;
        if (name.Length == 0 || !Directory.Exists(place)) return null;
        var names = Directory.EnumerateFileSystemEntries(place).Select(Path.GetFileName).OfType<string>();
        return Spelling.Closest(name, names) is { } closest ? Path.Combine(folder ?? "", closest) : null;
    }
}
