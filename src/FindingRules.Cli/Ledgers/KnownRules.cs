using FindingRules.Ledger;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Records;

namespace FindingRules.Cli.Ledgers;

/// <summary>Keeps a misspelt id from looking like a rule that nothing rested on.</summary>
internal static class KnownRules
{
    /// <summary>Null where a pack that the ledger keeps has the rule.</summary>
    public static async Task<Message?> UnknownAsync(LedgerReader ledger, string rule)
    {
        var packs = new PackLibrary(ledger.FindPackAsync);
        var known = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var stored in await ledger.ListPacksAsync())
            if ((await packs.FindAsync(stored.Pack.TextDigest))?.Pack is { } pack)
                known.UnionWith(pack.Pack.Rules.Select(r => r.Id));
        return known.Contains(rule) ? null : LedgerUseMessages.NoSuchRule(rule, known);
    }
}
