using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Files;

/// <summary>Reads the manifest and every file that it lists, and checks that the folder holds these and no others.</summary>
internal static class PackFilesReader
{
    public static (Manifest? Manifest, SourceText? Source) ReadManifest(
        ImmutableArray<PackFile> files, LoadLimits limits, MessageBag messages)
    {
        if (files.FirstOrDefault(f => f.Path == ManifestBinder.Path) is not { } file)
        {
            messages.Add(ToolMessages.FileNotFound(ManifestBinder.Path));
            return default;
        }
        if (SourceBytes.Read(file.Path, file.Bytes.Span, limits.FileBytes, messages) is not { } source) return default;
        if (YamlReader.Read(source, limits, messages) is not { } node) return default;
        if (node is MappingNode root) return (ManifestBinder.Bind(root, messages), source);
        messages.Add(PackMessages.WrongForm(node.Opening, "the manifest", node.Form, "keys with values"));
        return default;
    }

    /// <param name="incomplete">Gets the kinds of which something could not be read.</param>
    public static PackFiles Read(
        ImmutableArray<PackFile> files, Manifest manifest, SourceText source, LoadLimits limits, MessageBag messages,
        Action<string> incomplete)
    {
        var byPath = files.GroupBy(f => f.Path, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        CheckFolder(byPath.Keys, manifest, messages);
        var documents = ImmutableArray.CreateBuilder<PackDocument>();
        var sources = ImmutableArray.CreateBuilder<SourceText>();
        sources.Add(source);
        foreach (var listed in manifest.Files)
        {
            var file = byPath.GetValueOrDefault(listed.Path);
            var text = file is null ? null : SourceBytes.Read(file.Path, file.Bytes.Span, limits.FileBytes, messages);
            if (text is not null) sources.Add(text);
            var document = text is null ? null : ReadDocument(listed, text, limits, messages);
            if (document is not null) documents.Add(document);
            if (document is null or { IsComplete: false }) incomplete(listed.Kind);
        }
        foreach (var kind in FileKind.All)
            if (!manifest.ListsAll)
                incomplete(kind);
        return new PackFiles(source, documents.ToImmutable(), sources.ToImmutable());
    }

    private static void CheckFolder(IReadOnlyCollection<string> present, Manifest manifest, MessageBag messages)
    {
        var unlisted = present.Where(p => p != ManifestBinder.Path && !manifest.Files.Any(f => f.Path == p)).ToList();
        foreach (var listed in manifest.Files)
        {
            if (present.Contains(listed.Path)) continue;
            messages.Add(PackMessages.FileMissing(listed.PathAt, listed.Path, unlisted));
            // A misspelt path is one mistake, not also a file that nobody lists.
            if (Spelling.Closest(listed.Path, unlisted) is { } meant) unlisted.Remove(meant);
        }
        if (!manifest.ListsAll) return;
        foreach (var path in unlisted.Order(StringComparer.Ordinal))
            messages.Add(PackMessages.FileNotListed(new SourceText(path, "").Whole, path));
    }

    private static PackDocument? ReadDocument(ListedFile listed, SourceText source, LoadLimits limits, MessageBag messages)
    {
        var before = messages.Count;
        if (YamlReader.Read(source, limits, messages) is not { } node) return null;
        var expected = FileKind.RootKeys(listed.Kind);
        if (node is not MappingNode root)
        {
            messages.Add(PackMessages.WrongForm(node.Opening, $"`{listed.Path}`", node.Form,
                $"`{expected[0]}:` and what stands under it"));
            return null;
        }
        var isComplete = messages.Count == before;
        if (!CheckKeys(root, listed, expected, messages)) return null;
        var count = expected.Sum(key => CountOf(root.Find(key)));
        if (isComplete && listed.Entries >= 0 && count != listed.Entries)
            messages.Add(PackMessages.EntryCount(listed.EntriesAt, listed.Path, count, listed.Entries));
        return new PackDocument(listed.Kind, source, root, isComplete);
    }

    private static bool CheckKeys(MappingNode root, ListedFile listed, string[] expected, MessageBag messages)
    {
        string[] found = [.. root.Entries.Select(e => e.Key.Value)];
        if (!found.Any(expected.Contains) && found.FirstOrDefault(IsOfAnotherKind) is { } other)
        {
            messages.Add(PackMessages.WrongFileKind(listed.PathAt, listed.Path, listed.Kind, other));
            return false;
        }
        var isSound = found.Any(expected.Contains);
        foreach (var (key, _) in root.Entries)
            if (!expected.Contains(key.Value))
                messages.Add(PackMessages.UnknownKey(key.Inside, $"a file of {listed.Kind}", Shown.Briefly(key.Value), expected));
        if (found.Length == 0) messages.Add(PackMessages.MissingKey(root.Opening, $"a file of {listed.Kind}", expected[0]));
        return isSound;
    }

    private static bool IsOfAnotherKind(string key) =>
        key == "pack" || FileKind.All.Any(kind => FileKind.RootKeys(kind).Contains(key));

    private static int CountOf(DocumentNode? node) => node switch
    {
        MappingNode mapping => mapping.Entries.Count,
        ListNode list => list.Items.Count,
        _ => 0,
    };
}
