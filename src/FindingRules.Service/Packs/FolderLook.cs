using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Packs;

/// <summary>What a pack folder held when it was looked at.</summary>
/// <param name="Fingerprint">Of every path, byte and message: two looks that saw the same have the same.</param>
internal sealed record FolderLook(PackFiles Files, string Fingerprint)
{
    // INVARIANT: content, not time stamps, says whether anything changed. Copies that keep times, clocks that jump and
    // folders that are links to other folders are then all the same.
    public static FolderLook At(string folder, LoadLimits limits)
    {
        var read = PackFolder.Read(folder, limits);
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in read.Files)
        {
            hash.AppendData(Encoding.UTF8.GetBytes($"{file.Path}\n{file.Bytes.Length}\n"));
            hash.AppendData(file.Bytes.Span);
        }
        foreach (var message in read.Messages) hash.AppendData(Encoding.UTF8.GetBytes($"{message.Code} {message.Text}\n"));
        return new FolderLook(read, Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    /// <summary>The folder itself where it is a pack, otherwise each folder in it that is one; in order of name.</summary>
    public static ImmutableArray<string> FindPacks(string root)
    {
        if (IsPack(root)) return [root];
        if (!Directory.Exists(root)) return [];
        return
        [
            .. Directory.EnumerateDirectories(root)
                .Where(d => !Path.GetFileName(d).StartsWith('.') && IsPack(d))
                .Order(StringComparer.Ordinal),
        ];
    }

    public static bool IsPack(string folder) => File.Exists(Path.Combine(folder, PackFolder.Manifest));
}
