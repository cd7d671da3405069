using System.Collections.Immutable;
using FindingRules.Model.Messages.Rendering;
using FindingRules.Model.Readings;

namespace FindingRules.Output;

/// <summary>A reading as a person reads it: what to paste first, then what it rests on and what is still open.</summary>
public static class ReadingText
{
    private const int Width = 100;
    private const int FewUndecided = 5;
    private const int FewQuestions = 8;
    private const int DigestDigits = 12;
    private const string Demonstration = "DEMONSTRATION";

    public static void Write(TextWriter to, Reading reading)
    {
        var page = new Page(to, Width);
        page.Heading($"Impression for study {Printable.Of(reading.Study)}, ready to paste");
        to.WriteLine();
        foreach (var line in reading.ImpressionText.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n')) page.Paragraph(line);
        WriteSuggestions(page, reading);
        WriteWithheld(page, reading);
        WriteOpenQuestions(page, reading);
        WriteIdentity(page, reading);
    }

    /// <summary>Where a reading would stand and there is none.</summary>
    public static void Write(TextWriter to, NoReading none)
    {
        var page = new Page(to, Width);
        page.Heading($"NO READING for {Printable.Of(none.Source)}{(none.Line is { } line ? $" line {line}" : "")}");
        page.Item($"{Capital(none.Why)}.");
        page.Item("Nothing was evaluated. This does not mean that there is nothing to suggest.");
    }

    private static void WriteSuggestions(Page page, Reading reading)
    {
        Section(page, "Suggested", reading.Suggestions, s => page.Item(
            s.IsBorderline ? $"{s.Text} (borderline)" : s.Text,
            [
                $"{s.Certainty}, by {Grounds.Rules(s.Rules)}, for {s.Topic} of {s.Subject}",
                Grounds.RestsOn(s.RestsOn, s.Subject),
                .. Grounds.Sources(s.Sources),
                Grounds.Choices(s.Choices),
            ]));
        Section(page, "Next steps", reading.NextSteps.Where(s => !s.IsDone), s => page.Item(
            $"Open, {s.Urgency}: {s.Text}", Grounds.By(s.Rules, s.Subjects), Grounds.RestsOn(s.RestsOn, Only(s.Subjects))));
        Section(page, "Next steps already done", reading.NextSteps.Where(s => s.IsDone), s => page.Item(
            $"Done: {s.Text}",
            s.Found.IsEmpty ? null : $"found: {string.Join("; ", s.Found)}",
            Grounds.By(s.Rules, s.Subjects),
            Grounds.RestsOn(s.RestsOn, Only(s.Subjects))));
        Section(page, "Probabilities", reading.Probabilities, p => page.Item(
            p.Text,
            [
                $"by {Grounds.Rules(p.Rules)}, for {p.Subject}; figures: {p.Figures}",
                Grounds.RestsOn(p.RestsOn, p.Subject),
                .. Grounds.Sources(p.Sources),
            ]));
        Section(page, "Cautions", reading.Cautions, c => page.Item(
            c.Text, Grounds.By(c.Rules, c.Subjects), Grounds.RestsOn(c.RestsOn, Only(c.Subjects))));
    }

    private static void WriteWithheld(Page page, Reading reading)
    {
        Section(page, "Held back until something is checked", reading.Held, h => page.Item(
            $"{h.Topic} of {h.Subject}" + (h.WouldBe.IsEmpty ? "" : $", which would be {string.Join(" or ", h.WouldBe)}"),
            [.. h.Because, $"by {Grounds.Rules(h.Rules)}", Grounds.RestsOn(h.RestsOn, h.Subject)]));
        Section(page, "In conflict: the rules give two answers, so none is given", reading.Conflicts, c => page.Item(
            $"{c.Topic} of {c.Subject}",
            [.. c.Values.Select(v => $"{v.Value} by {Grounds.Rules(v.Rules)}; {Grounds.RestsOn(v.RestsOn, c.Subject)}")]));
        // One measurement near a threshold often is between two rules.
        Section(page, "Borderline: within the precision of the measurement", reading.Borderline.GroupBy(Grounds.Measured), group =>
            page.Item(group.Key, [.. group.Select(b => $"{b.Rule.Id} {(b.Applies ? "applies" : "does not apply")}: {b.WouldConclude}")]));
    }

    private static void WriteOpenQuestions(Page page, Reading reading)
    {
        Section(page, "Ask next", reading.AskNext.Take(FewQuestions), m => page.Item(
            m.Text, m.Settles.IsEmpty ? null : $"would settle {string.Join(", ", m.Settles)}"));
        More(page, reading.AskNext.Length - FewQuestions);
        Section(page, "Undecided", reading.Unknown.Take(FewUndecided), u => page.Item(
            $"{u.Rule.Id} for {u.Subject}: {u.WouldConclude}",
            u.Missing.IsEmpty ? null : $"missing: {Grounds.Missing(u.Missing, u.Subject)}",
            u.WaitsFor.IsEmpty ? null : $"waits for {string.Join(", ", u.WaitsFor)}"));
        More(page, reading.Unknown.Length - FewUndecided);
        Section(page, "Not assessed", reading.NotAssessed, n => page.Item(
            $"{n.Subject}: {string.Join(", ", n.Findings)} ({(n.IsNotAssessable ? "could not be judged" : "not sent")}; "
            + $"required by {n.Protocol})"));
        Section(page, "Notes", reading.Notes, note => page.Item(note));
    }

    private static void WriteIdentity(Page page, Reading reading)
    {
        var pack = reading.Pack;
        page.Heading($"Pack {pack.Name} {pack.Version}, digest {Short(pack.MeaningDigest)}; engine {reading.Engine}");
        if (pack.IsDemonstration && !reading.Notice.Contains(Demonstration, StringComparison.Ordinal))
            page.Paragraph($"{Demonstration}: no clinician has approved this pack.");
        page.Paragraph(reading.Notice.ReplaceLineEndings(" "));
    }

    private static void Section<T>(Page page, string title, IEnumerable<T> items, Action<T> write)
    {
        var isFirst = true;
        foreach (var item in items)
        {
            if (isFirst) page.Heading(title);
            isFirst = false;
            write(item);
        }
    }

    private static void More(Page page, int count)
    {
        if (count > 0) page.Item($"and {count} more (--output json lists them)");
    }

    private static string? Only(ImmutableArray<string> subjects) => subjects.Length == 1 ? subjects[0] : null;

    private static string Short(string digest) => digest.Length > DigestDigits ? digest[..DigestDigits] : digest;

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
