using System.Collections.Immutable;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Linking;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Vocabularies;

/// <summary>Kinds, each after the one that it is like.</summary>
internal sealed class KindsBinder
{
    private readonly BindingContext _context;
    private readonly Dictionary<string, (NamedEntry Entry, Fields? Fields)> _written;
    private readonly ImmutableSortedDictionary<string, Kind>.Builder _bound = Vocabulary.Empty.Kinds.ToBuilder();

    private KindsBinder(BindingContext context)
    {
        _context = context;
        _written = NamedEntries.Read(context, FileKind.Vocabulary, "kinds", "kind").ToDictionary(
            e => e.Name.Value,
            e => (e, FieldsOf(e)),
            StringComparer.Ordinal);
    }

    public static ImmutableSortedDictionary<string, Kind> Bind(BindingContext context)
    {
        var binder = new KindsBinder(context);
        binder.RefuseCycles();
        foreach (var name in binder.InOrder()) binder.BindKind(name);
        return binder._bound.ToImmutable();
    }

    private Fields? FieldsOf(NamedEntry entry)
    {
        var owner = $"the kind `{entry.Name.Value}`";
        return Fields.Of(entry.Body, owner, entry.Name.Inside, _context.Messages, [], "like", "findings");
    }

    private string? LikeOf(string name) =>
        _written[name].Fields is { } fields && fields.Node("like") is ScalarNode like ? like.Value : null;

    private void RefuseCycles()
    {
        foreach (var path in Cycles.Find(_written.Keys, name => LikeOf(name) is { } like && _written.ContainsKey(like) ? [like] : []))
        {
            _context.Messages.Add(LinkMessages.KindCycle(_written[path[0]].Entry.Name.Inside, Cycles.Show(path)));
            foreach (var name in path) _context.Known.AddBroken(name);
            foreach (var name in path) _written[name].Fields!.Spoil();
        }
    }

    private List<string> InOrder()
    {
        var order = new List<string>();
        var placed = new HashSet<string>(StringComparer.Ordinal);
        foreach (var name in _written.Keys)
        {
            var line = new Stack<string>();
            for (var at = name; at is not null && _written.ContainsKey(at) && placed.Add(at); at = LikeOf(at)) line.Push(at);
            order.AddRange(line);
        }
        return order;
    }

    private void BindKind(string name)
    {
        var (entry, fields) = _written[name];
        if (fields is null || !fields.IsSound || BindLike(fields) is not { IsKnown: true } like)
        {
            _context.Known.AddBroken(name);
            BreakFindings(fields);
            return;
        }
        var findings = (like.Kind?.Findings ?? Vocabulary.Empty.StudyFacts).ToBuilder();
        foreach (var (word, body) in fields.Group("findings")?.Entries ?? [])
        {
            if (like.Kind?.Findings.GetValueOrDefault(word.Value) is { } inherited)
                _context.Messages.Add(LinkMessages.Redeclared(word.Inside, word.Value, name, like.Kind.Name, inherited.DeclaredAt));
            else if (FindingBinder.Bind(word, body, _context) is { } finding && !IsAge(finding, word))
                findings.Add(finding.Name, finding);
        }
        if (!fields.IsSound) _context.Known.AddBroken(name);
        else _bound.Add(name, new Kind(name, like.Kind, findings.ToImmutable(), entry.Name.Location));
    }

    private bool IsAge(Finding finding, ScalarNode word)
    {
        if (finding.Type is not MeasureType measure || measure.Unit.Dimension != Unit.Year.Dimension) return false;
        _context.Messages.Add(PackMessages.AgeOfAStructure(word.Inside, finding.Name));
        _context.Known.AddBroken(finding.Name);
        return true;
    }

    private (bool IsKnown, Kind? Kind) BindLike(Fields fields)
    {
        if (fields.Text("like") is not { } like) return (fields.IsSound, null);
        if (_bound.TryGetValue(like.Value, out var kind)) return (true, kind);
        if (!_written.ContainsKey(like.Value) && !_context.Known.Excuses(like.Value, FileKind.Vocabulary))
            _context.Messages.Add(LinkMessages.UnknownKind(like.Inside, Shown.Briefly(like.Value), [.. _written.Keys]));
        return (false, null);
    }

    private void BreakFindings(Fields? fields)
    {
        if (fields?.Node("findings") is not MappingNode findings) return;
        foreach (var (word, _) in findings.Entries) _context.Known.AddBroken(word.Value);
    }
}
