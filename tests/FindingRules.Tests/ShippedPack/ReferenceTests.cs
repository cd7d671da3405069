using FindingRules.Model.Packs;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>Sources of the shipped pack: each fact it cites was published or is marked as common practice.</summary>
public sealed class ReferenceTests
{
    // The published facts that were read, by region; what was only remembered has no id here.
    private static readonly (string Region, int Last)[] Published =
    [
        ("F-RCT", 32), ("F-MUS", 8), ("F-CAL", 8), ("F-TEN", 10), ("F-PLF", 5), ("F-MOR", 7), ("F-FB", 14), ("F-TEC", 10),
        ("F-ACC", 9), ("F-CTS", 5), ("F-CUB", 2), ("F-DQ", 2), ("F-TF", 3), ("F-BAK", 1), ("F-HIP", 6), ("F-JNT", 2),
        ("F-ACH", 1), ("F-STM", 3),
    ];

    private static readonly HashSet<string> Known =
    [
        .. Published.SelectMany(p => Enumerable.Range(1, p.Last).Select(n => $"{p.Region}-{n:00}")),
        .. Enumerable.Range(1, 14).Select(n => $"T-{n:00}"),
        // The table of next steps, whose rows have no ids of their own.
        "SECTION-12",
    ];

    private static readonly Reference[] All = [.. Shipped.Pack.References.Values];

    [Fact]
    public void Every_fact_cited_exists() =>
        Assert.Empty(All.SelectMany(r => r.Facts.Where(f => !Known.Contains(f)).Select(f => $"{r.Name}: {f}")));

    [Fact]
    public void Every_reference_names_its_facts_and_the_page_read() =>
        Assert.Empty(All.Where(r => r.Facts.IsEmpty || (r.Read is null && r.Status is SourceStatus.AbstractRead or SourceStatus.Secondary)).Select(r => r.Name));

    [Fact]
    public void Common_practice_is_marked_as_such_and_nothing_else_is() =>
        Assert.Empty(All.Where(r => r.Facts.Any(f => f.StartsWith("T-", StringComparison.Ordinal)) != (r.Status == SourceStatus.CommonPractice)).Select(r => r.Name));

    [Fact]
    public void No_impression_rests_on_common_practice_alone()
    {
        var ungrounded = Shipped.Pack.Rules
            .Where(r => r.Topics.Any(t => t.Value.Says is not null))
            .Where(r => r.Sources.All(s => s.Status == SourceStatus.CommonPractice));

        Assert.Empty(ungrounded.Select(r => r.Id));
    }

    [Fact]
    public void Every_reference_is_used()
    {
        var used = Shipped.Pack.Rules.SelectMany(r => r.Sources)
            .Concat(Shipped.Pack.Symbols.NextSteps.Values.SelectMany(s => s.Sources))
            .Concat(Shipped.Pack.Symbols.Cautions.Values.SelectMany(c => c.Sources))
            .Concat(Shipped.Pack.Protocols.Values.SelectMany(p => p.Sources))
            .Select(r => r.Name)
            .ToHashSet(StringComparer.Ordinal);

        var idle = All.Select(r => r.Name).Where(n => !used.Contains(n)).ToArray();

        Assert.Empty(idle);
    }
}
