using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Packs;
using FindingRules.Testing;

namespace FindingRules.Tests.Packs;

/// <summary>Reads packs and studies and keeps what was said of them.</summary>
internal static class Reads
{
    public static Pack Example { get; } = Pack(ExamplePack.Plain).Pack!;

    public static (Pack? Pack, ImmutableArray<Message> Messages) Pack(ExamplePack pack) => Pack(pack.Files);

    public static (Pack? Pack, ImmutableArray<Message> Messages) Pack(ImmutableArray<PackFile> files)
    {
        var messages = new MessageBag();
        var pack = PackReader.Read(files, LoadLimits.Default, messages);
        return (pack, messages.Sorted());
    }

    public static (Study? Study, ImmutableArray<Message> Messages) Study(string json)
    {
        var messages = new MessageBag();
        var study = StudyReader.Read(new SourceText("study.json", json), Example, LoadLimits.Default, messages);
        return (study, messages.Sorted());
    }

    public static string[] Codes(IEnumerable<Message> messages) => [.. messages.Select(m => m.Code)];

    public static string Show(IEnumerable<Message> messages) =>
        string.Join('\n', messages.Select(m => $"{m.Location} {m.Code} {m.Text} ({m.Label})"));
}
