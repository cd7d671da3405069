using FindingRules.Model.Explanations;
using FindingRules.Model.Readings;
using FindingRules.Model.Truths;

namespace FindingRules.Explaining;

/// <summary>Proofs as a colleague would tell them, each once: where one is needed again, it is pointed at.</summary>
/// <param name="isShort">Without the rules that could have overruled or withheld and do not apply.</param>
internal sealed class ProofText(Outline page, Explanation explanation, bool isShort = false)
{
    private readonly HashSet<ProofKey> _told = [];

    public void Write(ProofKey key, int depth)
    {
        if (explanation.Find(key) is not { } proof) return;
        if (!_told.Add(key))
        {
            page.Line(depth, $"{key.Rule} for the {proof.SubjectTitle}: told above.");
            return;
        }
        page.Line(depth, $"{proof.Rule.Id} {Outcome(proof)} the {proof.SubjectTitle} ({proof.Place.Path}, line {proof.Place.Line}):");
        page.Line(depth + 1, $"The rule: {proof.Text}");
        new PartText(page, explanation, proof.SubjectTitle).Write(proof.Condition, depth + 1);
        Grounds(proof, depth + 1);
        Others(proof, depth + 1);
        foreach (var next in Needed(proof).Where(n => !_told.Contains(n))) Write(next, depth + 1);
    }

    private static string Outcome(Proof proof) => proof.Standing switch
    {
        "stands" => "applies to",
        "yields" => "is overruled for",
        "open" => "is true of, but may still be overruled for,",
        "unknown" => "is undecided for",
        _ => "does not apply to",
    };

    private void Grounds(Proof proof, int depth)
    {
        page.Line(depth, $"The reason given: {proof.Because}");
        foreach (var source in proof.Sources) page.Line(depth, $"Source: {source.Cites}{Status(source)}");
        if (proof.Choice is { } choice && choice != proof.Because) page.Line(depth, $"The pack chose: {choice}");
        if (proof.IsBorderline) page.Line(depth, "Borderline: with the measurements a little off, it could be decided otherwise.");
    }

    /// <summary>Where nothing was cited, the words say so already.</summary>
    private static string Status(SourceNote source) =>
        source.Cites.StartsWith(source.Status, StringComparison.OrdinalIgnoreCase) ? "" : $" ({source.Status})";

    private void Others(Proof proof, int depth)
    {
        if (proof.Truth == Truth.False) return;
        foreach (var superior in proof.Superiors.Where(s => s.Truth != Truth.False))
            page.Line(depth, superior.Truth == Truth.True
                ? $"{superior.Rule} goes before it and is true: {superior.Text}"
                : $"{superior.Rule} goes before it and is undecided: {superior.Text}");
        Idle(depth, "Goes before it", "Go before it", proof.Superiors.Where(s => s.Truth == Truth.False));
        foreach (var answer in proof.Gives.Select(explanation.Find).OfType<TopicAnswer>())
        {
            if (proof.Truth == Truth.True) Answer(answer, depth);
            var idle = answer.Holders.Where(h => h.Standing == "false");
            Idle(depth, $"Could withhold {answer.Title}", $"Could withhold {answer.Title}", idle);
        }
    }

    private void Answer(TopicAnswer answer, int depth)
    {
        var others = answer.Givers.Where(g => g.Standing == "stands").Select(g => $"{g.Value} ({g.Rule})");
        var holders = answer.Holders.Where(h => h.Standing == "stands").Select(h => h.Rule);
        var open = answer.Givers.Concat(answer.Holders).Where(g => g.Standing is "unknown" or "open").Select(g => g.Rule);
        var line = answer.Status switch
        {
            "conflict" => $"No answer is given, because the rules disagree on {answer.Title}: {string.Join(" and ", others.Distinct())}.",
            "held" => $"The answer is withheld by {string.Join(", ", holders)}.",
            "open" => $"The answer is not given yet: {string.Join(", ", open.Distinct())} could still change or withhold it.",
            _ => null,
        };
        if (line is not null) page.Line(depth, line);
    }

    private void Idle(int depth, string one, string several, IEnumerable<RuleGlance> rules)
    {
        var ids = rules.Select(r => r.Rule).Distinct().ToList();
        if (isShort || ids.Count == 0) return;
        page.Line(depth, ids.Count == 1
            ? $"{one}, but does not apply here: {ids[0]}."
            : $"{several}, but none of them applies here: {string.Join(", ", ids)}.");
    }

    /// <summary>The rules that settled what this one rests on, and those that overrule it.</summary>
    private IEnumerable<ProofKey> Needed(Proof proof)
    {
        var tested = Answers(proof.Condition).Select(explanation.Find).OfType<TopicAnswer>().SelectMany(a => a.Proven);
        var above = proof.Superiors.Where(s => s.Truth != Truth.False).Select(s => new ProofKey(s.Rule, proof.Subject));
        return tested.Concat(above).Distinct();
    }

    private static IEnumerable<AnswerKey> Answers(ProofPart part) =>
        part.Looks.Select(l => l.Answer).OfType<AnswerKey>().Concat(part.Parts.SelectMany(Answers));
}
