using BenchmarkDotNet.Attributes;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Engine.Reference;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Packs;
using FindingRules.Testing;

namespace FindingRules.Benchmarks;

/// <summary>
/// The depth of a tear, decided by a few lines of C# that know nothing else, by the reference interpreter and by the
/// network. The C# is what a program without a rule language would say; it gives no rule ids and no reasons.
/// </summary>
[MemoryDiagnoser]
public class HandWrittenBenchmarks
{
    private const string Json =
        """
        { "study": "S-1", "subjects": [{ "structure": "supraspinatus", "side": "right", "findings": {
            "fluid": { "from": "bursal", "to": "articular" }, "reangled": "persists", "tear-length": "14 mm" } }] }
        """;

    private Pack _pack = null!;
    private RuleNetwork _network = null!;
    private Study _study = null!;

    [GlobalSetup]
    public void Setup()
    {
        _pack = ExamplePack.Plain.Compile().Pack;
        _network = NetworkCompiler.Compile(_pack);
        _study = StudyReader.Read(new SourceText("study.json", Json), _pack, LoadLimits.Default, new MessageBag())!;
        var answers = new[] { HandWritten(), DepthOf(Reference()), DepthOf(Network()) };
        if (answers.Distinct().Count() != 1) throw new InvalidOperationException($"They do not agree: {string.Join(", ", answers)}");
    }

    [Benchmark(Baseline = true)]
    public string? HandWritten()
    {
        foreach (var subject in _study.Subjects)
        {
            if (subject.Findings.Find("fluid")?.Value is not ExtentValue fluid) continue;
            var isCrossing = fluid.Stretches.Any(s => s is { From: 0, To: 2 });
            if (isCrossing && subject.Findings.Find("reangled")?.Value is ChoiceValue { Value: "persists" }) return "full-thickness";
            if (fluid.Stretches.Any(s => s.From == 0)) return "bursal-sided";
            if (fluid.Stretches.Any(s => s.To == 2)) return "articular-sided";
        }
        return null;
    }

    [Benchmark]
    public Outcome Reference() => ReferenceInterpreter.Decide(_pack, _study);

    [Benchmark]
    public Outcome Network() => Evaluator.Decide(_network, _study);

    private static string? DepthOf(Outcome outcome) =>
        outcome.Topics.Single(t => t.Topic.Name == "tear-depth" && t.Subject.Key == "right supraspinatus").Value;
}
