using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Packs.Binding;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Digests;

namespace FindingRules.Packs;

/// <summary>The files of a pack in, a bound pack out.</summary>
public static class PackReader
{
    /// <summary>
    /// Reads, checks and binds a pack. Every mistake of every file is a message; null when there was an error.
    /// <paramref name="files"/> are all the YAML files of the folder, <c>pack.yaml</c> among them.
    /// </summary>
    public static Pack? Read(ImmutableArray<PackFile> files, LoadLimits limits, MessageBag messages)
    {
        var heard = new MessageBag();
        var pack = Bind(files, limits, heard);
        messages.AddRange(Misdeclared.Fold(heard.Sorted(), files));
        return heard.HasErrors ? null : pack;
    }

    private static Pack? Bind(ImmutableArray<PackFile> files, LoadLimits limits, MessageBag messages)
    {
        var (manifest, source) = PackFilesReader.ReadManifest(files, limits, messages);
        if (manifest is null || source is null) return null;
        var incomplete = new List<string>();
        var read = PackFilesReader.Read(files, manifest, source, limits, messages, incomplete.Add);
        var context = new BindingContext(read, limits, messages);
        foreach (var kind in incomplete) context.Known.AddIncomplete(kind);
        return PackBinder.Bind(manifest, context, TextDigest.Of(files));
    }
}
