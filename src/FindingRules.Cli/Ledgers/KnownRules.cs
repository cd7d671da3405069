using FindingRules.Ledger;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Records;

namespace FindingRules.Cli.Ledgers;

/// <summary>Keeps a misspelt id from looking like a rule that nothing rested on.</summary>
internal static class KnownRules
{
    /// <summary>Null where a pack that the ledger keeps has the rule, in this revision and with this name where they are given.</summary>
    public static async Task<Message?> UnknownAsync(LedgerReader ledger, string rule, string? revision = null, string? named = null)
    {
        var (names, revisions) = (new SortedSet<string>(StringComparer.Ordinal), new SortedSet<string>(StringComparer.Ordinal));
        var packs = new PackLibrary(ledger.FindPackAsync);
        var known = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var stored in await ledger.ListPacksAsync())
            if ((await packs.FindAsync(stored.Pack.TextDigest))?.Pack is { } pack)
            {
                names.Add(pack.Pack.Name);
                known.UnionWith(pack.Pack.Rules.Select(r => r.Id));
                revisions.UnionWith(pack.Pack.Rules.Where(r => r.Id == rule).Select(r => r.Revision));
            }
        if (!known.Contains(rule)) return LedgerUseMessages.NoSuchRule(rule, known);
        if (revision is not null && !revisions.Contains(revision)) return LedgerUseMessages.NoSuchRevision(rule, revision, revisions);
        return named is not null && !names.Contains(named) ? LedgerUseMessages.NoSuchPack(named, names) : null;
    }
}
