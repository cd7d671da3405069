using System.Collections.Immutable;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Files;

/// <summary>The files that the manifest lists, read; and the keys of the entries in them.</summary>
internal sealed record PackFiles(SourceText Manifest, ImmutableArray<PackDocument> Documents, ImmutableArray<SourceText> Sources)
{
    /// <summary>What stands under a key at the margin of the files of a kind, file by file.</summary>
    public IEnumerable<DocumentNode> Roots(string kind, string key) =>
        from document in Documents
        where document.Kind == kind
        let node = document.Root.Find(key)
        where node is not null
        select node;
}
