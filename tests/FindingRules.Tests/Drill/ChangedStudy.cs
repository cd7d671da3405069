using System.Text.Json;
using FindingRules.Engine.Explaining.Changing;
using FindingRules.Model.Explanations;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;
using FindingRules.Model.Text;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs;

namespace FindingRules.Tests.Drill;

/// <summary>Does to a study what a change says, from its words alone: the value is read as a sender would write it.</summary>
internal static class ChangedStudy
{
    private const string Earlier = "earlier ";

    public static Study With(Pack pack, Study study, Change change)
    {
        var isEarlier = change.Subject.StartsWith(Earlier, StringComparison.Ordinal);
        var subject = SubjectOf(pack, isEarlier ? change.Subject[Earlier.Length..] : change.Subject);
        var finding = (subject.Structure?.Kind.Findings ?? pack.Vocabulary.StudyFacts)[change.Finding];
        var value = change.To == "not sent" ? null : Read(pack, subject, finding, change.To);
        return StudyEdit.With(study, new FindingSlot(isEarlier, subject, finding), value);
    }

    private static FindingValue Read(Pack pack, Subject subject, Finding finding, string to)
    {
        var member = $"{{ {JsonSerializer.Serialize(finding.Name)}: {Json(finding, to)} }}";
        var structure = subject.Structure is { } s
            ? $"\"subjects\": [{{ \"structure\": \"{s.Name}\"{(s.IsPaired ? ", \"side\": \"left\"" : "")}, \"findings\": {member} }}]"
            : $"\"facts\": {member}";
        var messages = new MessageBag();
        var text = new SourceText("changed", $"{{ \"study\": \"X-1\", {structure} }}");
        var read = StudyReader.Read(text, pack, LoadLimits.Default, messages);
        Assert(read is not null && !messages.HasErrors, $"{finding.Name}: {to}");
        return (subject.Structure is null ? read!.Facts : read!.Subjects[0].Findings).Find(finding.Name)!.Value;
    }

    private static string Json(Finding finding, string to)
    {
        if (finding.Type is not ExtentType || to is "none" or NotAssessableValue.Word) return JsonSerializer.Serialize(to);
        var stretches = to.Split(" and ").Select(s => s.Split(" to ") is [var from, var until]
            ? $"{{ \"from\": \"{from}\", \"to\": \"{until}\" }}"
            : JsonSerializer.Serialize(s));
        return $"[{string.Join(", ", stretches)}]";
    }

    private static Subject SubjectOf(Pack pack, string key)
    {
        if (key == Subject.Study.Key) return Subject.Study;
        var (whole, lesion) = key.Split(" lesion ") is [var w, var l] ? (w, l) : (key, null);
        var words = whole.Split(' ');
        var side = words is [var word, _] ? Enum.GetValues<Side>().First(s => s.Word() == word) : Side.None;
        return new Subject(pack.Vocabulary.Structures[words[^1]], side, lesion);
    }

    private static void Assert(bool isSo, string what) => Xunit.Assert.True(isSo, what);
}
