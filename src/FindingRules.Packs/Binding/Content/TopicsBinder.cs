using System.Runtime.InteropServices;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Names;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

/// <summary>
/// Topics in two steps: first all names and values, so that any wording may speak of any topic, then the wordings.
/// </summary>
internal sealed class TopicsBinder
{
    private static readonly string[] ValueKeys = ["says", "certainty", "title", "code"];

    private readonly BindingContext _context;
    private readonly List<Pending> _pending = [];

    private TopicsBinder(BindingContext context) => _context = context;

    // INVARIANT: a topic's values are filled in by BindWordings, before anybody but this class sees them.
    private sealed record Pending(Topic Topic, TopicValue[] Values, List<(ScalarNode Name, Fields Fields)> Written);

    public static TopicsBinder BindNames(BindingContext context)
    {
        var binder = new TopicsBinder(context);
        var topics = context.Symbols.Topics.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.Topics, "topics", "topic"))
            if (binder.BindName(name, body) is { } topic) topics.Add(topic.Name, topic);
            else BreakValues(name, body, context);
        context.Symbols = context.Symbols with { Topics = topics.ToImmutable() };
        return binder;
    }

    public void BindWordings()
    {
        foreach (var pending in _pending)
            for (var i = 0; i < pending.Values.Length; i++)
                pending.Values[i] = BindValue(pending.Topic, pending.Written[i].Name, pending.Written[i].Fields);
    }

    private Topic? BindName(ScalarNode name, DocumentNode body)
    {
        var owner = $"the topic `{name.Value}`";
        var fields = Fields.Of(body, owner, name.Inside, _context.Messages, ["for", "values"], "per", "answers", "title");
        if (fields is null) return null;
        var scope = _context.ReadScope(fields);
        var isPerStructure = fields.OneOf("per", ("structure", true)) ?? false;
        if (isPerStructure && scope is { IsStudy: true }) fields.Report(LinkMessages.PerStructureOfStudy(name.Inside, name.Value));
        var answersEvery = fields.OneOf("answers", ("every", true)) ?? false;
        var title = fields.Words("title");
        var written = ReadValues(fields);
        if (scope is null || written is null || !fields.IsSound) return null;
        var values = new TopicValue[written.Count];
        var topic = new Topic(name.Value, scope, name.Location)
        {
            Title = title ?? name.Value.Replace('-', ' '),
            IsPerStructure = isPerStructure,
            AnswersEvery = answersEvery,
            Values = ImmutableCollectionsMarshal.AsImmutableArray(values),
        };
        // The names must be there for whoever looks them up before the wordings are bound.
        for (var i = 0; i < values.Length; i++)
            values[i] = new TopicValue(written[i].Name.Value, "", null, Certainty.Definite, null, written[i].Name.Location);
        _pending.Add(new Pending(topic, values, written));
        return topic;
    }

    private List<(ScalarNode Name, Fields Fields)>? ReadValues(Fields topic)
    {
        if (topic.Group("values") is not { } group) return null;
        if (group.Entries.Count == 0) topic.Report(PackMessages.TooFew(group.Location, $"`values` of {topic.Owner}", 0, 1));
        if (group.Entries.Count > Topic.MostValues)
            topic.Report(PackMessages.TooMany(group.Location, $"`values` of {topic.Owner}", group.Entries.Count, Topic.MostValues));
        var values = new List<(ScalarNode, Fields)>();
        foreach (var (name, body) in group.Entries)
        {
            var owner = $"the value `{Shown.Briefly(name.Value)}`";
            if (!NameCheck.IsName(name, _context.Messages)) topic.Spoil();
            else if (Fields.Of(body, owner, name.Inside, _context.Messages, [], ValueKeys) is { } fields)
                values.Add((name, fields));
            else topic.Spoil();
        }
        return values;
    }

    // A value whose wording is not right keeps its name: rules may still speak of it.
    private TopicValue BindValue(Topic topic, ScalarNode name, Fields fields)
    {
        var says = WordingReader.Read(fields, "says", new WordingSources(topic.Scope, _context), _context);
        return new TopicValue(
            name.Value, fields.Words("title") ?? name.Value.Replace('-', ' '), says, CertaintyOf(fields), CodeOf(fields),
            name.Location);
    }

    public static Certainty CertaintyOf(Fields fields) => fields.OneOf(
        "certainty", ("definite", Certainty.Definite), ("probable", Certainty.Probable),
        ("possible", Certainty.Possible)) ?? Certainty.Definite;

    private Code? CodeOf(Fields value)
    {
        if (value.Node("code") is not { } node) return null;
        var fields = Fields.Of(node, $"the code of {value.Owner}", node.Opening, _context.Messages, ["system", "value"], "version");
        if (fields is null) return null;
        var (system, code, version) = (fields.Words("system"), fields.Words("value"), fields.Words("version"));
        return fields.IsSound ? new Code(system!, code!, version) : null;
    }

    private static void BreakValues(ScalarNode name, DocumentNode body, BindingContext context)
    {
        context.Known.AddBroken(name.Value);
        if (body is not MappingNode mapping || mapping.Find("values") is not MappingNode values) return;
        foreach (var (value, _) in values.Entries) context.Known.AddBroken(value.Value);
    }
}
