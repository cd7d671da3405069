using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Packs;

/// <summary>What a pack folder held when it was looked at.</summary>
/// <param name="Fingerprint">Of every path and byte: two looks that saw the same have the same.</param>
/// <param name="Problems">Files that could not be read, or not be taken at their size.</param>
internal sealed record FolderContents(ImmutableArray<PackFile> Files, ImmutableArray<Message> Problems, string Fingerprint)
{
    public bool HasManifest => Files.Any(f => f.Path == PackFolder.Manifest) || !Problems.IsEmpty;
}

/// <summary>Finds the packs in a folder and reads their files.</summary>
internal static class PackFolder
{
    public const string Manifest = "pack.yaml";

    // INVARIANT: content, not time stamps, says whether anything changed. Copies that keep times, clocks that jump and
    // folders that are links to other folders are then all the same.
    private static readonly EnumerationOptions Within = new()
    {
        RecurseSubdirectories = true,
        MaxRecursionDepth = 3,
        AttributesToSkip = FileAttributes.Hidden | FileAttributes.System,
    };

    /// <summary>The folder itself where it is a pack, otherwise each folder in it that is one; in order of name.</summary>
    public static ImmutableArray<string> Find(string root)
    {
        if (!Directory.Exists(root)) return [];
        if (File.Exists(Path.Combine(root, Manifest))) return [root];
        return
        [
            .. Directory.EnumerateDirectories(root)
                .Where(d => !Path.GetFileName(d).StartsWith('.') && File.Exists(Path.Combine(d, Manifest)))
                .Order(StringComparer.Ordinal),
        ];
    }

    public static FolderContents Read(string folder, LoadLimits limits)
    {
        var files = ImmutableArray.CreateBuilder<PackFile>();
        var problems = ImmutableArray.CreateBuilder<Message>();
        if (Directory.Exists(folder))
            foreach (var path in Directory.EnumerateFiles(folder, "*.yaml", Within).Order(StringComparer.Ordinal))
                ReadOne(Path.GetRelativePath(folder, path).Replace('\\', '/'), path, limits, files, problems);
        return new FolderContents(files.ToImmutable(), problems.ToImmutable(), FingerprintOf(files, problems));
    }

    private static void ReadOne(
        string name, string path, LoadLimits limits,
        ImmutableArray<PackFile>.Builder files, ImmutableArray<Message>.Builder problems)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (file.Length > limits.FileBytes)
            {
                problems.Add(ToolMessages.FileTooLarge(name, file.Length, limits.FileBytes));
                return;
            }
            var bytes = new byte[file.Length];
            file.ReadExactly(bytes);
            files.Add(new PackFile(name, bytes));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Add(ToolMessages.FileNotReadable(name, WhyNot(e)));
        }
    }

    private static string WhyNot(Exception e) => e switch
    {
        UnauthorizedAccessException => "this user may not read it",
        FileNotFoundException or DirectoryNotFoundException => "it went away",
        EndOfStreamException => "it was being written",
        _ => "the disk or another program did not give it",
    };

    private static string FingerprintOf(IEnumerable<PackFile> files, IEnumerable<Message> problems)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in files)
        {
            hash.AppendData(Encoding.UTF8.GetBytes($"{file.Path}\n{file.Bytes.Length}\n"));
            hash.AppendData(file.Bytes.Span);
        }
        foreach (var problem in problems) hash.AppendData(Encoding.UTF8.GetBytes($"{problem.Code} {problem.Text}\n"));
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
