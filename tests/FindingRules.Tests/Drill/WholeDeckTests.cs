using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using FindingRules.Drill;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Testing;
using FindingRules.Testing.Generators;
using FindingRules.Tests.Engine.Asking;
using Xunit;

namespace FindingRules.Tests.Drill;

/// <summary>Every question that the shipped pack gives, held against the slow evaluator, which knows nothing of questions.</summary>
public sealed partial class WholeDeckTests
{
    private const ulong Seed = 11;
    private static readonly CompiledPack Shipped = PackFolder.Load(Repository.PathOf("rules", "msk-ultrasound")).Pack!;
    private static readonly Lazy<IReadOnlyList<Made>> All = new(MakeAll);

    [Fact]
    public void The_cases_give_many_questions_of_each_sort()
    {
        Assert.All(Enum.GetValues<DrillSort>(), sort => Assert.InRange(All.Value.Count(m => m.Spot.Sort == sort), 20, 2_000));
        Assert.InRange(All.Value.Count(m => m.Spot.Right is NotYet), 20, 2_000);
        Assert.InRange(All.Value.Select(m => m.Spot.Case.Id).Distinct().Count(), 200, 1_000);
    }

    [Fact]
    public void The_right_option_is_right_and_no_other_is() =>
        Assert.Empty(
            from made in All.Value
            let outcome = ReferenceInterpreter.Decide(Shipped.Pack, made.Spot.Case.Study)
            from claim in made.Claims
            where claim is not LookAt
            let isRight = IsSo(claim, outcome)
            // Beside a right option, the last one says that there is none.
            where (claim == made.Spot.Right) != (isRight && !(claim is NotYet && made.Spot.Right is Say))
            select $"{made.Spot.Case.Id}: {claim}");

    [Fact]
    public void What_a_topic_waits_for_is_not_said_of_one_that_is_answered() =>
        Assert.All(All.Value.Where(m => m.Spot.Right is Say), m => Assert.DoesNotContain(m.Claims.OfType<NotYet>(), m.View.IsRight));

    [Fact]
    public void What_is_asked_for_first_is_awaited_and_the_other_options_are_not() =>
        Assert.All(All.Value.Where(m => m.Spot.Right is LookAt), m =>
        {
            var awaited = m.View.Reading.Unknown.SelectMany(u => u.Missing).Select(k => (k.Subject, k.Finding)).ToHashSet();
            Assert.All(m.Claims.Cast<LookAt>(), c => Assert.Equal(c == m.Spot.Right, awaited.Contains((c.Subject.Key, c.Finding))));
        });

    [Fact]
    public void What_is_asked_for_first_is_what_the_slow_evaluator_finds_to_settle_most()
    {
        var looks = All.Value.Where(m => m.Spot.Right is LookAt).Where((_, i) => i % 40 == 0).ToList();
        Assert.All(looks, made =>
        {
            var study = made.Spot.Case.Study;
            var brute = new BruteForce(new Sample(Shipped.Pack, study), Evaluator.Examine(Shipped.Network, study));
            var look = (LookAt)made.Spot.Right;
            Assert.Equal((look.Subject.Key, look.Finding), brute.Order(made.View.Reading.AskNext.Reverse()).First());
        });
        Assert.InRange(looks.Count, 2, 100);
    }

    [Fact]
    public void Options_do_not_repeat() =>
        Assert.All(All.Value, m => Assert.Equal(m.Question.Options.Length, m.Question.Options.Select(o => o.Text).Distinct().Count()));

    [Fact]
    public void Nothing_that_is_shown_gives_the_answer_away() =>
        Assert.Empty(
            from made in All.Value
            let shown = Shown(made.Question)
            where RuleOrCaseId().IsMatch(shown) || shown.Contains(made.Spot.Case.About, StringComparison.Ordinal)
            select $"{made.Spot.Case.Id}: {shown}");

    [Fact]
    public void Every_finding_that_was_sent_is_shown() =>
        Assert.All(All.Value, m => Assert.Equal(
            Sent(m.Spot.Case).Order(StringComparer.Ordinal),
            m.Sheet.Items.Where(i => i.IsKnown && i.Finding is not (SheetItem.Normal or "not-assessable"))
                .Select(i => i.Finding).Order(StringComparer.Ordinal)));

    [Fact]
    public void A_finding_is_called_essential_where_the_right_option_falls_without_it() =>
        Assert.Empty(
            from made in Some(20)
            where made.Spot.Right is Say or NotYet or TakeStep
            let answer = new AnswerJudge(made).Answer()
            from item in made.Sheet.Items.Where(i => i.IsKnown)
            let without = ReferenceInterpreter.Decide(Shipped.Pack, Forgetting.Of(made.Spot.Case.Study, item))
            let stays = made.Spot.Right is TakeStep step
                ? IsAsked(step, without, made.Spot.Case.Study, item)
                : IsSo(made.Spot.Right, without)
            where answer.Essential.Contains(item.Mark) == stays
            select $"{made.Spot.Case.Id}: {made.Question.Asks} {item}");

    /// <summary>So that the tests stay quick; in the same order everywhere.</summary>
    internal static IEnumerable<Made> Some(int every) => All.Value.Where((_, i) => i % every == 0);

    internal static bool IsSo(Claim claim, Outcome outcome) => claim switch
    {
        Say say => outcome.Topics.Any(t => t.Topic == say.Topic && t.Subject == say.Subject && t.Value == say.Value.Name),
        NotYet not => outcome.Topics.Any(t =>
            t.Topic == not.Topic && t.Subject == not.Subject && t.Status is TopicStatus.Held or TopicStatus.Open),
        TakeStep step => outcome.Rules.Any(r => Gives(r, step, outcome)),
        _ => throw new ArgumentOutOfRangeException(nameof(claim)),
    };

    /// <summary>A step may also end because it has been done; what completes it is the reading's to say.</summary>
    private static bool IsAsked(TakeStep step, Outcome outcome, Study study, SheetItem item) =>
        IsSo(step, outcome) && Shipped.Evaluate(Forgetting.Of(study, item), new()) is { } reading
        && reading.NextSteps.Any(s => s.Step == step.Step && !s.IsDone);

    private static bool Gives(RuleOutcome rule, TakeStep step, Outcome outcome) =>
        rule.Standing == Standing.Stands
        && rule.Rule.Topics.All(c => outcome.Topics.Any(t => t.Topic == c.Topic && t.Subject == rule.Subject && t.Value == c.Value.Name))
        && rule.Rule.Conclusions.Any(c => c switch
        {
            NextStepConclusion next => next.Step.Name == step.Step,
            EvaluateConclusion look => step.Step.StartsWith("evaluate ", StringComparison.Ordinal)
                && step.Step.EndsWith(" " + look.Step.Structure.Name, StringComparison.Ordinal)
                && (!look.Step.Structure.IsPaired || step.Step.Contains($" {rule.Subject.Side.Word()} ", StringComparison.Ordinal)),
            _ => false,
        });

    private static IEnumerable<string> Sent(Case @case)
    {
        var study = @case.Study;
        var all = study.Subjects.Concat(study.Earlier ?? []).ToList();
        return new[] { study.Facts, study.EarlierFacts }.Concat(all.Select(s => s.Findings))
            .Concat(all.SelectMany(s => s.Lesions).Select(l => l.Findings)).SelectMany(f => f.ByName.Keys);
    }

    private static string Shown(DrillQuestion question)
    {
        using var text = new StringWriter();
        DrillText.Write(text, question);
        return text + question.Id + question.Key;
    }

    private static IReadOnlyList<Made> MakeAll()
    {
        var made = new ConcurrentBag<(int Index, Made? Made)>();
        var spots = Shipped.Pack.Cases.SelectMany(c => Spots.Of(new CaseView(Shipped, c))).DistinctBy(s => s.Key)
            .DistinctBy(s => (s.Case, s.Sort, s.Right is NotYet)).ToList();
        Parallel.For(0, spots.Count, i => made.Add((i, Made.Of(Shipped, spots[i], Seed))));
        return [.. made.OrderBy(m => m.Index).Select(m => m.Made).OfType<Made>()];
    }

    [GeneratedRegex(@"\b(CASE-[A-Z0-9-]+|[A-Z]{2,}-[0-9]{3})\b")]
    private static partial Regex RuleOrCaseId();
}
