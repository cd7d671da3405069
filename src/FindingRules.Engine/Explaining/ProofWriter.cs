using System.Collections.Immutable;
using FindingRules.Engine.Compiling.Nodes;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Conditions;
using FindingRules.Model.Explanations;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;

namespace FindingRules.Engine.Explaining;

/// <summary>
/// Proofs of rules at instances of a decided examination, each once, and of the rules that settled the topics they
/// test, however far down. It asks the network's nodes for every truth and works out none itself.
/// </summary>
internal sealed class ProofWriter
{
    private readonly Examination _examination;
    private readonly Looks _looks;
    private readonly AnswerWriter _answers;
    private readonly Queue<RuleAt> _open = new();
    private readonly HashSet<(int, int)> _seen = [];
    private readonly ImmutableArray<Proof>.Builder _proofs = ImmutableArray.CreateBuilder<Proof>();

    public ProofWriter(Examination examination, Study study)
    {
        _examination = examination;
        _answers = new AnswerWriter(examination, Prove);
        _looks = new Looks(examination, new StudyPlaces(study), (at, node, statement) => _answers.Of(at, statement.Topic));
    }

    /// <summary>The key of the rule's proof, which <see cref="Finish"/> gives.</summary>
    public ProofKey Prove(RuleAt rule)
    {
        if (_seen.Add((rule.Index, rule.Position))) _open.Enqueue(rule);
        return KeyOf(rule);
    }

    public AnswerKey? Answer(int index, Model.Packs.Topic topic) => _answers.Of(index, topic);

    public (ImmutableArray<Proof> Proofs, ImmutableArray<TopicAnswer> Answers) Finish()
    {
        while (_open.TryDequeue(out var rule)) _proofs.Add(Make(rule));
        return (_proofs.ToImmutable(), _answers.All);
    }

    public static ProofKey KeyOf(RuleAt rule) => new(rule.Rule.Id, rule.Instance.Subject.Key);

    public static string WordOf(Standing standing) => standing.ToString().ToLowerInvariant();

    public static RuleGlance Glance(RuleAt rule, string? value = null) =>
        new(rule.Rule.Id, rule.Rule.Text, rule.State.Truth, WordOf(rule.State.Standing), value);

    private Proof Make(RuleAt rule) => new()
    {
        Rule = rule.Reference,
        Subject = rule.Instance.Subject.Key,
        SubjectTitle = rule.Instance.Subject.Title,
        Text = rule.Rule.Text,
        Place = Shown.Place(rule.Rule.DeclaredAt),
        Truth = rule.State.Truth,
        Standing = WordOf(rule.State.Standing),
        IsBorderline = rule.IsBorderline,
        Follows = rule.WouldConclude,
        Because = rule.Rule.Because,
        Choice = rule.Rule.Choice,
        Sources = SourceNotes.Of(rule.Rule.Sources),
        Condition = Part(rule.Rule.Condition, rule.Entry.Condition, rule.Index, subject: null),
        Superiors =
        [
            .. rule.Entry.Superiors.Select(p => new RuleAt(_examination, rule.Index, p)).Where(r => r.State.IsDecided).Select(Superior),
        ],
        Gives = [.. rule.Rule.Topics.Select(t => _answers.Of(rule.Index, t.Topic)).OfType<AnswerKey>().Distinct()],
    };

    /// <summary>One that overrules, or may, is proven as well.</summary>
    private RuleGlance Superior(RuleAt superior)
    {
        if (superior.State.Truth != Truth.False) Prove(superior);
        return Glance(superior);
    }

    public ProofPart Part(Condition condition, Node node, int instance, string? subject)
    {
        var truth = node.Decide(_examination, instance, isWidened: false);
        var (sort, parts) = (condition, node) switch
        {
            (AllOf all, AllNode nodes) => ("all", Parts(all.Parts, nodes.Parts, instance)),
            (AnyOf any, AnyNode nodes) => ("any", Parts(any.Parts, nodes.Parts, instance)),
            (Negation negation, NotNode not) => ("not", [Part(negation.Part, not.Part, instance, null)]),
            (Quantified quantified, CountNode count) => ("count", Counted(quantified, count, instance)),
            _ => ("statement", ImmutableArray<ProofPart>.Empty),
        };
        var looks = (condition, node) is (Statement statement, StatementNode leaf) ? _looks.Of(statement, leaf, instance, truth) : [];
        return new ProofPart(sort, ConditionText.Words(condition), Shown.Place(condition.Location), truth, subject, parts, looks)
        {
            CarriedBy = (condition as Quantified)?.CarriedBy(truth),
        };
    }

    private ImmutableArray<ProofPart> Parts(ImmutableArray<Condition> conditions, ImmutableArray<Node> nodes, int instance) =>
        [.. conditions.Select((c, i) => Part(c, nodes[i], instance, null))];

    private ImmutableArray<ProofPart> Counted(Quantified quantified, CountNode count, int instance) =>
    [
        .. count.Sites(_examination, instance).ToList().Where(s => s >= 0)
            .Select(s => Part(quantified.Where, count.Where, s, _examination[s].Subject.Key)),
    ];
}
