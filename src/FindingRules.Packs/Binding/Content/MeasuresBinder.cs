using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Linking;
using FindingRules.Packs.Binding.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

/// <summary>Derived measures, each after those that it is worked out from.</summary>
internal sealed class MeasuresBinder
{
    private readonly BindingContext _context;
    private readonly Dictionary<string, NamedEntry> _written;
    private readonly HashSet<string> _visited = new(StringComparer.Ordinal);

    private MeasuresBinder(BindingContext context)
    {
        _context = context;
        _written = NamedEntries.Read(context, FileKind.Measures, "measures", "derived measure")
            .ToDictionary(e => e.Name.Value, StringComparer.Ordinal);
    }

    public static void Bind(BindingContext context)
    {
        var binder = new MeasuresBinder(context);
        var circles = Cycles.Find(binder._written.Keys, binder.Needs);
        foreach (var path in circles)
        {
            context.Messages.Add(LinkMessages.DerivedCycle(binder._written[path[0]].Name.Inside, Cycles.Show(path)));
            foreach (var name in path) context.Known.AddBroken(name);
            binder._visited.UnionWith(path);
        }
        foreach (var name in binder._written.Keys) binder.BindInOrder(name);
    }

    private IEnumerable<string> Needs(string name)
    {
        if (_written[name].Body is not MappingNode mapping || mapping.Find("is") is not ScalarNode { Value: var text }) return [];
        return text.Split((char[])[' ', '\n', '+', '*', '/', '(', ')'], StringSplitOptions.RemoveEmptyEntries)
            .Where(_written.ContainsKey);
    }

    private void BindInOrder(string name)
    {
        var line = new Stack<string>([name]);
        while (line.TryPeek(out var at))
        {
            if (Needs(at).FirstOrDefault(n => !_visited.Contains(n)) is { } first && !_visited.Contains(at))
            {
                line.Push(first);
                continue;
            }
            line.Pop();
            if (!_visited.Add(at)) continue;
            if (BindOne(_written[at]) is { } measure) Add(measure);
            else _context.Known.AddBroken(at);
        }
    }

    private void Add(DerivedMeasure measure) =>
        _context.Symbols = _context.Symbols with { DerivedMeasures = _context.Symbols.DerivedMeasures.Add(measure.Name, measure) };

    private DerivedMeasure? BindOne(NamedEntry entry)
    {
        var (name, body) = entry;
        var fields = Fields.Of(body, $"the derived measure `{name.Value}`", name.Inside, _context.Messages,
            ["for", "is", "unit"], "title", "shown-to");
        if (fields is null) return null;
        var scope = _context.ReadScope(fields);
        var unit = UnitBinder.Bind(fields, "unit");
        var title = fields.Words("title") ?? name.Value.Replace('-', ' ');
        var shownTo = unit is null ? null : ShownTo(name, fields, unit);
        if (fields.Text("is") is not { } text || scope is null) return null;
        var finding = scope.Find(_context.Symbols.Vocabulary, name.Value);
        if (finding is not null)
            fields.Report(LinkMessages.NameTaken(name.Inside, "derived measure", name.Value, "finding", finding.DeclaredAt));
        var expression = _context.Read(language => language.ReadExpression(text.Text, scope));
        if (expression is null || unit is null || !fields.IsSound) return null;
        if (expression.Dimension == unit.Dimension)
            return new DerivedMeasure(name.Value, title, scope, unit, expression, name.Location) { ShownTo = shownTo };
        _context.Messages.Add(LinkMessages.DerivedUnit(
            fields.Text("unit")!.Inside, name.Value, unit.Name, unit.Dimension.Title, expression.Dimension.Title));
        return null;
    }

    private Quantity? ShownTo(ScalarNode name, Fields fields, Unit unit)
    {
        if (fields.Text("shown-to") is not { } text) return null;
        var step = _context.Read(language => language.ReadQuantity(text.Text, unit));
        if (step is null) fields.Spoil();
        else if (step.Value.InBase <= Rational.Zero)
            fields.Report(LinkMessages.ShownToNothing(text.Location, name.Value, step.Value.ToString()));
        return step;
    }
}
