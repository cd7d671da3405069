using System.Collections.Immutable;
using FindingRules.Language;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Content;
using FindingRules.Packs.Digests;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Rules;

/// <summary>One rule of a rules file.</summary>
internal static class RuleBinder
{
    private static readonly string[] Required = ["id", "for", "rule", "because", "source"];
    private static readonly string[] Optional = ["over", "owner", "reviewed", "review-by", "choice"];

    public static RuleDraft? Bind(NamedEntry entry, BindingContext context, MessageBag messages)
    {
        var (id, body) = entry;
        if (Fields.Of(body, $"the rule `{id.Value}`", id.Inside, messages, Required, Optional) is not { } fields) return null;
        var scope = context.ReadScope(fields, messages);
        var text = fields.Text("rule");
        RuleMeaning? meaning = null;
        if (scope is not null && text is not null) meaning = context.Read(language => language.ReadRule(text.Text, scope), messages);
        var sources = ReferencesBinder.Look(fields, context);
        var over = fields.Texts("over");
        var isPerStructure = meaning is not null && GrainCheck.IsPerStructure(id, meaning.Conclusions, fields);
        var rule = Draft(id, fields, scope, meaning, sources, [.. over.Select(o => o.Value)], isPerStructure);
        return rule is null ? null : new RuleDraft(rule, id, over);
    }

    private static Rule? Draft(
        ScalarNode id, Fields fields, Scope? scope, RuleMeaning? meaning,
        ImmutableArray<Reference> sources, ImmutableArray<string> over, bool isPerStructure)
    {
        var (because, owner, choice) = (fields.Words("because"), fields.Words("owner"), fields.Words("choice"));
        var (reviewed, reviewBy) = (fields.Date("reviewed"), fields.Date("review-by"));
        if (scope is null || meaning is null || !fields.IsSound) return null;
        return new Rule(id.Value, scope, meaning.Condition, meaning.Conclusions, id.Location)
        {
            Text = fields.Words("rule")!,
            Because = because!,
            Sources = sources,
            Over = over,
            Owner = owner,
            Reviewed = reviewed,
            ReviewBy = reviewBy,
            Choice = choice,
            IsPerStructure = isPerStructure,
            Revision = RuleRevision.Of(id.Value, scope, meaning.Condition, meaning.Conclusions, over, isPerStructure),
        };
    }
}
