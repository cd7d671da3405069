using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>What must hold of the shipped pack as a whole, whatever its rules say.</summary>
public sealed class PackContentTests
{
    [Fact]
    public void It_loads_without_an_error_or_a_doubt() =>
        Assert.Empty(Shipped.Load.Messages.Where(m => m.Severity != Severity.Note).Select(m => $"{m.Location}: {m.Code} {m.Text}"));

    [Fact]
    public void It_says_that_nobody_approved_it() => Assert.Null(Shipped.Pack.Approval);

    [Theory]
    [InlineData("CUFF-010", "fluid spans bursal to articular surface and reangled persists → full-thickness")]
    [InlineData("BIC-004", "biceps subluxed → evaluate subscapularis")]
    [InlineData("FB-002", "radiograph negative and suspected wood or glass → ultrasound next")]
    public void The_rules_of_the_design_stand_as_they_are(string id, string text) =>
        Assert.Equal(text, Shipped.Pack.Rules.Single(r => r.Id == id).Text);

    [Fact]
    public void Every_rule_says_why_by_whom_and_until_when()
    {
        var bare = Shipped.Pack.Rules.Where(r => r.ScaleName is null)
            .Where(r => r.Because.Length < 20 || r.Sources.IsEmpty || r.Owner is null || r.Reviewed is null || r.ReviewBy is null);

        Assert.Empty(bare.Select(r => r.Id));
    }

    [Fact]
    public void Every_rule_is_named_by_a_case_that_fires_and_by_one_that_does_not()
    {
        var fires = Named(e => e.Fires);
        var quiet = Named(e => e.Silent).Union(Named(e => e.Unknown)).Union(Named(e => e.Yields));

        var untested = Shipped.Pack.Rules.Select(r => r.Id).Where(id => !fires.Contains(id) || !quiet.Contains(id)).ToArray();

        Assert.Empty(untested);
    }

    [Fact]
    public void Every_rule_that_can_be_unknown_is_so_in_a_case()
    {
        // They ask only whether something was sent, which is never unknown.
        string[] neverUnknown =
            [
                "ACH-014", "ACH-022", "CALC-027", "CTS-014", "CUFF-048", "DEQ-011", "FB-019", "FB-021", "HIP-015", "HIP-018",
                "HIP-019", "HIP-034", "STM-023",
            ];
        var unknown = Named(e => e.Unknown);
        var decided = Shipped.Pack.Rules.Select(r => r.Id).Where(id => !unknown.Contains(id)).ToArray();

        Assert.Equal(neverUnknown, decided);
    }

    [Fact]
    public void It_is_as_large_as_a_department_needs()
    {
        Assert.True(Shipped.Pack.Rules.Length > 120, $"{Shipped.Pack.Rules.Length} rules");
        Assert.True(Shipped.Pack.Cases.Length > 400, $"{Shipped.Pack.Cases.Length} cases");
    }

    [Fact]
    public void No_two_rules_give_the_same_reason_for_the_same_condition()
    {
        var twins = Shipped.Pack.Rules.GroupBy(r => r.Text).Where(g => g.Count() > 1).Select(g => string.Join(", ", g.Select(r => r.Id)));

        Assert.Empty(twins);
    }

    [Fact]
    public void No_case_repeats_the_study_of_another_in_its_file()
    {
        var repeated = Shipped.Pack.Cases.GroupBy(c => (c.DeclaredAt.Source.Path, Sent(c.Study))).Where(g => g.Count() > 1)
            .Select(g => string.Join(", ", g.Select(c => c.Id)));

        Assert.Empty(repeated);
    }

    private static string Sent(Study study) => string.Join(
        " | ", Sent(study.Facts), Sent(study.Subjects), Sent(study.EarlierFacts), Sent(study.Earlier ?? []), string.Join(' ', study.Protocols));

    private static string Sent(ImmutableArray<StudySubject> subjects) => string.Join("; ", subjects.Select(s =>
        $"{s.Side} {s.Structure.Name} {s.IsNormal} {s.IsNotAssessable} {Sent(s.Findings)} "
        + string.Join(' ', s.Lesions.Select(l => l.Id + Sent(l.Findings)))));

    private static string Sent(Findings findings) => string.Join(", ", findings.InOrder.Select(f => $"{f.Finding.Name} {f.Value}"));

    private static ImmutableHashSet<string> Named(Func<CaseExpectation, ImmutableArray<Expected>> list) =>
        [.. Shipped.Pack.Cases.Select(c => list(c.Expect)).Where(l => !l.IsDefault).SelectMany(l => l).Select(e => e.Text)];
}
