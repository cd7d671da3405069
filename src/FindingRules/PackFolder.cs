using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;

namespace FindingRules;

/// <summary>A pack as it lies on disk: a folder with <c>pack.yaml</c> and the files that it lists.</summary>
public static class PackFolder
{
    public const string Manifest = "pack.yaml";

    /// <summary>Reads and compiles the pack in a folder. The pack is null where a message is an error.</summary>
    public static PackLoad Load(string folder, LoadLimits? limits = null)
    {
        var read = Read(folder, limits);
        return read.Messages.IsEmpty ? CompiledPack.Load(read.Files, limits) : new PackLoad(null, read.Messages);
    }

    /// <summary>
    /// Every YAML file of the folder and the folders in it. Folders that are hidden or links are not entered, and a file
    /// that is a link must lead to a place inside. Where there is a message no file is given: a part of a pack is no pack.
    /// </summary>
    public static PackFiles Read(string folder, LoadLimits? limits = null)
    {
        try
        {
            if (File.Exists(folder) && Path.GetFileName(folder) != Manifest) return Failed(ToolMessages.NotAFolder(folder));
            var root = File.Exists(folder) ? Path.GetDirectoryName(Path.GetFullPath(folder))! : folder;
            if (!Directory.Exists(root)) return Failed(ToolMessages.FileNotFound(folder, NearbyPath.Closest(folder)));
            return File.Exists(Path.Combine(root, Manifest))
                ? Read(new DirectoryInfo(root), limits ?? LoadLimits.Default)
                : Failed(ToolMessages.NoManifest(folder, NestedPack(root)));
        }
        catch (Exception failure) when (Unreadable.Is(failure))
        {
            return Failed(ToolMessages.FileNotReadable(folder, Unreadable.Because(failure)));
        }
    }

    private static PackFiles Read(DirectoryInfo root, LoadLimits limits)
    {
        var found = Find(root).OrderBy(f => f.Path, StringComparer.Ordinal).ToArray();
        if (found.Length > limits.PackFiles)
            return Failed(ToolMessages.TooManyFiles(root.FullName, found.Length, limits.PackFiles, "YAML files"));
        if (found.Sum(f => f.Info.Length) is var bytes && bytes > limits.PackBytes)
            return Failed(ToolMessages.TooManyFiles(root.FullName, bytes, limits.PackBytes, "bytes"));

        var messages = new MessageBag();
        var files = ImmutableArray.CreateBuilder<PackFile>(found.Length);
        var realRoot = RealPath.Of(root.FullName);
        foreach (var (path, info) in found)
            if (Refusal(path, info, realRoot, limits) is { } refusal) messages.Add(refusal);
            else if (ReadBytes(path, info, limits, messages) is { } content) files.Add(new PackFile(path, content));
        return messages.Count == 0 ? new PackFiles(files.ToImmutable(), []) : new PackFiles([], messages.Sorted());
    }

    private static Message? Refusal(string path, FileInfo info, string realRoot, LoadLimits limits)
    {
        if (info.LinkTarget is not null && !RealPath.IsInside(RealPath.Of(info.FullName), realRoot))
            return ToolMessages.LinkLeavesFolder(path);
        return info.Length > limits.FileBytes ? ToolMessages.FileTooLarge(path, info.Length, limits.FileBytes) : null;
    }

    private static byte[]? ReadBytes(string path, FileInfo info, LoadLimits limits, MessageBag messages)
    {
        try
        {
            var bytes = File.ReadAllBytes(info.FullName);
            if (bytes.Length <= limits.FileBytes) return bytes;
            messages.Add(ToolMessages.FileTooLarge(path, bytes.Length, limits.FileBytes)); // the length of a link is its own
            return null;
        }
        catch (Exception failure) when (Unreadable.Is(failure))
        {
            messages.Add(ToolMessages.FileNotReadable(path, Unreadable.Because(failure)));
            return null;
        }
    }

    private static IEnumerable<(string Path, FileInfo Info)> Find(DirectoryInfo root)
    {
        var folders = new Stack<DirectoryInfo>([root]);
        while (folders.TryPop(out var folder))
            foreach (var entry in folder.EnumerateFileSystemInfos())
                if (entry is FileInfo file && IsYaml(file))
                    yield return (Path.GetRelativePath(root.FullName, file.FullName).Replace('\\', '/'), file);
                else if (entry is DirectoryInfo { LinkTarget: null } inner && !inner.Name.StartsWith('.'))
                    folders.Push(inner);
    }

    private static bool IsYaml(FileInfo file) =>
        file.Extension.Equals(".yaml", StringComparison.OrdinalIgnoreCase)
        || file.Extension.Equals(".yml", StringComparison.OrdinalIgnoreCase);

    private static string? NestedPack(string root) => Directory.EnumerateDirectories(root)
        .Where(d => File.Exists(Path.Combine(d, Manifest)))
        .Order(StringComparer.Ordinal)
        .FirstOrDefault();

    private static PackFiles Failed(Message message) => new([], [message]);
}

/// <summary>What was read of a folder: all its files, or the messages that say why not.</summary>
public sealed record PackFiles(ImmutableArray<PackFile> Files, ImmutableArray<Message> Messages);
