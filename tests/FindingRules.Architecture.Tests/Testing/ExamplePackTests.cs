using System.Text;
using System.Text.RegularExpressions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Architecture.Tests.Testing;

public sealed class ExamplePackTests
{
    private const string OneRule = "rules:\n  - id: CUFF-010\n    for: each cuff-tendon\n...\n";

    public static TheoryData<string> Kinds => [.. ExamplePack.Kinds];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Entries_are_counted_as_the_manifest_states_them(string kind)
    {
        var stated = Regex.Match(ExamplePack.Plain.TextOf("pack"), $@"\{{ {kind}: .* entries: (\d+)").Groups[1].Value;
        Assert.Equal(stated, $"{EntryCount.Of(ExamplePack.Plain.TextOf(kind))}");
    }

    [Fact]
    public void A_replaced_file_is_counted_anew_and_what_spoke_of_its_rules_goes()
    {
        var pack = ExamplePack.Plain.With("rules", OneRule);
        Assert.Contains("{ rules: rules.yaml, entries: 1 }", pack.TextOf("pack"), StringComparison.Ordinal);
        Assert.DoesNotContain("withdrawn", pack.TextOf("pack"), StringComparison.Ordinal);
        Assert.Contains("{ cases: cases.yaml, entries: 1 }", pack.TextOf("pack"), StringComparison.Ordinal);
        Assert.Equal(["CASE-CUFF-030"], Regex.Matches(pack.TextOf("cases"), "CASE-[A-Z0-9-]+").Select(m => m.Value));
        Assert.Equal(OneRule, Encoding.UTF8.GetString(pack.Files.Single(f => f.Path == "rules.yaml").Bytes.Span));
    }

    [Fact]
    public void Cases_that_speak_of_other_rules_stay()
    {
        var pack = ExamplePack.Plain.With("scales", "scales:\n  other-scale: { for: study }\n...\n");
        Assert.DoesNotContain("CASE-CUFF-010", pack.TextOf("cases"), StringComparison.Ordinal);
        Assert.Contains("CASE-BIC-004", pack.TextOf("cases"), StringComparison.Ordinal);
        Assert.Contains("{ cases: cases.yaml, entries: 3 }", pack.TextOf("pack"), StringComparison.Ordinal);
        Assert.Contains("CUFF-090", pack.TextOf("pack"), StringComparison.Ordinal);
    }
}
