using CsCheck;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Testing.Generators;
using Xunit;

namespace FindingRules.Tests.Engine.Properties;

/// <summary>Nothing depends on the order in which rules, subjects or lesions come.</summary>
public sealed class OrderTests
{
    private sealed record Shuffled(Sample Plain, Sample Other);

    private static readonly Gen<Shuffled> _any = new Drawn<Shuffled>(draw =>
    {
        var plain = Sample.Make(draw, mayAskAssessed: true);
        return new Shuffled(plain, new Sample(Shuffle(draw, plain.Pack), Shuffle(draw, plain.Study)));
    });

    [Fact]
    public void Order_of_rules_subjects_and_lesions_changes_nothing() => _any.Sample(
        s =>
        {
            Assert.Empty(BothInterpreters.Differences(
                ReferenceInterpreter.Decide(s.Plain.Pack, s.Plain.Study), ReferenceInterpreter.Decide(s.Other.Pack, s.Other.Study)));
            Assert.Empty(BothInterpreters.Differences(Run(s.Plain), Run(s.Other)));
        },
        iter: 150, print: s => s.Plain.ToString());

    private static Outcome Run(Sample sample) => Evaluator.Decide(NetworkCompiler.Compile(sample.Pack), sample.Study);

    private static Pack Shuffle(Draw draw, Pack pack) => pack with { Rules = [.. draw.Shuffle(pack.Rules)] };

    private static Study Shuffle(Draw draw, Study study) => study with
    {
        Subjects = [.. draw.Shuffle(study.Subjects.Select(s => Shuffle(draw, s)))],
        Earlier = study.Earlier is { } earlier ? [.. draw.Shuffle(earlier.Select(s => Shuffle(draw, s)))] : null,
        Protocols = [.. draw.Shuffle(study.Protocols)],
    };

    private static StudySubject Shuffle(Draw draw, StudySubject subject) => subject with { Lesions = [.. draw.Shuffle(subject.Lesions)] };
}
