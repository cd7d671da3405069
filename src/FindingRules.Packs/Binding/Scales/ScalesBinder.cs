using System.Runtime.InteropServices;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Packs.Binding.Content;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Names;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Scales;

/// <summary>
/// Scales in the same two steps as topics: the topic that has the scale's name and its grades, then wording, measure and
/// bands. Each band becomes a rule.
/// </summary>
internal sealed class ScalesBinder
{
    private static readonly string[] Required = ["for", "of", "source", "bands"];
    private static readonly string[] Optional = ["per", "title", "when", "says", "certainty", "choice"];

    private readonly BindingContext _context;
    private readonly List<PendingScale> _pending = [];

    private ScalesBinder(BindingContext context) => _context = context;

    public static ScalesBinder BindNames(BindingContext context)
    {
        var binder = new ScalesBinder(context);
        var topics = context.Symbols.Topics.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.Scales, "scales", "scale"))
        {
            if (topics.TryGetValue(name.Value, out var taken))
                context.Messages.Add(LinkMessages.NameTaken(name.Inside, "scale", name.Value, "topic", taken.DeclaredAt));
            else if (binder.BindName(name, body) is { } pending) topics.Add(name.Value, pending.Topic);
            else BreakBands(name, body, context);
        }
        context.Symbols = context.Symbols with { Topics = topics.ToImmutable() };
        return binder;
    }

    public void BindWordings()
    {
        foreach (var (_, fields, topic, values, bands) in _pending)
        {
            var says = WordingReader.Read(fields, "says", new WordingSources(topic.Scope, _context), _context);
            var certainty = TopicsBinder.CertaintyOf(fields);
            for (var i = 0; i < values.Length; i++)
                values[i] = new TopicValue(values[i].Name, values[i].Name.Replace('-', ' '), says, certainty, null,
                    bands[i].Name.Location);
        }
    }

    /// <summary>The rules that the bands make.</summary>
    public List<Rule> BindRules()
    {
        var rules = new List<Rule>();
        var scales = _context.Symbols.Scales.ToBuilder();
        foreach (var pending in _pending)
            if (BindScale(pending) is { } scale)
            {
                scales.Add(scale.Name, scale);
                rules.AddRange(BandRules.Of(scale, pending));
            }
            else
            {
                foreach (var (band, _) in pending.Bands) _context.Known.AddBroken(BandRules.IdOf(pending.Name.Value, band.Value));
            }
        _context.Symbols = _context.Symbols with { Scales = scales.ToImmutable() };
        return rules;
    }

    private PendingScale? BindName(ScalarNode name, DocumentNode body)
    {
        var owner = $"the scale `{name.Value}`";
        if (Fields.Of(body, owner, name.Inside, _context.Messages, Required, Optional) is not { } fields) return null;
        var scope = _context.ReadScope(fields);
        var isPerStructure = fields.OneOf("per", ("structure", true)) ?? false;
        if (isPerStructure && scope is { IsStudy: true }) fields.Report(LinkMessages.PerStructureOfStudy(name.Inside, name.Value));
        var title = fields.Words("title") ?? name.Value.Replace('-', ' ');
        var bands = ReadBands(fields);
        if (scope is null || !fields.IsSound) return null;
        var values = new TopicValue[bands.Count];
        for (var i = 0; i < values.Length; i++)
            values[i] = new TopicValue(bands[i].Name.Value, "", null, Certainty.Definite, null, bands[i].Name.Location);
        var topic = new Topic(name.Value, scope, name.Location)
        {
            Title = title,
            IsPerStructure = isPerStructure,
            Values = ImmutableCollectionsMarshal.AsImmutableArray(values),
        };
        var pending = new PendingScale(name, fields, topic, values, bands);
        _pending.Add(pending);
        return pending;
    }

    private List<(ScalarNode Name, ScalarNode Range)> ReadBands(Fields fields)
    {
        var bands = new List<(ScalarNode Name, ScalarNode Range)>();
        var items = fields.Items("bands", least: 2) ?? [];
        if (items.Count > Topic.MostValues && fields.Node("bands") is { } list)
            fields.Report(PackMessages.TooMany(list.Location, $"`bands` of {fields.Owner}", items.Count, Topic.MostValues));
        foreach (var item in items)
        {
            if (item is not MappingNode { Entries: [var (name, body)] })
            {
                if (item is BrokenNode) fields.Spoil();
                else fields.Report(PackMessages.WrongForm(item.Opening, $"a band of {fields.Owner}", item.Form,
                    "one grade and its stretch"));
                continue;
            }
            if (!NameCheck.IsName(name, _context.Messages)) fields.Spoil();
            var first = bands.Find(b => b.Name.Value == name.Value);
            if (first.Name is not null)
                fields.Report(PackMessages.ListedTwice(name.Inside, $"`bands` of {fields.Owner}", name.Value, first.Name.Inside));
            if (fields.AsText(body, $"the band `{Shown.Briefly(name.Value)}`") is { } range) bands.Add((name, range));
        }
        return bands;
    }

    private Scale? BindScale(PendingScale pending)
    {
        var (name, fields, topic, _, written) = pending;
        var sources = ReferencesBinder.Look(fields, _context);
        var of = fields.Text("of") is { } text ? _context.Read(language => language.ReadExpression(text.Text, topic.Scope)) : null;
        Condition? when = null;
        if (fields.Text("when") is { } condition)
        {
            when = _context.Read(language => language.ReadCondition(condition.Text, topic.Scope));
            if (when is null) fields.Spoil();
        }
        var bands = of is null ? null : BindBands(written, Unit.All.First(u => u.Dimension == of.Dimension));
        if (bands is null || !BandChecks.AreSound(name.Value, bands, _context.Messages) || !fields.IsSound) return null;
        return new Scale(name.Value, topic.Title, topic, of!, when, [.. bands.Select(b => b.Band)], sources,
            fields.Words("choice"), name.Location);
    }

    private List<WrittenBand>? BindBands(List<(ScalarNode Name, ScalarNode Range)> written, Unit unit)
    {
        var bands = new List<WrittenBand>();
        foreach (var (name, range) in written)
            if (_context.Read(language => language.ReadRange(range.Text, unit)) is { } interval)
                bands.Add(new WrittenBand(new Band(name.Value, interval, name.Location),
                    BandRules.UnitOf(range.Value) ?? unit, range.Location));
        return bands.Count == written.Count ? bands : null;
    }

    private static void BreakBands(ScalarNode name, DocumentNode body, BindingContext context)
    {
        context.Known.AddBroken(name.Value);
        if (body is not MappingNode mapping || mapping.Find("bands") is not ListNode bands) return;
        foreach (var item in bands.Items.OfType<MappingNode>())
            foreach (var (band, _) in item.Entries)
            {
                context.Known.AddBroken(band.Value);
                context.Known.AddBroken(BandRules.IdOf(name.Value, band.Value));
            }
    }
}
