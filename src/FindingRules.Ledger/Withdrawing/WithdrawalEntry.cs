using System.Text.Json;
using FindingRules.Ledger.Canonical;
using FindingRules.Ledger.Records;
using FindingRules.Ledger.Searching;

namespace FindingRules.Ledger.Withdrawing;

/// <summary>Says that a rule must no longer be rested on.</summary>
public sealed record WithdrawalEntry
{
    public required string Actor { get; init; }

    public required string Rule { get; init; }

    /// <summary>Left out where all revisions are meant.</summary>
    public string? Revision { get; init; }

    /// <summary>The pack whose rule it is.</summary>
    public required string Pack { get; init; }

    /// <summary>A code, not a text.</summary>
    public required string Reason { get; init; }

    /// <summary>The readings that rested on the rule: its condition was true in them.</summary>
    public LedgerQuery Affected => new() { Rule = Rule, Revision = Revision, Pack = Pack };

    /// <summary>Lets services that start at once record it once. No name of an actor has a line break in it.</summary>
    internal RetryKey Once => new("\n", $"withdrawal\n{Pack}\n{Rule}\n{Revision}", default);

    /// <summary>Null where the record is no withdrawal.</summary>
    public static WithdrawalEntry? Read(LedgerRecord record)
    {
        if (record is not { Kind: RecordKind.Withdrawal, Body: { } body }) return null;
        using var content = JsonDocument.Parse(body.Content);
        var root = content.RootElement;
        return new WithdrawalEntry
        {
            Actor = record.Actor,
            Rule = Text("rule") ?? "",
            Revision = Text("revision"),
            Pack = Text("pack") ?? "",
            Reason = Text("reason") ?? "",
        };

        string? Text(string name) => root.TryGetProperty(name, out var value) ? value.GetString() : null;
    }

    internal byte[] ToContent()
    {
        var to = new CanonicalBuffer();
        var separator = (byte)'{';
        foreach (var (name, value) in new[] { ("pack", Pack), ("reason", Reason), ("revision", Revision), ("rule", Rule) })
        {
            if (value is null) continue;
            to.Member(ref separator, name);
            to.Text(value);
        }
        to.Raw((byte)'}');
        return to.ToArray();
    }

    internal IndexTerms ToTerms() => new() { Rules = [new RuleTerm(Rule, Revision ?? "", RuleOutcomes.None, [])] };
}
