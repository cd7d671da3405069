using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Packs.Documents;
using FindingRules.Packs.Studies;

namespace FindingRules.Packs;

/// <summary>A study as JSON text in, a study checked against the pack's vocabulary out.</summary>
public static class StudyReader
{
    /// <summary>Null when there was an error; each message carries line, column and JSON Pointer.</summary>
    public static Study? Read(SourceText json, Pack pack, LoadLimits limits, MessageBag messages)
    {
        var before = messages.Count;
        if (JsonReader.Read(json, limits, messages) is not { } root) return null;
        var study = StudyBinder.Bind(root, new StudyContext(pack.Name, pack.Vocabulary, pack.Protocols, messages), key: null);
        return messages.Count == before ? study : null;
    }
}
