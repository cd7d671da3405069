using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Documents;
using FindingRules.Packs.Studies;

namespace FindingRules.Packs.Binding.Cases;

/// <summary>
/// Lines such as <c>right supraspinatus tear-depth full-thickness</c>: a subject as readings name it, and what follows.
/// </summary>
internal sealed class ExpectationReader(ExpectationNames names, Fields fields)
{
    private const string SubjectForm = "a subject such as `right supraspinatus`, `right supraspinatus lesion L1` or `study`";

    public void Rule(string list, ScalarNode text)
    {
        if (!names.Rules.ContainsKey(text.Value) && !names.IsExcusedRule(text.Value))
            fields.Report(LinkMessages.UnknownRule(text.Inside, $"`{list}`", Shown.Briefly(text.Value), names.Rules.Keys));
    }

    public void Caution(string list, ScalarNode text) =>
        Known(list, "caution", text.Value, text, names.Symbols.Cautions.Keys, FileKind.Cautions);

    public void Step(string list, ScalarNode text)
    {
        var words = Words(text);
        if (words is ["evaluate", .. var subject])
        {
            if (Subject(list, text, subject, out var rest) is not null && rest.Length > 0)
                Malformed(list, text, $"`evaluate` and {SubjectForm}");
        }
        else
        {
            Known(list, "next step", string.Join(' ', words), text, names.Symbols.NextSteps.Keys, FileKind.NextSteps);
        }
    }

    public void Topic(string list, ScalarNode text)
    {
        if (Subject(list, text, Words(text), out var rest) is null) return;
        if (rest is [var topic]) Topic(list, topic, text);
        else Malformed(list, text, $"{SubjectForm} and a topic");
    }

    public void Conclusion(string list, ScalarNode text)
    {
        if (Subject(list, text, Words(text), out var rest) is null) return;
        if (rest is not [var name, var value]) Malformed(list, text, $"{SubjectForm}, a topic and its value");
        else if (Topic(list, name, text) is { } topic)
            Known(list, $"value of `{topic.Name}`", value, text, [.. topic.Values.Select(v => v.Name)], FileKind.Topics);
    }

    public void Finding(string list, ScalarNode text)
    {
        if (Subject(list, text, Words(text), out var rest) is not { } subject) return;
        if (rest is not [var name])
        {
            Malformed(list, text, $"{SubjectForm} and a finding");
            return;
        }
        var known = subject.Structure?.Kind.Findings ?? names.Symbols.Vocabulary.StudyFacts;
        Known(list, subject.Structure is null ? "study fact" : $"finding of `{subject.Structure.Name}`", name, text,
            known.Keys, FileKind.Vocabulary);
    }

    public void Probability(string list, ScalarNode text)
    {
        if (Subject(list, text, Words(text), out var rest) is not null && rest is not [_, "%"])
            Malformed(list, text, $"{SubjectForm} and a probability such as `23.3 %`");
    }

    private Topic? Topic(string list, string name, ScalarNode text)
    {
        if (names.Symbols.Topics.TryGetValue(name, out var topic)) return topic;
        var isExcused = names.Context.Known.Excuses(name, FileKind.Topics) || names.Context.Known.Excuses(name, FileKind.Scales);
        if (!isExcused) Unknown(list, "topic", name, text, names.Symbols.Topics.Keys);
        return null;
    }

    // Null once a message says why; the structure is null for the study.
    private (Structure? Structure, bool IsRead)? Subject(string list, ScalarNode text, string[] words, out string[] rest)
    {
        rest = [];
        if (words is ["study", .. var afterStudy])
        {
            rest = afterStudy;
            return (null, true);
        }
        var side = words is [var first, ..] ? SideOf(first) : null;
        var unsided = side is null ? words : words[1..];
        if (unsided is not [var name, .. var after])
        {
            Malformed(list, text, SubjectForm);
            return null;
        }
        if (!names.Symbols.Vocabulary.Structures.TryGetValue(name, out var structure))
        {
            if (!names.Context.Known.Excuses(name, FileKind.Vocabulary))
                Unknown(list, "structure", name, text, names.Symbols.Vocabulary.Structures.Keys);
            return null;
        }
        if (structure.IsPaired == side is null)
        {
            Malformed(list, text, structure.IsPaired
                ? $"`left`, `right` or `side-not-stated` before `{name}`, which is paired"
                : $"`{name}` without a side, because it is not paired");
            return null;
        }
        rest = after is ["lesion", var id, .. var afterLesion] && OpaqueKey.Fits(id) ? afterLesion : after;
        return (structure, true);
    }

    private static Side? SideOf(string word) => word switch
    {
        "left" => Side.Left,
        "right" => Side.Right,
        "side-not-stated" => Side.Unknown,
        _ => null,
    };

    private void Known(string list, string what, string name, ScalarNode text, IEnumerable<string> known, string kind)
    {
        string[] all = [.. known];
        if (!all.Contains(name) && !names.Context.Known.Excuses(name, kind)) Unknown(list, what, name, text, all);
    }

    private void Unknown(string list, string what, string name, ScalarNode text, IEnumerable<string> known) =>
        fields.Report(LinkMessages.UnknownExpectation(PlaceOf(name, text), list, what, Shown.Briefly(name), [.. known]));

    private void Malformed(string list, ScalarNode text, string expected) =>
        fields.Report(LinkMessages.MalformedExpectation(text.Location, list, Shown.Briefly(text.Value), expected));

    private static Model.Text.Location PlaceOf(string name, ScalarNode text)
    {
        var at = text.Value.IndexOf(name, StringComparison.Ordinal);
        return at < 0 ? text.Location : text.Text.At(new Model.Text.TextSpan(at, name.Length));
    }

    private static string[] Words(ScalarNode text) =>
        text.Value.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
}
