using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Content;

/// <summary>Next steps, and what to say of each structure to evaluate.</summary>
internal static class NextStepsBinder
{
    public static void Bind(BindingContext context)
    {
        var steps = context.Symbols.NextSteps.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.NextSteps, "next-steps", "next step"))
            if (BindStep(name, body, context) is { } step) steps.Add(step.Name, step);
            else context.Known.AddBroken(name.Value);
        var evaluate = context.Symbols.EvaluateSteps.ToBuilder();
        foreach (var (name, body) in NamedEntries.Read(context, FileKind.NextSteps, "evaluate", "structure to evaluate"))
            if (BindEvaluate(name, body, context) is { } step) evaluate.Add(step.Structure.Name, step);
            else context.Known.AddBroken(name.Value);
        context.Symbols = context.Symbols with { NextSteps = steps.ToImmutable(), EvaluateSteps = evaluate.ToImmutable() };
    }

    private static NextStep? BindStep(ScalarNode name, DocumentNode body, BindingContext context)
    {
        var owner = $"the next step `{name.Value}`";
        var fields = Fields.Of(body, owner, name.Inside, context.Messages, ["says"], "urgency", "done", "source");
        if (fields is null) return null;
        var says = WordingReader.Read(fields, "says", new WordingSources(null, context), context);
        var urgency = UrgencyOf(fields);
        Condition? done = null;
        if (fields.Text("done") is { } text)
        {
            done = context.Read(language => language.ReadCondition(text.Text, Scope.Study));
            if (done is null) fields.Spoil();
        }
        var sources = ReferencesBinder.Look(fields, context);
        return fields.IsSound ? new NextStep(name.Value, says!, urgency, done, sources, name.Location) : null;
    }

    private static EvaluateStep? BindEvaluate(ScalarNode name, DocumentNode body, BindingContext context)
    {
        var owner = $"the structure to evaluate `{name.Value}`";
        var fields = Fields.Of(body, owner, name.Inside, context.Messages, ["says", "completed-by"], "urgency");
        if (fields is null) return null;
        var urgency = UrgencyOf(fields);
        var structure = StructureLookup.Find(name, context);
        if (structure is null)
        {
            _ = fields.Texts("completed-by", least: 1);
            return null;
        }
        var scope = new Scope($"each {structure.Name}", structure.Kind, [structure]);
        var says = WordingReader.Read(fields, "says", new WordingSources(scope, context), context);
        var findings = StructureLookup.Findings(structure, fields.Texts("completed-by", least: 1), fields, context);
        return fields.IsSound ? new EvaluateStep(structure, says!, urgency, findings, name.Location) : null;
    }

    private static Urgency UrgencyOf(Fields fields) => fields.OneOf(
        "urgency", ("routine", Urgency.Routine), ("soon", Urgency.Soon), ("urgent", Urgency.Urgent)) ?? Urgency.Routine;
}
