using FindingRules.Language.Syntax;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>Says of a phrase without any reading which word is to blame, and what was likely meant.</summary>
internal sealed class UnknownPhrase(BindingContext context, PhraseSyntax phrase, List<PlaceCandidate> places, Form form)
{
    public Message Explain()
    {
        if (Hyphens.Find(context, [.. phrase.Words, .. form.Given]) is { } hyphens) return hyphens;
        var understood = places.Max(p => p.Understood);
        var furthest = places.Where(p => p.Understood == understood).ToList();
        var word = phrase.Words[understood];
        var isLast = phrase.Words.Length == understood + 1 && form.Given.IsEmpty;
        return (isLast ? BareValue(word, furthest) : null)
            ?? OfOthers(word, furthest[0])
            ?? Misspelt(word, furthest, isLast);
    }

    private Message? BareValue(WordSyntax word, List<PlaceCandidate> furthest)
    {
        var ways = furthest
            .SelectMany(p => ScopeNames.All(context.Symbols, p.Scope)).Select(t => WayToSay(t, word.Text))
            .OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        return ways.Count == 0 ? null : NameMessages.BareValue(context.At(word.Span), word.Text, ways);
    }

    private static string? WayToSay(Target target, string value) => target switch
    {
        { Values: var values } when values.Contains(value) => $"{target.Name} {value}",
        FindingTarget { Finding.Type: ExtentType extent } when extent.Axis.IndexOf(value) >= 0 => $"{target.Name} reaches {value}",
        _ => null,
    };

    private Message? OfOthers(WordSyntax word, PlaceCandidate place)
    {
        var at = context.At(word.Span);
        var owner = Owner(place);
        var name = word.Text;
        var kinds = KindsWith(name);
        if (kinds.Count > 0)
        {
            var wayOut = place.Scope.IsStudy ? $"count the structures: `any {kinds[0]} where ({name} …)`"
                : place.Understood > 0 ? $"`{owner}` has {Findings(place)}"
                : $"write the rule for `each {kinds[0]}`";
            return NameMessages.FindingOfOthers(at, name, kinds, owner, wayOut);
        }
        if (context.Symbols.Topics.TryGetValue(name, out var topic)) return OfOtherScope(at, name, "topic", topic.Scope, place);
        if (context.Symbols.DerivedMeasures.TryGetValue(name, out var measure))
            return OfOtherScope(at, name, "derived measure", measure.Scope, place);
        return context.Vocabulary.StudyFacts.ContainsKey(name)
            ? NameMessages.FindingOfOthers(at, name, ["study"], owner, $"write `study {name}`")
            : null;
    }

    private static Message OfOtherScope(Location at, string name, string what, Scope its, PlaceCandidate place)
    {
        var wayOut = its.IsStudy ? $"write `{name}` without a structure"
            : place.Scope.IsStudy ? $"count the structures: `any {its.Written["each ".Length..]} where ({name} …)`"
            : $"write the rule for `{its.Written}`";
        return NameMessages.TopicOfOthers(at, name, what, its.Written, place.Scope.Written, wayOut);
    }

    /// <summary>The kinds that declare it, and not those that only inherit it.</summary>
    private List<string> KindsWith(string finding) =>
    [
        .. context.Vocabulary.Kinds.Values
            .Where(k => k.Findings.ContainsKey(finding) && !(k.Like?.Findings.ContainsKey(finding) ?? false))
            .Select(k => k.Name),
    ];

    private Message Misspelt(WordSyntax word, List<PlaceCandidate> furthest, bool isLast)
    {
        var names = furthest.SelectMany(p => ScopeNames.All(context.Symbols, p.Scope)).Select(t => t.Name);
        if (furthest[0].Understood == 0 && phrase.Prefixes.All(p => p.Text != "study"))
            names = names.Concat(context.Vocabulary.Structures.Keys).Concat(context.Vocabulary.Kinds.Keys);
        else if (isLast)
            names = names.Concat(furthest.SelectMany(p => ScopeNames.All(context.Symbols, p.Scope)).SelectMany(t => t.Values));
        return NameMessages.UnknownFinding(
            context.At(word.Span), Owner(furthest[0]), word.Text, [.. names.Distinct(StringComparer.Ordinal)]);
    }

    private string Owner(PlaceCandidate place) =>
        place.Scope.IsStudy ? "study" : place.Understood > 0 ? phrase.Words[0].Text : context.Owner;

    private static string Findings(PlaceCandidate place) =>
        Spelling.List((place.Scope.Kind?.Findings ?? Vocabulary.Empty.StudyFacts).Keys.Take(6), "and");
}
