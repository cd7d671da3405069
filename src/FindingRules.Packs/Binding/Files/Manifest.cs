using System.Collections.Immutable;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Files;

/// <summary>What <c>pack.yaml</c> says, before anything that it speaks of is looked up.</summary>
/// <param name="ListsAll">Every entry under <c>files</c> could be understood.</param>
internal sealed record Manifest(
    string Name, string Title, string Version, int Language, string Department, string Caution, ApprovalClaim? Approval,
    ImmutableArray<WithdrawalClaim> Withdrawn, ImmutableSortedDictionary<string, string> Reasons,
    ImmutableArray<ListedFile> Files, bool ListsAll);

internal sealed record ApprovalClaim(string By, DateOnly On, string Digest, Location DigestAt);

internal sealed record WithdrawalClaim(ScalarNode Rule, DateOnly On, string Because);

internal sealed record ListedFile(string Kind, string Path, int Entries, Location PathAt, Location EntriesAt);
