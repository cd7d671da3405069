using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Normalising;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Evaluating;

/// <summary>A network and a study in, a reading out.</summary>
public static class Evaluator
{
    /// <summary>What became of every rule and topic.</summary>
    public static Outcome Decide(RuleNetwork network, Study study) => Use(network, study, OutcomeOf);

    /// <summary>The reading: what <see cref="Decide"/> found, put into words.</summary>
    public static Reading Evaluate(RuleNetwork network, Study study) => Use(network, study, e => ReadingWriter.Write(e, study));

    /// <summary>
    /// The reading, and what became on the way to it of the rules that are not false and the topics that they answer or hold; evaluated
    /// once.
    /// </summary>
    public static (Reading Reading, Outcome Outcome) EvaluateWhole(RuleNetwork network, Study study) => Use(network, study, e =>
    {
        var decided = new Decided(e, study);
        return (ReadingWriter.Write(decided, study), decided.Outcome);
    });

    /// <summary>An examination to keep: everything is decided, and what was decided may be looked at for as long as one likes.</summary>
    internal static Examination Examine(RuleNetwork network, Study study)
    {
        var examination = new Examination(network);
        Settle(examination, study);
        WidenedDecision.Run(examination);
        // Whoever looks may do so from several threads, and from then on nothing is written.
        for (var i = 0; i < examination.Count; i++) examination[i].WriteDown();
        return examination;
    }

    /// <summary>What is true, false and unknown, who yields, what topics come to: allocates nothing once its room has grown.</summary>
    internal static void Settle(Examination examination, Study study)
    {
        StudyLayout.LayOut(examination, study);
        LayeredDecision.Run(examination);
    }

    /// <summary>Asks something of an examination that is used again afterwards: nothing of it may be kept.</summary>
    internal static T Use<T>(RuleNetwork network, Study study, Func<Examination, T> ask)
    {
        var examination = network.Examinations.Take();
        // Where something throws, the examination is left half done, and so it is not put back.
        Settle(examination, study);
        WidenedDecision.Run(examination);
        var answer = ask(examination);
        network.Examinations.Return(examination);
        return answer;
    }

    private static Outcome OutcomeOf(Examination examination)
    {
        var rules = ImmutableArray.CreateBuilder<RuleOutcome>();
        var topics = ImmutableArray.CreateBuilder<TopicOutcome>();
        foreach (var instance in PresentInstances(examination))
        {
            for (var i = 0; i < instance.Rules.Length; i++)
                if (instance.Rules[i] is { IsDecided: true } state)
                    rules.Add(new RuleOutcome(instance.Plan.Rules[i].Rule, instance.Subject, state.Truth, state.Widened, state.Standing));
            for (var i = 0; i < instance.Topics.Length; i++)
                if (instance.Topics[i] is { IsDecided: true } state)
                    topics.Add(new TopicOutcome(
                        instance.Plan.Topics[i].Topic, instance.Subject, state.Status,
                        state.Value < 0 ? null : instance.Plan.Topics[i].Topic.Values[state.Value].Name));
        }
        return new Outcome(rules.ToImmutable(), topics.ToImmutable());
    }

    private static IEnumerable<Instance> PresentInstances(Examination examination) =>
        Enumerable.Range(0, examination.Count).Select(i => examination[i]).Where(i => i.IsPresent).OrderBy(i => i.Subject);
}
