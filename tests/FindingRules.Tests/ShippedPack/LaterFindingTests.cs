using CsCheck;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Truths;
using FindingRules.Testing.Generators;
using FindingRules.Tests.Engine.Properties;
using Xunit;

namespace FindingRules.Tests.ShippedPack;

/// <summary>
/// What the pack has said of a study stands when one more finding comes, or the reading says that it is withheld, contradictory
/// or open. Rules that ask whether something was assessed could break this; these tests hold them to it.
/// </summary>
public sealed class LaterFindingTests
{
    // Given only where it was asked for: no study that did not ask for it waits for it.
    private static readonly string[] OnRequest =
        ["also-grade", "pre-test-body", "pre-test-neuroma", "pre-test-neuropathy", "pre-test-syndrome", "pre-test-tear", "pre-test-tendinopathy"];

    private static readonly Gen<(Case Case, Study Later)> Supplied = new Drawn<(Case, Study)>(draw =>
    {
        var chosen = draw.Of(Shipped.Pack.Cases);
        return (chosen, Supplying.OneFinding(draw, new Sample(Shipped.Pack, chosen.Study)));
    });

    [Fact]
    public void A_later_finding_never_withdraws_an_answer_in_silence() => Supplied.Sample(
        drawn =>
        {
            var outcome = Decide(drawn.Later);
            var later = outcome.Topics.ToDictionary(t => (t.Topic.Name, t.Subject.Key));
            // The size of a mass counts until it is said to be a lipoma; the exemption is then said as a caution.
            var isExempt = outcome.Rules.Any(r => r.Rule.Id == "STM-016" && r.Truth == Truth.True);
            foreach (var said in Decide(drawn.Case.Study).Topics.Where(t => t.Status == TopicStatus.Published))
            {
                var now = later[(said.Topic.Name, said.Subject.Key)];
                Assert.True(
                    now.Status is TopicStatus.Held or TopicStatus.Conflict or TopicStatus.Open
                        || (now.Status == said.Status && now.Value == said.Value) || (isExempt && said.Topic.Name == "lump-referral"),
                    $"{drawn.Case.Id}: {said.Topic.Name} of {said.Subject.Key} was {said.Value}, now {now.Status} {now.Value}");
            }
        },
        iter: 4_000);

    [Fact]
    public void What_is_given_on_request_only_is_asked_of_nobody()
    {
        var asked = Shipped.Pack.Cases.SelectMany(c => Shipped.Compiled.Evaluate(c.Study, new MessageBag())!.AskNext).Select(a => a.Finding);

        Assert.Empty(asked.Intersect(OnRequest));
    }

    private static Outcome Decide(Study study) => Shipped.Compiled.Decide(study, new MessageBag())!;
}
