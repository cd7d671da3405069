using FindingRules.Model.Explanations;
using FindingRules.Model.Truths;

namespace FindingRules.Drill;

/// <summary>Reads proofs: what a rule rests on and what it lacks.</summary>
internal static class ProofWalk
{
    /// <summary>The values that carry the truth of the rule, down through the topics that it tests.</summary>
    public static IEnumerable<SeenValue> RestsOn(Explanation explanation, ProofKey key)
    {
        var told = new HashSet<ProofKey>();
        return Of(key);

        IEnumerable<SeenValue> Of(ProofKey proof) =>
            told.Add(proof) && explanation.Find(proof) is { } found ? Walk(found.Condition, found.Truth).ToList() : [];

        IEnumerable<SeenValue> Walk(ProofPart part, Truth truth) => part.Sort switch
        {
            "all" => part.Parts.Where(p => truth == Truth.True || p.Truth == truth).SelectMany(p => Walk(p, p.Truth)),
            "any" => part.Parts.Where(p => truth == Truth.False || p.Truth == truth).SelectMany(p => Walk(p, p.Truth)),
            "not" => Walk(part.Parts[0], part.Parts[0].Truth),
            "count" => part.Parts.Where(p => truth == Truth.Unknown || p.Truth == part.CarriedBy).SelectMany(p => Walk(p, p.Truth)),
            _ => part.Looks.SelectMany(l => l.Values.Concat(Behind(l))),
        };

        IEnumerable<SeenValue> Behind(Look look) =>
            look.Answer is { } answer && explanation.Find(answer) is { } topic ? topic.Proven.SelectMany(Of) : [];
    }

    /// <summary>Everything that the proofs looked at and found not sent.</summary>
    public static IEnumerable<SeenValue> NotSent(Explanation explanation) =>
        explanation.Proofs.SelectMany(p => All(p.Condition)).Where(v => v.Origin == "not-sent");

    private static IEnumerable<SeenValue> All(ProofPart part) =>
        part.Looks.SelectMany(l => l.Values).Concat(part.Parts.SelectMany(All));
}
