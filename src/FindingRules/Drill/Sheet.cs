using System.Collections.Immutable;
using FindingRules.Model.Explanations;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Drill;

/// <summary>One line of a case as it is shown.</summary>
/// <param name="Subject">Its key; <c>earlier right supraspinatus</c> in the earlier study.</param>
/// <param name="Finding">Its name; <see cref="Normal"/> for all that was reported as normal together.</param>
internal sealed record SheetItem(string Mark, string Subject, string SubjectTitle, string Finding, string Title, string Value, bool IsKnown)
{
    public const string Normal = "normal";
}

/// <summary>A case as it is shown: every finding sent, and of what was not, all that an option would look at.</summary>
internal sealed class Sheet
{
    private const string Unassessed = "not assessed";
    private const string Hidden = "could not be assessed";
    private readonly List<SheetItem> _items = [];

    private Sheet(CaseView view, IEnumerable<SeenValue> missing)
    {
        Add(Subject.Study, "study", view.Study.Facts);
        foreach (var subject in view.Study.Subjects) Add(subject, "", "");
        Add(Subject.Study, "earlier study", view.Study.EarlierFacts);
        foreach (var subject in view.Study.Earlier ?? []) Add(subject, "earlier ", " in the earlier study");
        foreach (var gap in view.Reading.NotAssessed)
            foreach (var finding in gap.Findings)
                AddMissing(
                    gap.Subject, view.SubjectOf(gap.Subject).Title, finding, TitleOf(view, gap.Subject, finding), gap.IsNotAssessable);
        foreach (var value in missing)
            AddMissing(value.Subject, value.SubjectTitle, value.Finding, value.Title, isNotAssessable: false);
        var ordered = _items.GroupBy(i => i.SubjectTitle).SelectMany(g => g).Select((item, i) => item with { Mark = MarkOf(i) });
        Items = [.. ordered];
        Examination =
        [
            .. view.Study.Protocols.Select(p => Capital(p.Protocol.Title) + (p.Side == Side.None ? "" : $", {p.Side.Word()} side")),
        ];
    }

    public ImmutableArray<SheetItem> Items { get; }

    public ImmutableArray<string> Examination { get; }

    public ImmutableArray<DrillSubject> Subjects =>
    [
        .. Items.GroupBy(i => i.SubjectTitle).Select(g =>
            new DrillSubject(Capital(g.Key), [.. g.Select(i => new DrillFinding(i.Mark, i.Title, i.Value))])),
    ];

    /// <param name="missing">What to show as not assessed.</param>
    public static Sheet Of(CaseView view, IEnumerable<SeenValue> missing) => new(view, missing);

    /// <summary>The line that shows what a proof looked at: of a lesion perhaps that of its structure, or the word normal.</summary>
    public SheetItem? Find(string subject, string finding)
    {
        var whole = subject.Split(" lesion ")[0];
        return At(subject, finding) ?? At(whole, finding) ?? At(whole, SheetItem.Normal);
    }

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    public static string Words(FindingValue value) => value is ChoiceValue choice ? choice.Value.Replace('-', ' ') : value switch
    {
        NotAssessableValue => Hidden,
        _ => value.ToString()!,
    };

    private SheetItem? At(string subject, string finding) =>
        (Items.IsDefault ? _items : [.. Items]).Find(i => i.Subject == subject && i.Finding == finding);

    private void Add(StudySubject subject, string before, string after)
    {
        var whole = new Subject(subject.Structure, subject.Side, null);
        var rest = subject.Findings.InOrder.IsEmpty ? "everything" : "everything else";
        Add(whole, before + whole.Key, subject.Findings, after);
        if (subject.IsNormal)
            Item(before + whole.Key, whole.Title + after, SheetItem.Normal, rest, "normal", true);
        if (subject.IsNotAssessable)
            Item(before + whole.Key, whole.Title + after, "not-assessable", rest, Hidden, true);
        foreach (var lesion in subject.Lesions)
        {
            var at = whole with { Lesion = lesion.Id };
            Add(at, before + at.Key, lesion.Findings, after);
        }
    }

    private void Add(Subject subject, string key, Findings findings, string after = "")
    {
        var title = subject.Structure is null ? key : subject.Title + after;
        foreach (var sent in findings.InOrder)
            Item(key, title, sent.Finding.Name, sent.Finding.Title, Words(sent.Value), true);
    }

    private void AddMissing(string subject, string title, string finding, string findingTitle, bool isNotAssessable)
    {
        if (Find(subject, finding) is not null || At(subject, "not-assessable") is not null) return;
        var (name, value) = finding == "structure" ? ("the whole structure", "not examined") : (findingTitle, Unassessed);
        Item(subject, subject is "study" or "earlier study" ? subject : title, finding, name, isNotAssessable ? Hidden : value, false);
    }

    private void Item(string subject, string title, string finding, string name, string value, bool isKnown) =>
        _items.Add(new SheetItem("", subject, title, finding, name, value, isKnown));

    private static string TitleOf(CaseView view, string subject, string finding) =>
        view.FindingOf(view.SubjectOf(subject), finding)?.Title ?? finding.Replace('-', ' ');

    private static string MarkOf(int index) =>
        index < 26 ? $"{(char)('a' + index)}" : $"{(char)('a' + (index / 26) - 1)}{(char)('a' + (index % 26))}";
}
