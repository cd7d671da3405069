using System.Collections.Immutable;
using FindingRules.Language.Syntax;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Language.Binding;

/// <summary>The name of a kind or a structure to the structures that are meant.</summary>
internal sealed class ScopeBinder(Symbols symbols, MappedText text, MessageBag messages)
{
    public Scope? Bind(ScopeSyntax scope) => scope.Words.IsEmpty ? Scope.Study : BindNamed(scope.Words);

    public Scope? BindNamed(ImmutableArray<WordSyntax> words)
    {
        var vocabulary = symbols.Vocabulary;
        var span = words[0].Span.Through(words[^1].Span);
        var name = string.Join(' ', words.Select(w => w.Text));
        vocabulary.Structures.TryGetValue(name, out var structure);
        vocabulary.Kinds.TryGetValue(name, out var kind);
        var structures = kind is null ? [] : vocabulary.StructuresOf(kind);
        var message = (structure, kind) switch
        {
            (null, null) => Unknown(words, text.At(span), name),
            (null, _) when structures.IsEmpty => NameMessages.KindOfNothing(text.At(span), name),
            _ => null,
        };
        if (message is null)
            return new Scope($"each {name}", structure?.Kind ?? kind!, structure is null ? structures : [structure]);
        messages.Add(message);
        return null;
    }

    private Message Unknown(ImmutableArray<WordSyntax> words, Location at, string name)
    {
        var context = new BindingContext(symbols, Scope.Study, text, messages);
        return Hyphens.Find(context, words) ?? NameMessages.UnknownStructure(
            at, name, [.. symbols.Vocabulary.Kinds.Keys, .. symbols.Vocabulary.Structures.Keys]);
    }
}
