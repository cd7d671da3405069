using System.Collections.Immutable;
using FindingRules.Language.Syntax;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>Finds a name whose hyphens were written as gaps: <c>full thickness</c>.</summary>
internal static class Hyphens
{
    private const int MostWords = 4;

    public static Message? Find(BindingContext context, ImmutableArray<WordSyntax> words)
    {
        if (words.Length < 2) return null;
        var names = AllNames(context.Symbols);
        for (var from = 0; from < words.Length; from++)
        {
            for (var count = Math.Min(MostWords, words.Length - from); count > 1; count--)
            {
                var run = words.AsSpan().Slice(from, count);
                var hyphenated = string.Join('-', run.ToArray().Select(w => w.Text));
                if (!names.Contains(hyphenated)) continue;
                var span = run[0].Span.Through(run[^1].Span);
                return NameMessages.Hyphens(context.At(span), context.Written(span), hyphenated);
            }
        }
        return null;
    }

    private static HashSet<string> AllNames(Symbols symbols)
    {
        var vocabulary = symbols.Vocabulary;
        var findings = vocabulary.Kinds.Values.SelectMany(k => k.Findings.Values).Concat(vocabulary.StudyFacts.Values);
        return new HashSet<string>(
            [
                .. vocabulary.Structures.Keys, .. vocabulary.Kinds.Keys, .. symbols.NextSteps.Keys, .. symbols.Cautions.Keys,
                .. symbols.DerivedMeasures.Keys, .. symbols.Topics.Keys,
                .. symbols.Topics.Values.SelectMany(t => t.Values).Select(v => v.Name),
                .. findings.SelectMany(f => f.Type is ChoiceType choice ? choice.Values.Add(f.Name) : [f.Name]),
                .. vocabulary.Axes.Values.SelectMany(a => a.Points.Add(a.Name)),
            ],
            StringComparer.Ordinal);
    }
}
