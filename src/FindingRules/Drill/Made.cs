using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Drill;

/// <summary>A question together with what its options claim.</summary>
internal sealed record Made(DrillQuestion Question, Spot Spot, CaseView View, Sheet Sheet, ImmutableArray<Claim> Claims)
{
    private const int MostWrong = 3;
    private const int FewestWrong = 2;

    /// <summary>Counted from 1.</summary>
    public int Right => Claims.IndexOf(Spot.Right) + 1;

    /// <summary>Null where too few wrong options can be made.</summary>
    public static Made? Of(CompiledPack pack, Spot spot, ulong seed)
    {
        var view = new CaseView(pack, spot.Case);
        var order = SeededOrder.For(seed, spot.Key);
        var wrong = new List<(Claim Claim, string Text)>();
        foreach (var near in NearMisses.Of(view, spot, order))
        {
            if (near.Text == spot.Text || wrong.Exists(w => w.Text == near.Text)) continue;
            wrong.Add(near);
            if (wrong.Count == MostWrong) break;
        }
        if (wrong.Count < FewestWrong) return null;
        var options = spot.Right is NotYet ? wrong : [.. wrong, (spot.Right, spot.Text)];
        options = order.Shuffle(options);
        // Always there and always last, so that neither its presence nor its place tells anything.
        if (spot.Right is NotYet) options.Add((spot.Right, spot.Text));
        if (spot.Right is Say say) options.Add((new NotYet(say.Topic, say.Subject, say.By), Spots.NotYetText));
        var sheet = Sheet.Of(view, options.SelectMany(o => Missing(view, o.Claim)));
        var question = new DrillQuestion(
            new QuestionId(QuestionId.DigestOf(pack.Pack), spot.Key, seed).ToString(), spot.Key, spot.Sort,
            Asks(spot.Right, options.Select(o => o.Claim)), sheet.Examination, sheet.Subjects,
            [.. options.Select((o, i) => new DrillOption(i + 1, o.Text))]);
        return new Made(question, spot, view, sheet, [.. options.Select(o => o.Claim)]);
    }

    private static IEnumerable<SeenValue> Missing(CaseView view, Claim claim) => claim is LookAt look
        ? [new SeenValue(
            look.Subject.Key, look.Subject.Title, look.Finding, view.FindingOf(look.Subject, look.Finding)!.Title, null, "not-sent", null)]
        : claim.By.SelectMany(b => ProofWalk.NotSent(view.Why(b.Rule, b.Subject))).Where(v => IsFinding(view, v));

    /// <summary>Topics that have no answer are conclusions and are not shown.</summary>
    private static bool IsFinding(CaseView view, SeenValue value) =>
        value.Finding == "structure" || !view.Pack.Pack.Symbols.Topics.ContainsKey(value.Finding);

    private static string Asks(Claim right, IEnumerable<Claim> all) => right switch
    {
        Say or NotYet => AsksToSay(right, [.. all.OfType<Say>()]),
        TakeStep => "Which of these is a next step here?",
        _ => "What should be looked at or asked for first, to settle most of what is still open?",
    };

    private static string AsksToSay(Claim right, ImmutableArray<Say> all)
    {
        var subject = right is Say say ? say.Subject : ((NotYet)right).Subject;
        var whose = subject.Structure is null ? "the study" : $"the {subject.Whole.Title}";
        return all.Select(s => s.Topic).Distinct().Count() == 1
            ? $"Which of these can be said of {whose}: {all[0].Topic.Title}?"
            : $"Which of these can be said of {whose}?";
    }
}
