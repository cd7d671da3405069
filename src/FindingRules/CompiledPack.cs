using System.Collections.Immutable;
using FindingRules.Engine.Compiling;
using FindingRules.Engine.Evaluating;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Text;
using FindingRules.Packs;

namespace FindingRules;

/// <summary>A pack that was read without error and is ready to read studies. Immutable; any number of threads may use it.</summary>
public sealed class CompiledPack
{
    private readonly RuleNetwork _network;

    private CompiledPack(RuleNetwork network) => _network = network;

    public Pack Pack => _network.Pack;

    /// <summary>Reads and compiles the files of a pack. The pack is null where a message is an error.</summary>
    public static PackLoad Load(ImmutableArray<PackFile> files, LoadLimits? limits = null)
    {
        var messages = new MessageBag();
        var pack = PackReader.Read(files, limits ?? LoadLimits.Default, messages);
        var compiled = pack is null || messages.HasErrors ? null : new CompiledPack(NetworkCompiler.Compile(pack));
        return new PackLoad(compiled, messages.Sorted());
    }

    /// <summary>Reads one study. The reading is null where a message is an error: then there is no reading, not an empty one.</summary>
    public StudyReading Read(SourceText json, LoadLimits? limits = null)
    {
        var messages = new MessageBag();
        var study = StudyReader.Read(json, Pack, limits ?? LoadLimits.Default, messages);
        var reading = study is null || messages.HasErrors ? null : Evaluator.Evaluate(_network, study);
        return new StudyReading(reading, messages.Sorted());
    }
}

public sealed record PackLoad(CompiledPack? Pack, ImmutableArray<Message> Messages);

public sealed record StudyReading(Reading? Reading, ImmutableArray<Message> Messages);
