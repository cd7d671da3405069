using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Explaining;

/// <summary>Why a rule does not stand: what is in the way, down to the findings, and what would have to be different.</summary>
internal sealed class WhyNotText(Outline page, Explanation explanation)
{
    /// <summary>The subjects at which least would have to be different first.</summary>
    public static IEnumerable<WhyNot> InOrder(ImmutableArray<WhyNot> all) =>
        all.OrderByDescending(w => w.Stands).ThenBy(w => w.Ways.Select(v => v.Changes.Length).DefaultIfEmpty(int.MaxValue).Min());

    public void Write(WhyNot whyNot, int depth)
    {
        Hindered(whyNot, depth);
        if (whyNot.Stands) return;
        var changes = new ChangeText(page, TitleOf(whyNot.Key));
        page.Line(depth, whyNot.Ways.IsEmpty
            ? ChangeText.None(whyNot.Search, "would make it apply")
            : $"It would apply, and its answer would be given, with {Each(whyNot.Ways)}:");
        changes.Write(whyNot.Ways, depth + 1);
        changes.Searched(whyNot.Search, !whyNot.Ways.IsEmpty, depth);
    }

    /// <summary>Without what would have to be different.</summary>
    public void Hindered(WhyNot whyNot, int depth)
    {
        if (explanation.Find(whyNot.Key) is { } proof)
            page.Line(depth, $"The rule ({proof.Place.Path}, line {proof.Place.Line}): {proof.Text}");
        if (whyNot.Stands) page.Line(depth, "It does apply, and its answer is given: nothing keeps it back.");
        else if (whyNot.Obstacle is { } obstacle) Write(obstacle, whyNot.Key, "It", depth);
    }

    private void Write(Obstacle obstacle, ProofKey key, string who, int depth)
    {
        string[] ids = [.. obstacle.Rules.Select(r => r.Rule).Distinct()];
        var rules = string.Join(" and ", ids);
        var (goes, isTrue) = ids.Length > 1 ? ("go", "are") : ("goes", "is");
        var topic = obstacle.Topic is { } named ? explanation.Find(named)?.Title ?? named.Topic : "the topic";
        page.Line(depth, obstacle.Sort switch
        {
            "false-part" => $"{who} does not apply. What is in the way first:",
            "unknown-part" => $"{who} is undecided. What is missing first:",
            "superior" => $"{who} does not count, because {rules} {goes} before it and {isTrue} true.",
            "unknown-superior" => $"{who} is true, but {rules} {goes} before it and {isTrue} not decided yet.",
            "held" => $"{who} is true, but {topic} is withheld by {rules}.",
            "unknown-hold" => $"{who} is true, but {rules} may still withhold {topic}.",
            "conflict" => $"{who} is true, but {rules} {isTrue} true as well, with another answer for {topic}, so no answer is given.",
            _ => $"{who} is true, but {rules} may still answer {topic} otherwise.",
        });
        if (obstacle.Part is { } part) new PartText(page, explanation, TitleOf(key)).Write(part, depth + 1);
        foreach (var next in obstacle.Rules.Select(explanation.Find).OfType<Proof>()) page.Line(depth + 1, $"{next.Rule.Id}: {next.Text}");
        foreach (var behind in obstacle.Behind)
            Write(behind.Obstacle, behind.Rule, $"{behind.Rule.Rule}, which could give that answer,", depth + 2);
    }

    private string TitleOf(ProofKey key) => explanation.Find(key)?.SubjectTitle ?? key.Subject;

    /// <summary>One line for a subject among many.</summary>
    public void Brief(WhyNot whyNot, int depth)
    {
        var fewest = whyNot.Ways.Select(w => w.Changes.Length).DefaultIfEmpty(0).Min();
        var outcome = whyNot.Stands ? "applies" : explanation.Find(whyNot.Key)?.Standing == "unknown" ? "is undecided" : "does not apply";
        var how = (whyNot.Stands, fewest) switch
        {
            (true, _) => "",
            (_, 0) => "; no way was found",
            (_, 1) => "; one finding would have to be otherwise",
            var (_, many) => $"; {many} findings would have to be otherwise",
        };
        page.Line(depth, $"{TitleOf(whyNot.Key)}: {outcome}{how} (`--subject \"{whyNot.Key.Subject}\"`)");
    }

    private static string Each(ImmutableArray<Way> ways) => (ways.Length, ways.Max(w => w.Changes.Length)) switch
    {
        (1, 1) => "this change",
        (1, _) => "these changes together",
        (_, 1) => "each of these changes alone",
        _ => "any one of these, all in a line together",
    };
}
