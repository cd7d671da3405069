using System.Text.RegularExpressions;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs.Binding;

/// <summary>One mistake is one message, however much of the pack rests on what is mistaken.</summary>
public partial class CascadeTests
{
    public static TheoryData<string> Kinds => [.. ExamplePack.Kinds];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_key_too_many_is_one_message_wherever_it_is(string kind)
    {
        var text = ExamplePack.Plain.TextOf(kind);
        var places = EndOfGroup().Matches(text).Where(m => !IsInQuotes(text, m.Index)).ToArray();
        foreach (var place in places)
        {
            var spoilt = text.Insert(place.Index, ", zzz: 1");
            var (_, messages) = Reads.Pack(ExamplePack.Plain.Replace(kind, spoilt));
            Assert.True(messages.Length == 1, $"{kind} at {place.Index}:\n{Reads.Show(messages)}");
        }
    }

    [Theory]
    [InlineData("vocabulary", "  tendon:\n    findings:", "  tendon:\n    finding:", "FR1102")]
    [InlineData("vocabulary", "like: tendon\n    findings:\n      position", "like: tendn\n    findings:\n      position", "FR3502")]
    [InlineData("vocabulary", "surface: [bursal, intrasubstance, articular]", "surface: [bursal]", "FR1114")]
    [InlineData("vocabulary", "  biceps: {", "  Biceps: {", "FR1105")]
    [InlineData("vocabulary", "echo: { choose: [fibrillar,", "echo: { choose: [Fibrillar,", "FR1105")]
    [InlineData("vocabulary", "tear-length: { measure: mm,", "tear-length: { measure: mn,", "FR1304")]
    [InlineData("vocabulary", "radiograph: { choose: [negative, positive]", "radiograph: { choose: negative", "FR1103")]
    [InlineData("topics", "  tear-depth:\n    for: each cuff-tendon", "  tear-depth:\n    for: each cuf-tendon", "FR3")]
    [InlineData("topics", "      thickened: {", "      Thickened: {", "FR1105")]
    [InlineData("references", "status: common-practice", "status: usual", "FR1111")]
    [InlineData("measures", "is: defect-depth / thickness", "is: defect-depth / thicknes", "FR3")]
    [InlineData("scales", "of: tear-length", "of: tear-lenght", "FR3")]
    [InlineData("scales", "medium: from 1 cm to below 3 cm", "medium: from 1 to below 3 cm", "FR")]
    [InlineData("rules", "    for: each cuff-tendon\n    rule: fluid spans", "    for: each cuf-tendon\n    rule: fluid spans", "FR3")]
    [InlineData("rules", "rule: fluid reaches bursal →", "rule: fluid reachs bursal →", "FR")]
    [InlineData("next-steps", "done: modality ultrasound", "done: modality ultrasoun", "FR3")]
    [InlineData("protocols", "calm: No abnormality", "calm: \"{subjct} No abnormality\" #", "FR3530")]
    public void What_rests_on_a_mistake_is_not_said_as_well(string kind, string sound, string spoilt, string code)
    {
        var text = ExamplePack.Plain.TextOf(kind);
        Assert.Contains(sound, text, StringComparison.Ordinal);
        var (pack, messages) = Reads.Pack(ExamplePack.Plain.Replace(kind, text.Replace(sound, spoilt, StringComparison.Ordinal)));
        Assert.Null(pack);
        Assert.True(messages.Length == 1 && messages[0].Code.StartsWith(code, StringComparison.Ordinal), Reads.Show(messages));
    }

    [Theory]
    [InlineData("vocabulary", "  supraspinatus: {", "  supraspinatsu: {", "supraspinatus")]
    [InlineData("vocabulary", "      echo: {", "      ecco: {", "echo")]
    [InlineData("vocabulary", "      thickness: {", "      thicknes: {", "thickness")]
    [InlineData("vocabulary", "  cuff-tendon:\n", "  cuf-tendon:\n", "cuff-tendon")]
    [InlineData("vocabulary", "      position: {", "      positon: {", "position")]
    [InlineData("vocabulary", "[bursal, intra", "[bursel, intra", "bursal")]
    [InlineData("vocabulary", "  radiograph: {", "  radiogrph: {", "radiograph")]
    [InlineData("topics", "  tear-depth:", "  tear-dept:", "tear-depth")]
    [InlineData("topics", "      full-thickness:", "      full-thicknes:", "full-thickness")]
    [InlineData("references", "  trade:", "  trad:", "trade")]
    public void A_name_misspelt_where_it_is_declared_is_one_message_there(string kind, string sound, string spoilt, string meant)
    {
        var text = ExamplePack.Plain.TextOf(kind);
        Assert.Contains(sound, text, StringComparison.Ordinal);
        var (_, messages) = Reads.Pack(ExamplePack.Plain.Replace(kind, text.Replace(sound, spoilt, StringComparison.Ordinal)));
        Assert.True(messages.Length == 1, Reads.Show(messages));
        Assert.Equal(("FR3542", meant, $"{kind}.yaml"), (messages[0].Code, messages[0].Fix?.Replacement, messages[0].Location.Source.Path));
    }

    [Fact]
    public void A_name_misspelt_where_it_is_used_is_told_at_each_place()
    {
        var text = ExamplePack.Plain.TextOf("rules").Replace("thickness", "thicknes", StringComparison.Ordinal);
        var (_, messages) = Reads.Pack(ExamplePack.Plain.Replace("rules", text));
        Assert.True(messages.Length > 3, Reads.Show(messages));
        Assert.All(messages, m => Assert.Equal("rules.yaml", m.Location.Source.Path));
    }

    [Theory]
    [InlineData("rules", "id: CUFF-020", "id: CUFF-010", "FR1112")]
    [InlineData("vocabulary", "echo: { choose: [", "echo: { choos: [", "FR1102")]
    [InlineData("pack", "- { references: references.yaml", "- { reference: references.yaml", "FR1102")]
    public void What_a_slip_in_a_declaration_brings_about_is_not_said_as_well(string kind, string sound, string spoilt, string code)
    {
        var text = ExamplePack.Plain.TextOf(kind);
        Assert.Contains(sound, text, StringComparison.Ordinal);
        var (_, messages) = Reads.Pack(ExamplePack.Plain.Replace(kind, text.Replace(sound, spoilt, StringComparison.Ordinal)));
        Assert.True(messages.Length == 1 && messages[0].Code == code, Reads.Show(messages));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_file_that_cannot_be_read_is_one_message(string kind)
    {
        var (_, messages) = Reads.Pack(ExamplePack.Plain.Replace(kind, "[\n" + ExamplePack.Plain.TextOf(kind)));
        Assert.True(messages.Length == 1, Reads.Show(messages));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_file_that_is_not_there_is_one_message(string kind)
    {
        var files = ExamplePack.Plain.Files.Where(f => f.Path != $"{kind}.yaml");
        var (_, messages) = Reads.Pack([.. files]);
        Assert.True(messages.Length == 1 && messages[0].Code == "FR1202", Reads.Show(messages));
    }

    [Fact]
    public void All_mistakes_of_all_files_are_told_at_once()
    {
        var pack = ExamplePack.Plain
            .Replace("rules", ExamplePack.Plain.TextOf("rules")
                .Replace("→ full-thickness", "→ full-thicknes", StringComparison.Ordinal)
                .Replace("thickness above 8 mm", "thickness above 8", StringComparison.Ordinal))
            .Replace("vocabulary", ExamplePack.Plain.TextOf("vocabulary").Replace("trauma: { sign: true }", "trauma: { sign: yes }", StringComparison.Ordinal))
            .Replace("cases", ExamplePack.Plain.TextOf("cases").Replace("next: [ultrasound]", "next: [ultrasond]", StringComparison.Ordinal))
            .Replace("scales", ExamplePack.Plain.TextOf("scales").Replace("above 5 cm", "above 6 cm", StringComparison.Ordinal));
        var (_, messages) = Reads.Pack(pack);
        Assert.Equal(
            ["cases.yaml", "rules.yaml", "rules.yaml", "scales.yaml", "vocabulary.yaml"], messages.Select(m => m.Location.Source.Path));
    }

    private static bool IsInQuotes(string text, int at) =>
        text.AsSpan(text.LastIndexOf('\n', at) + 1, at - text.LastIndexOf('\n', at) - 1).Count('"') % 2 == 1;

    [GeneratedRegex(@" \}")]
    private static partial Regex EndOfGroup();
}
