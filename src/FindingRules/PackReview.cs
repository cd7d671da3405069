using System.Collections.Immutable;
using FindingRules.Cases;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules;

/// <summary>What a department sees of its pack: every message, how each case came out, and what no case exercises.</summary>
/// <param name="Pack">Null where an error kept the pack from being read; then no case was run.</param>
/// <param name="Messages">Those of reading, those of cases that failed, and doubts about the cases, by file and place.</param>
/// <param name="Unexercised">Ids of rules in force that are true in no case.</param>
public sealed record PackReview(
    CompiledPack? Pack, ImmutableArray<Message> Messages, ImmutableArray<CaseResult> Cases, ImmutableArray<string> Unexercised)
{
    public bool HasErrors => Messages.Any(m => m.Severity == Severity.Error);

    public bool HasDoubts => Messages.Any(m => m.Severity == Severity.Doubt);

    public static PackReview Of(PackLoad load)
    {
        var messages = new MessageBag();
        messages.AddRange(load.Messages);
        if (load.Pack is not { } pack) return new PackReview(null, messages.Sorted(), [], []);

        var results = pack.Pack.Cases.Select(c => CaseRunner.Run(c, pack)).ToImmutableArray();
        foreach (var result in results) messages.AddRange(result.Differences);
        var exercised = results.SelectMany(r => r.Exercises).ToHashSet(StringComparer.Ordinal);
        var unexercised = pack.Pack.Rules.Where(r => pack.Pack.IsInForce(r) && !exercised.Contains(r.Id)).ToImmutableArray();
        if (results.IsEmpty) messages.Add(CaseMessages.NoCases(new Location(pack.Pack.Files[0], default)));
        else messages.AddRange(unexercised.Select(r => CaseMessages.RuleWithoutCase(r.DeclaredAt, r.Id)));
        return new PackReview(pack, messages.Sorted(), results, [.. unexercised.Select(r => r.Id)]);
    }
}
