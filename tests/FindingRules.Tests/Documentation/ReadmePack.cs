using FindingRules.Language;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Testing;

namespace FindingRules.Tests.Documentation;

/// <summary>The pack that README speaks of, read once.</summary>
internal static class ReadmePack
{
    private static readonly PackLoad Load = PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound"));

    public static CompiledPack Compiled => Load.Pack ?? throw new InvalidOperationException(InWords(Load.Messages));

    /// <summary>The pack with one more rule.</summary>
    public static Pack With(string id, string scope, string text)
    {
        var rule = Bind(id, scope, text, Compiled.Pack);
        return Compiled.Pack with { Rules = [.. Compiled.Pack.Rules.Append(rule).OrderBy(r => r.Id, StringComparer.Ordinal)] };
    }

    public static SourceText Study(string json) => new("study.json", json);

    public static string InWords(IEnumerable<Message> messages)
    {
        var text = new StringWriter { NewLine = "\n" };
        MessageText.Write(text, [.. messages], MessageStyle.Plain);
        return text.ToString();
    }

    public static Rule Bind(string id, string scope, string text, Pack pack)
    {
        var messages = new MessageBag();
        var language = new RuleLanguage(pack.Symbols, LoadLimits.Default, messages);
        var source = new SourceText(FencedBlock.Path, text);
        var bound = language.ReadScope(MappedText.Verbatim(new SourceText(FencedBlock.Path, scope)));
        var meaning = bound is null ? null : language.ReadRule(MappedText.Verbatim(source), bound);
        if (bound is null || meaning is null) throw new InvalidOperationException(InWords(messages.Sorted()));
        return new Rule(id, bound, meaning.Condition, meaning.Conclusions, source.Whole)
        {
            Text = text,
            Because = "An example of README.",
            IsPerStructure = meaning.Conclusions.Any(c => c is TopicConclusion { Topic.IsPerStructure: true } or HoldConclusion { Topic.IsPerStructure: true }),
            Revision = "000000000000",
        };
    }
}
