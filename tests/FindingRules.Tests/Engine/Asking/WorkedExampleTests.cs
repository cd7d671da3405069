using FindingRules.Engine.Asking;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reporting;
using FindingRules.Model.Conditions;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using Xunit;
using static FindingRules.Testing.Generators.ModelOf;

namespace FindingRules.Tests.Engine.Asking;

/// <summary>The worked example of DEVELOPERS.md: one look that may bring an urgent step comes before what settles less.</summary>
public sealed class WorkedExampleTests
{
    private static readonly Kind Joint = Kind("joint", null, Sign("fever"), Sign("effusion"), Sign("tilt"), Sign("painful"));
    private static readonly Structure Hip = Structure("hip", Joint, isPaired: false);

    [Fact]
    public void The_worked_example_comes_out_as_it_is_written()
    {
        var pack = APack();
        var study = new Study
        {
            Key = "S-1",
            Location = Nowhere,
            Subjects = [new StudySubject(Hip, Side.None, false, false, Sent("painful"), [], Nowhere)],
        };
        var examination = Evaluator.Examine(NetworkCompiler.Compile(pack), study);
        var decided = new Decided(examination, study);
        var weighed = AskNextWriter.Weigh(decided, UndecidedWriter.Write(decided)).ToList();

        Assert.Equal(["effusion", "fever", "tilt"], weighed.Select(w => w.Finding.Name));
        Assert.Equal([new Rational(1, 2), 1, 0], Worth(weighed[0]));
        Assert.Equal([new Rational(1, 2), 0, 0], Worth(weighed[1]));
        Assert.Equal([0, 0, 1], Worth(weighed[2]));
    }

    private static Rational[] Worth(Weighed weighed) =>
        [weighed.Worth.Of(Weight.UrgentStep), weighed.Worth.Of(Weight.DefiniteImpression), weighed.Worth.Of(Weight.Caution)];

    /// <summary>Each rule asks for pain as well, which was sent: of a rule nothing of which was sent nobody is asked.</summary>
    private static Pack APack()
    {
        var vocabulary = Vocabulary([], [Joint], [Hip], []);
        var state = Topic("joint-state", Each(Hip), isPerStructure: false, "effusion");
        var aspirate = new NextStep("aspirate", Says("Aspirate."), Urgency.Urgent, null, [], Nowhere);
        var angle = new Caution("angle-effect", Says("Mind the angle."), [], Nowhere);
        var symbols = new Symbols
        {
            Vocabulary = vocabulary,
            Topics = ByName([state], t => t.Name),
            NextSteps = ByName([aspirate], s => s.Name),
            Cautions = ByName([angle], c => c.Name),
        };
        return Pack(symbols,
        [
            ARule("A-1", new NextStepConclusion(aspirate, Nowhere), "painful", "fever", "effusion"),
            ARule("A-2", new TopicConclusion(state, state.Values[0], Nowhere), "painful", "effusion"),
            ARule("A-3", new CautionConclusion(angle, Nowhere), "painful", "tilt"),
        ]);
    }

    private static Rule ARule(string id, Conclusion conclusion, params string[] signs) => new(
        id, Each(Hip), new AllOf([.. signs.Select(s => new SignStatement(Place.Own, Joint.Findings[s], Nowhere))], Nowhere), [conclusion], Nowhere)
    {
        Text = id,
        Because = "Made in a test.",
        Revision = "000000000000",
    };

    private static Findings Sent(string sign) => new(ByName(
        [new SentFinding(Joint.Findings[sign], new SignValue(true), Nowhere)], f => f.Finding.Name));
}
