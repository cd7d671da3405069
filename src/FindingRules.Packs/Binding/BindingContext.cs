using System.Collections.Immutable;
using FindingRules.Language;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Names;

namespace FindingRules.Packs.Binding;

/// <summary>What the binders of a pack's files share. The symbols grow from file to file.</summary>
internal sealed class BindingContext(PackFiles files, LoadLimits limits, MessageBag messages)
{
    public PackFiles Files { get; } = files;

    public LoadLimits Limits { get; } = limits;

    public MessageBag Messages { get; } = messages;

    public KnownNames Known { get; } = new();

    public Symbols Symbols { get; set; } = new() { Vocabulary = Vocabulary.Empty };

    public ImmutableSortedDictionary<string, Reference> References
    {
        get => Symbols.References;
        set => Symbols = Symbols with { References = value };
    }

    /// <summary>
    /// Lets the rule language read a text. What it says only because of a mistake elsewhere is left out; a text that
    /// could not be read is null all the same.
    /// </summary>
    public T? Read<T>(Func<RuleLanguage, T?> read, MessageBag? into = null)
    {
        var heard = new MessageBag();
        var result = read(new RuleLanguage(Symbols, Limits, heard));
        if (heard.Count == 0) return result;
        foreach (var message in heard.Sorted())
            if (!Known.Excuses(message))
                (into ?? Messages).Add(message);
        return result;
    }

    public Scope? ReadScope(Fields fields, MessageBag? into = null)
    {
        if (fields.Text("for") is not { } text) return null;
        var scope = Read(language => language.ReadScope(text.Text), into);
        if (scope is null) fields.Spoil();
        return scope;
    }
}
