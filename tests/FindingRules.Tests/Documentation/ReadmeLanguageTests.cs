using System.Text.RegularExpressions;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Truths;
using FindingRules.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Documentation;

/// <summary>Each rule that README shows is read by the shipped pack, and becomes of it in the shown study what README says.</summary>
public sealed partial class ReadmeLanguageTests
{
    private const string Id = "README-001";
    private const string Sort = "rule ";

    private static IEnumerable<FencedBlock> Blocks => FencedBlock.All.Where(b => b.Sort.StartsWith(Sort, StringComparison.Ordinal));

    /// <summary>Scope · rule · truth · subject · block.</summary>
    public static TheoryData<string, string, string, string> Rules()
    {
        var data = new TheoryData<string, string, string, string>();
        foreach (var block in Blocks)
            foreach (Match shown in Shown().Matches(block.Text))
                data.Add(block.Sort[Sort.Length..], shown.Groups["rule"].Value, shown.Groups["truth"].Value, shown.Groups["subject"].Value);
        return data;
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_shown_rule_is_as_true_as_it_says(string scope, string rule, string truth, string subject) =>
        Assert.Equal(truth, TruthOf(rule, scope, subject).ToString(), ignoreCase: true);

    [Fact]
    public void Every_shown_rule_says_what_becomes_of_it() =>
        Assert.All(Blocks, b => Assert.Empty(Shown().Replace(b.Text, "").Trim()));

    [Fact]
    public void Every_form_of_the_language_is_shown()
    {
        var shown = string.Join('\n', Blocks.Select(b => b.Text));
        string[] forms =
        [
            "→", ";", " and ", " or ", "not (", "is not ", "no ", "above ", "at least 1 cm", ">= ", "between ", "spans ", "reaches ", "within ",
            " assessed", "not assessed", "ipsilateral ", "contralateral ", "earlier ", "any ", "at least 2 ", "where (", " + ", "evaluate ",
            " next", "hold ",
        ];

        Assert.All(forms, f => Assert.Contains(f, shown, StringComparison.Ordinal));
    }

    public static TheoryData<string> Consequences() =>
    [
        .. Repository.ReadText(FencedBlock.Path)
            .Split("| after the arrow |")[1].Split("\n\n")[0]
            .Split("\n| `").Skip(1)
            .Select(row => row.Split('`')[0]),
    ];

    [Theory]
    [MemberData(nameof(Consequences))]
    public void A_listed_consequence_can_follow(string consequence)
    {
        var rule = ReadmePack.Bind(Id, "each cuff-tendon", $"tear-length assessed → {consequence}", ExamplePack.Plain.Compile().Pack);

        Assert.Single(rule.Conclusions);
    }

    private static Truth TruthOf(string rule, string scope, string subject)
    {
        var pack = ReadmePack.With(Id, scope, rule.Trim());
        var messages = new MessageBag();
        var study = StudyReader.Read(ReadmePack.Study(FencedBlock.The("json study").Text), pack, LoadLimits.Default, messages);
        Assert.True(study is not null, ReadmePack.InWords(messages.Sorted()));

        var outcome = Evaluator.Decide(NetworkCompiler.Compile(pack), study);

        return Assert.Single(outcome.Rules, r => r.Rule.Id == Id && r.Subject.Key == subject).Truth;
    }

    [GeneratedRegex(@"(?<rule>(?:^(?!#).*\n)+?)^# (?<truth>true|false|unknown) of the (?<subject>.+)\n", RegexOptions.Multiline)]
    private static partial Regex Shown();
}
