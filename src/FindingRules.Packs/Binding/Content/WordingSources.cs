using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

/// <summary>
/// What may fill a place: of a wording for one scope what that scope has, and of one that rules of any scope use
/// (<paramref name="scope"/> null) whatever some scope has. The subject's own comes before the study's.
/// </summary>
internal sealed class WordingSources(Scope? scope, BindingContext context)
{
    private const string Subject = "subject";

    public WordingSource? Find(string name, Location at, MessageBag messages)
    {
        if (name == Subject)
        {
            if (scope is not { IsStudy: true }) return new SubjectSource();
            messages.Add(LinkMessages.SubjectOfStudy(at));
            return null;
        }
        if (FindFinding(name) is { } finding) return new FindingSource(finding);
        if (context.Symbols.DerivedMeasures.TryGetValue(name, out var derived) && Meets(derived.Scope))
            return new DerivedSource(derived);
        if (context.Symbols.Topics.TryGetValue(name, out var topic) && Meets(topic.Scope)) return new TopicSource(topic);
        if (context.Symbols.Vocabulary.StudyFacts.TryGetValue(name, out var fact)) return new FactSource(fact);
        if (!IsExcused(name)) messages.Add(LinkMessages.UnknownPlace(at, Shown.Briefly(name), scope?.Written ?? "any rule", Known()));
        return null;
    }

    private Finding? FindFinding(string name)
    {
        if (scope is not null) return scope.Kind?.Findings.GetValueOrDefault(name);
        foreach (var kind in context.Symbols.Vocabulary.Kinds.Values)
            if (kind.Findings.TryGetValue(name, out var finding))
                return finding;
        return null;
    }

    // An answer about the study may stand in the wording of any subject.
    private bool Meets(Scope other) => scope is null || other.IsStudy || scope.Overlaps(other);

    private bool IsExcused(string name) =>
        context.Known.Excuses(name, FileKind.Vocabulary) || context.Known.Excuses(name, FileKind.Topics)
        || context.Known.Excuses(name, FileKind.Measures) || context.Known.Excuses(name, FileKind.Scales);

    private string[] Known() =>
    [
        .. scope is null || scope.IsStudy ? [] : scope.Kind!.Findings.Keys,
        .. scope is null ? context.Symbols.Vocabulary.Kinds.Values.SelectMany(k => k.Findings.Keys).Distinct() : [],
        .. context.Symbols.DerivedMeasures.Values.Where(d => Meets(d.Scope)).Select(d => d.Name),
        .. context.Symbols.Topics.Values.Where(t => Meets(t.Scope)).Select(t => t.Name),
        .. context.Symbols.Vocabulary.StudyFacts.Keys,
        .. scope is { IsStudy: true } ? Array.Empty<string>() : [Subject],
    ];
}
