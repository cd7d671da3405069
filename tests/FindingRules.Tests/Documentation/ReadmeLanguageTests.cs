using System.Text.RegularExpressions;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Truths;
using FindingRules.Packs;
using Xunit;

namespace FindingRules.Tests.Documentation;

/// <summary>Each rule that README shows is read by the shipped pack, and becomes of it in the shown study what README says.</summary>
public sealed partial class ReadmeLanguageTests
{
    private const string Id = "README-001";

    public static TheoryData<string, string, int> Rules()
    {
        var data = new TheoryData<string, string, int>();
        foreach (var block in FencedBlock.All.Where(b => b.Sort.StartsWith("rule ", StringComparison.Ordinal)))
            data.Add(block.Sort["rule ".Length..], block.Text, block.Line);
        return data;
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_shown_rule_is_as_true_as_it_says(string scope, string text, int line)
    {
        var claim = Claim().Match(text);
        Assert.True(claim.Success, $"README.md:{line} does not say what becomes of the rule");

        var truth = TruthOf(Claim().Replace(text, ""), scope, claim.Groups["subject"].Value);

        Assert.Equal(claim.Groups["truth"].Value, truth.ToString(), ignoreCase: true);
    }

    [Fact]
    public void Every_form_of_the_language_is_shown()
    {
        var shown = string.Join('\n', FencedBlock.All.Where(b => b.Sort.StartsWith("rule ", StringComparison.Ordinal)).Select(b => b.Text));
        string[] forms =
        [
            "→", ";", " and ", " or ", "not (", "is not ", "no ", "above ", "at least 1 cm", ">= ", "between ", "spans ", "reaches ", "within ",
            " assessed", "not assessed", "ipsilateral ", "contralateral ", "earlier ", "any ", "at least 2 ", "where (", " + ", "evaluate ",
            " next", "hold ",
        ];

        Assert.All(forms, f => Assert.Contains(f, shown, StringComparison.Ordinal));
    }

    private static Truth TruthOf(string rule, string scope, string subject)
    {
        var pack = ShippedPack.With(scope, rule, Id).Pack;
        var messages = new MessageBag();
        var study = StudyReader.Read(ShippedPack.Study(FencedBlock.The("json study").Text), pack, LoadLimits.Default, messages);
        Assert.True(study is not null, ShippedPack.InWords(messages.Sorted()));

        var outcome = Evaluator.Decide(NetworkCompiler.Compile(pack), study);

        return Assert.Single(outcome.Rules, r => r.Rule.Id == Id && r.Subject.Key == subject).Truth;
    }

    [GeneratedRegex(@"^# (?<truth>true|false|unknown) of the (?<subject>.+)\n", RegexOptions.Multiline)]
    private static partial Regex Claim();
}
