using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Explaining;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Packs;

namespace FindingRules;

/// <summary>A pack that was read without error and is ready to read studies. Immutable; any number of threads may use it.</summary>
public sealed class CompiledPack
{
    private CompiledPack(RuleNetwork network) => Network = network;

    public Pack Pack => Network.Pack;

    internal RuleNetwork Network { get; }

    /// <summary>Reads and compiles the files of a pack. The pack is null where a message is an error.</summary>
    public static PackLoad Load(ImmutableArray<PackFile> files, LoadLimits? limits = null)
    {
        var messages = new MessageBag();
        var whole = new SourceText(PackFolder.Manifest, "").Whole;
        var pack = Guard.Run(
            () => PackReader.Read(files, limits ?? LoadLimits.Default, messages), "reading the pack", whole, messages);
        var network = pack is null || messages.HasErrors
            ? null
            : Guard.Run(() => NetworkCompiler.Compile(pack), "compiling the pack", whole, messages);
        return new PackLoad(network is null ? null : new CompiledPack(network), messages.Sorted());
    }

    /// <summary>Reads one study. The reading is null where a message is an error: then there is no reading, not an empty one.</summary>
    public StudyReading Read(SourceText json, LoadLimits? limits = null)
    {
        var messages = new MessageBag();
        var whole = new SourceText(json.Path, "", json.FirstLine).Whole;
        var study = Guard.Run(
            () => StudyReader.Read(json, Pack, limits ?? LoadLimits.Default, messages), "reading the study", whole, messages);
        var reading = study is null || messages.HasErrors ? null : Evaluate(study, messages);
        return new StudyReading(reading, messages.Sorted());
    }

    /// <summary>
    /// The same reading as <see cref="Read"/>, with the study as it was understood and what became of every rule and topic:
    /// for whoever keeps readings and must find them again.
    /// </summary>
    public WholeReading ReadWhole(SourceText json, LoadLimits? limits = null)
    {
        var messages = new MessageBag();
        var whole = new SourceText(json.Path, "", json.FirstLine).Whole;
        var study = Guard.Run(
            () => StudyReader.Read(json, Pack, limits ?? LoadLimits.Default, messages), "reading the study", whole, messages);
        var decided = study is null || messages.HasErrors
            ? null
            : Guard.Run(() => Decided(study), "evaluating the study", study.Location, messages);
        return new WholeReading(decided, messages.Sorted());
    }

    private DecidedStudy Decided(Study study)
    {
        var (reading, outcome) = Evaluator.EvaluateWhole(Network, study);
        return new DecidedStudy(reading, study, outcome);
    }

    /// <summary>
    /// Answers a question about the reading of a study. It evaluates anew and changes no reading; the explanation is null
    /// where a message is an error.
    /// </summary>
    public StudyExplanation Explain(SourceText json, Question question, LoadLimits? limits = null)
    {
        var messages = new MessageBag();
        var whole = new SourceText(json.Path, "", json.FirstLine).Whole;
        var study = Guard.Run(
            () => StudyReader.Read(json, Pack, limits ?? LoadLimits.Default, messages), "reading the study", whole, messages);
        var explanation = study is null || messages.HasErrors
            ? null
            : Guard.Run(() => Asking.Of(this, study, question, messages), "explaining the reading", study.Location, messages);
        return new StudyExplanation(explanation, messages.Sorted());
    }

    internal Reading? Evaluate(Study study, MessageBag messages) =>
        Guard.Run(() => Evaluator.Evaluate(Network, study), "evaluating the study", study.Location, messages);

    internal Outcome? Decide(Study study, MessageBag messages) =>
        Guard.Run(() => Evaluator.Decide(Network, study), "evaluating the study", study.Location, messages);
}

public sealed record PackLoad(CompiledPack? Pack, ImmutableArray<Message> Messages);

public sealed record StudyReading(Reading? Reading, ImmutableArray<Message> Messages);

/// <summary>A reading with what it was made of; null where a message is an error.</summary>
public sealed record WholeReading(DecidedStudy? Decided, ImmutableArray<Message> Messages)
{
    public Reading? Reading => Decided?.Reading;
}

public sealed record DecidedStudy(Reading Reading, Study Study, Outcome Outcome);
