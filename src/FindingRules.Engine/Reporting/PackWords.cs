using System.Collections.Concurrent;
using System.Collections.Immutable;
using FindingRules.Engine.Asking;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Vocabularies;
using Source = FindingRules.Model.Packs.Reference;

namespace FindingRules.Engine.Reporting;

/// <summary>
/// What a report says of rules, statements and sources whatever the study: made when it is first said, and then said again.
/// </summary>
internal sealed class PackWords(FindingSlots slots)
{
    private readonly ConcurrentDictionary<Rule, RuleWords> _rules = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentDictionary<Statement, StatementLook> _statements = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentDictionary<Source, SourceNote> _sources = new(ReferenceEqualityComparer.Instance);

    public RuleWords Of(Rule rule) => _rules.GetOrAdd(rule, static r => RuleWords.Of(r));

    public StatementLook Of(Statement statement, StatementNode node) =>
        _statements.GetOrAdd(statement, static (s, from) => StatementLook.Of(s, from.node, from.slots), (node, slots));

    public SourceNote Of(Source source) => _sources.GetOrAdd(source, static s => SourceNotes.Note(s));
}

/// <param name="WouldConclude">What follows, in the words of the language.</param>
internal sealed record RuleWords(RuleReference Reference, string WouldConclude)
{
    public static RuleWords Of(Rule rule) => new(
        new RuleReference(rule.Id, rule.Revision), string.Join("; ", rule.Conclusions.Select(Words)));

    private static string Words(Conclusion conclusion) => conclusion switch
    {
        TopicConclusion topic => $"{topic.Topic.Name} {topic.Value.Name}",
        EvaluateConclusion evaluate => $"evaluate {evaluate.Step.Structure.Name}",
        NextStepConclusion step => $"{step.Step.Name} next",
        CautionConclusion caution => caution.Caution.Name,
        ProbabilityConclusion probability =>
            $"probability after {(probability.IsPositive ? "positive" : "negative")} {probability.Reference.Name}",
        HoldConclusion hold => $"hold {hold.Topic.Name}",
        _ => throw new System.Diagnostics.UnreachableException(),
    };
}

/// <summary>What a statement looks at, and in which words.</summary>
/// <param name="Words">The rule's own, on one line.</param>
/// <param name="Findings">Each finding that it reads, once; none for a statement about a topic or a whole structure.</param>
internal sealed record StatementLook(string Words, ImmutableArray<FindingLook> Findings)
{
    public static StatementLook Of(Statement statement, StatementNode node, FindingSlots slots) => new(
        string.Join(' ', statement.Location.Words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)),
        [
            .. from read in StatementWalk.Findings(statement)
               where read.Finding is not null
               select new FindingLook(read.Place, node.Places.IndexOf(read.Place), read.Finding, slots[read.Finding]),
        ]);
}

/// <param name="Choice">Which of the instances chosen for the statement; -1 where none is.</param>
internal readonly record struct FindingLook(Place Place, int Choice, Finding Finding, int Slot);
