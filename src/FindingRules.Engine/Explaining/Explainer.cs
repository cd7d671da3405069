using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Explanations;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Explaining;

/// <summary>
/// A study that has been read, ready to be asked about. It evaluates the study for itself, so no reading is ever changed
/// by being explained. Not for several threads at once.
/// </summary>
public sealed class Explainer
{
    private readonly SearchLimits _limits;
    private readonly RuleNetwork _network;
    private readonly Study _study;
    private readonly Decided _decided;
    private readonly Reading _reading;

    public Explainer(RuleNetwork network, Study study)
        : this(network, study, new SearchLimits())
    {
    }

    internal Explainer(RuleNetwork network, Study study, SearchLimits limits)
    {
        (_network, _study, _limits) = (network, study, limits);
        var examination = Evaluator.Examine(network, study);
        _reading = ReadingWriter.Write(examination, study);
        _decided = new Decided(examination, study);
    }

    /// <summary>Why the reading says each of its lines.</summary>
    public Explanation Trace()
    {
        var lines = new LineWriter(_decided, _reading).Write().ToList();
        return Explain(lines.SelectMany(l => l.By), lines.Select(l => l.Line));
    }

    public Explanation Why(Rule rule, Subject subject) => Why(rule, [subject]);

    /// <summary>How one rule came out at subjects that it is bound to.</summary>
    public Explanation Why(Rule rule, ImmutableArray<Subject> subjects)
    {
        var asked = At(rule, subjects).ToList();
        var lines = new LineWriter(_decided, _reading).Write().Where(l => l.By.Any(asked.Contains)).Select(l => l.Line);
        return Explain(asked, lines) with { Asked = [.. asked.Select(ProofWriter.KeyOf)] };
    }

    /// <summary>What keeps one rule from standing, and what would have to be different.</summary>
    public Explanation WhyNot(Rule rule, Subject subject) => WhyNot(rule, [subject]);

    public Explanation WhyNot(Rule rule, ImmutableArray<Subject> subjects)
    {
        var writer = new ProofWriter(_decided.Examination, _study);
        var whyNot = new WhyNotWriter(_decided.Examination, writer, Ways(), _limits);
        ImmutableArray<WhyNot> answers = [.. At(rule, subjects).ToList().Select(whyNot.Write)];
        return Finish(writer, []) with { WhyNot = answers, Asked = [.. answers.Select(a => a.Key)] };
    }

    /// <summary>What would take back each line of the reading.</summary>
    public Explanation WhatIf()
    {
        var lines = new LineWriter(_decided, _reading).Write().Where(l => WhatIfWriter.IsAbout(l.Line)).ToList();
        var explained = Explain(lines.SelectMany(l => l.By), lines.Select(l => l.Line));
        var writer = new WhatIfWriter(Ways(), _limits);
        return explained with { WhatIf = [.. lines.Select(l => writer.Write(l.Line, l.By, explained.Proofs, explained.Answers))] };
    }

    /// <summary>What each missing finding would lead to, in the order in which the reading asks for them.</summary>
    public Explanation AskNext()
    {
        var weighed = AskNextWriter.Weigh(_decided, _reading.Unknown).ToList();
        var writer = new NextQuestionWriter(_decided, Ways());
        return Explain([], []) with { AskNext = [.. weighed.Select(writer.Write)] };
    }

    /// <summary>The subjects of the study that a rule is bound to.</summary>
    public ImmutableArray<Subject> SubjectsOf(Rule rule) => [.. _decided.Rules.Where(r => r.Rule == rule).Select(r => r.Instance.Subject)];

    /// <summary>Every subject of the study.</summary>
    public ImmutableArray<Subject> Subjects => [.. _decided.Instances.Select(i => _decided.Examination[i].Subject)];

    private IEnumerable<RuleAt> At(Rule rule, ImmutableArray<Subject> subjects) =>
        _decided.Rules.Where(r => r.Rule == rule && subjects.Contains(r.Instance.Subject));

    private Explanation Explain(IEnumerable<RuleAt> rules, IEnumerable<ExplainedLine> lines)
    {
        var writer = new ProofWriter(_decided.Examination, _study);
        foreach (var rule in rules) writer.Prove(rule);
        return Finish(writer, lines);
    }

    private WayWriter Ways() => new(_network, _study, _decided.Examination, _reading);

    private Explanation Finish(ProofWriter writer, IEnumerable<ExplainedLine> lines)
    {
        var (proofs, answers) = writer.Finish();
        return new Explanation
        {
            Pack = _reading.Pack,
            Engine = _reading.Engine,
            Study = _reading.Study,
            Lines = [.. lines],
            Proofs = proofs,
            Answers = answers,
            Notice = _reading.Notice,
        };
    }
}
