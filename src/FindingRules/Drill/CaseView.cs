using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Explaining;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Drill;

/// <summary>One case with all that the engine says of it. Not for several threads at once.</summary>
internal sealed class CaseView
{
    private readonly Dictionary<(Rule, Subject), Explanation> _proofs = [];

    public CaseView(CompiledPack pack, Case @case)
    {
        (Pack, Case) = (pack, @case);
        Outcome = Evaluator.Decide(pack.Network, Study);
        Reading = Evaluator.Evaluate(pack.Network, Study);
        Explainer = new Explainer(pack.Network, Study);
        Wording = new WouldSay(pack.Network, Study);
    }

    public CompiledPack Pack { get; }

    public Case Case { get; }

    public Study Study => Case.Study;

    public Outcome Outcome { get; }

    public Reading Reading { get; }

    public Explainer Explainer { get; }

    public WouldSay Wording { get; }

    public bool IsRight(Claim claim) => claim.IsRight(Outcome, Reading);

    public bool IsRightIn(Claim claim, Study changed) =>
        claim.IsRight(Evaluator.Decide(Pack.Network, changed), Evaluator.Evaluate(Pack.Network, changed));

    public Explanation Why(Rule rule, Subject subject)
    {
        if (!_proofs.TryGetValue((rule, subject), out var known)) _proofs[(rule, subject)] = known = Explainer.Why(rule, subject);
        return known;
    }

    public Subject SubjectOf(string key)
    {
        if (key == Subject.Study.Key) return Subject.Study;
        if (Outcome.Rules.FirstOrDefault(r => r.Subject.Key == key) is { } found) return found.Subject;
        var words = key.Split(' ');
        var side = Enum.GetValues<Side>().FirstOrDefault(s => s != Side.None && s.Word() == words[0]);
        return new Subject(Pack.Pack.Vocabulary.Structures[words[side == Side.None ? 0 : 1]], side, null);
    }

    public Finding? FindingOf(Subject subject, string finding) =>
        (subject.Structure?.Kind.Findings ?? Pack.Pack.Vocabulary.StudyFacts).GetValueOrDefault(finding);
}
