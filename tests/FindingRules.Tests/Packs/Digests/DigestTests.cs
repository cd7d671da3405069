using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs.Digests;

public class DigestTests
{
    [Theory]
    [InlineData("rules", "  - id: CUFF-020", "  # a comment\n\n  - id: CUFF-020")]
    [InlineData("rules", "    because: Thick in itself or against the other side.\n    source: [trade]", "    source: [trade]\n    because: Thick in itself or against the other side.")]
    [InlineData("rules", "fluid spans bursal to articular surface and reangled persists", "reangled persists   and fluid spans bursal to articular")]
    [InlineData("rules", "owner: shoulder lead", "owner: somebody else")]
    [InlineData("rules", "review-by: 2027-09-01", "review-by: 2028-09-01")]
    [InlineData("rules", "over: [CUFF-020, CUFF-021]", "over: [CUFF-021, CUFF-020]")]
    [InlineData("rules", "above 8 mm", "above 0.80 cm")]
    [InlineData("pack", "version: 1.0.0", "version: 1.0.1")]
    [InlineData("pack", "  wording: The line is right and was worded differently.\n", "")]
    [InlineData("cases", "about: A dark tendon that was not re-angled.", "about: Another sentence.")]
    [InlineData("scales", "below 1 cm", "below 10 mm")]
    public void Layout_order_units_and_people_do_not_change_the_meaning(string kind, string old, string now)
    {
        var changed = Changed(kind, old, now);
        Assert.Equal(Reads.Example.MeaningDigest, changed.MeaningDigest);
        Assert.Equal(Reads.Example.Rules.Select(r => r.Revision), changed.Rules.Select(r => r.Revision));
        Assert.NotEqual(Reads.Example.TextDigest, changed.TextDigest);
    }

    [Theory]
    [InlineData("rules", "thickness above 8 mm", "thickness above 8.1 mm", "TEN-010")]
    [InlineData("rules", "tear-length assessed", "tear-length not assessed", "CUFF-040")]
    [InlineData("rules", "over: [CUFF-020, CUFF-021]", "over: [CUFF-020]", "CUFF-010")]
    [InlineData("rules", "→ several-torn; refer", "→ several-torn", "STUDY-001")]
    [InlineData("rules", "for: each biceps-tendon\n    rule: biceps subluxed", "for: each biceps-tendon\n    rule: not biceps subluxed", "BIC-004")]
    [InlineData("scales", "5 cm", "6 cm", "tear-size.massive")]
    public void A_change_of_meaning_changes_the_digest_and_the_revision_of_its_rule(string kind, string old, string now, string rule)
    {
        var changed = Changed(kind, old, now);
        Assert.NotEqual(Reads.Example.MeaningDigest, changed.MeaningDigest);
        var others = kind == "scales" ? ["tear-size.large"] : Array.Empty<string>();
        Assert.Equal(
            others.Append(rule).Order(StringComparer.Ordinal),
            Reads.Example.Rules.Zip(changed.Rules).Where(p => p.First.Revision != p.Second.Revision).Select(p => p.First.Id));
    }

    [Theory]
    [InlineData("rules", "because: Thick in itself or against the other side.", "because: It is thick.")]
    [InlineData("topics", "The {subject} is thickened ({thickness}).", "Thickened {subject} ({thickness}).")]
    [InlineData("topics", "certainty: probable", "certainty: possible")]
    [InlineData("topics", "value: \"202843000\"", "value: \"202843001\"")]
    [InlineData("vocabulary", "plausible: 0.5 mm to 30 mm", "plausible: 0.5 mm to 31 mm")]
    [InlineData("vocabulary", "30 mm, precision: 0.5 mm", "30 mm, precision: 0.4 mm")]
    [InlineData("vocabulary", "normal: 2 mm to 8 mm", "normal: 2 mm to 7 mm")]
    [InlineData("vocabulary", "title: supraspinatus tendon", "title: supraspinatus")]
    [InlineData("next-steps", "urgency: soon", "urgency: urgent")]
    [InlineData("next-steps", "done: modality ultrasound", "done: modality mri")]
    [InlineData("next-steps", "completed-by: [fluid, echo]", "completed-by: [fluid]")]
    [InlineData("cautions", "that can overestimate", "that overestimates")]
    [InlineData("protocols", "- biceps: [position]\n      - subscapularis: [fluid, echo]", "- subscapularis: [fluid, echo]\n      - biceps: [position]")]
    [InlineData("references", "Common practice, no source.", "Common practice.")]
    [InlineData("pack", "because: Replaced by CUFF-010.", "because: Wrong.")]
    [InlineData("pack", "A demonstration that no clinician has approved.", "Approved by nobody.")]
    [InlineData("measures", "is: defect-depth / thickness", "is: thickness / defect-depth")]
    public void Whatever_an_answer_shows_or_rests_on_is_part_of_the_meaning(string kind, string old, string now) =>
        Assert.NotEqual(Reads.Example.MeaningDigest, Changed(kind, old, now).MeaningDigest);

    [Fact]
    public void The_order_of_files_and_rules_is_no_part_of_the_meaning()
    {
        var text = ExamplePack.Plain.TextOf("rules");
        var blocks = text.Replace("rules:\n", "").Replace("...\n", "").Split("  - id: ", StringSplitOptions.RemoveEmptyEntries);
        var reversed = $"rules:\n{string.Concat(blocks.Reverse().Select(b => $"  - id: {b}"))}...\n";
        var (pack, messages) = Reads.Pack([.. ExamplePack.Plain.Replace("rules", reversed).Files.Reverse()]);
        Assert.Equal("", Reads.Show(messages));
        Assert.Equal(Reads.Example.MeaningDigest, pack!.MeaningDigest);
    }

    [Fact]
    public void The_text_digest_does_not_depend_on_the_order_in_which_files_come() =>
        Assert.Equal(Reads.Example.TextDigest, Reads.Pack([.. ExamplePack.Plain.Files.Reverse()]).Pack!.TextDigest);

    [Fact]
    public void Digests_are_lower_case_hex()
    {
        Assert.Matches("^[0-9a-f]{64}$", Reads.Example.MeaningDigest);
        Assert.Matches("^[0-9a-f]{64}$", Reads.Example.TextDigest);
        Assert.All(Reads.Example.Rules, r => Assert.Matches("^[0-9a-f]{12}$", r.Revision));
    }

    [Fact]
    public void An_approval_of_this_very_meaning_counts()
    {
        var pack = Approved(Reads.Example.MeaningDigest);
        Assert.Equal(new Approval("head of department", new DateOnly(2026, 9, 1), Reads.Example.MeaningDigest), pack.Pack!.Approval);
        Assert.Empty(pack.Messages);
    }

    [Fact]
    public void An_approval_of_another_meaning_is_a_doubt_and_does_not_count()
    {
        var (pack, messages) = Approved(new string('0', 64));
        Assert.Null(pack!.Approval);
        Assert.Equal(("FR1210", Severity.Doubt), (Assert.Single(messages).Code, messages[0].Severity));
    }

    private static (Pack? Pack, ImmutableArray<Message> Messages) Approved(string digest) =>
        Reads.Pack(ExamplePack.Plain.Replace("pack", ExamplePack.Plain.TextOf("pack").Replace(
            "approval: demonstration", $"approval: {{ by: head of department, on: 2026-09-01, digest: {digest} }}", StringComparison.Ordinal)));

    private static Pack Changed(string kind, string old, string now)
    {
        var text = ExamplePack.Plain.TextOf(kind);
        Assert.Contains(old, text, StringComparison.Ordinal);
        var (pack, messages) = Reads.Pack(ExamplePack.Plain.Replace(kind, text.Replace(old, now, StringComparison.Ordinal)));
        Assert.True(pack is not null, Reads.Show(messages));
        return pack;
    }
}
