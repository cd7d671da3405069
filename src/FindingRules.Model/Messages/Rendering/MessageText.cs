using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Rendering;

/// <summary>Messages as a person reads them: place, code, what is wrong, the line with the words underlined, what to do.</summary>
public static class MessageText
{
    private const string Indent = "    ";

    /// <summary>The messages in their order; where there are too many, errors before doubts before notes.</summary>
    public static void Write(TextWriter to, IReadOnlyList<Message> messages, MessageStyle style)
    {
        var pages = new HashSet<string>(StringComparer.Ordinal);
        foreach (var message in FirstFew(messages, style.Most))
        {
            WriteOne(to, message, style);
            if (pages.Add(message.Code)) to.WriteLine($"{Indent}More: findingrules code {message.Code}");
        }
        if (messages.Count > style.Most) to.WriteLine($"and {messages.Count - style.Most} more");
    }

    /// <summary>Such as <c>2 errors, 1 doubt</c>; empty where there are no messages.</summary>
    public static string Count(IReadOnlyCollection<Message> messages) => string.Join(
        ", ",
        new[] { (Severity.Error, "error"), (Severity.Doubt, "doubt"), (Severity.Note, "note") }
            .Select(kind => (Number: messages.Count(m => m.Severity == kind.Item1), Word: kind.Item2))
            .Where(kind => kind.Number > 0)
            .Select(kind => $"{kind.Number} {kind.Word}{(kind.Number == 1 ? "" : "s")}"));

    public static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Doubt => "doubt",
        _ => "note",
    };

    private static IEnumerable<Message> FirstFew(IReadOnlyList<Message> messages, int most)
    {
        if (messages.Count <= most) return messages;
        var kept = messages.OrderByDescending(m => m.Severity).Take(most).ToHashSet(ReferenceEqualityComparer.Instance);
        return messages.Where(kept.Contains);
    }

    private static void WriteOne(TextWriter to, Message message, MessageStyle style)
    {
        var paint = Paint.For(message.Severity, style.HasColour);
        to.WriteLine(
            $"{PlaceOf(message.Location, style)}  {paint.Strong}{Word(message.Severity)} {message.Code}{paint.Off}  "
            + Printable.Of(message.Text));
        WriteExcerpt(to, message.Location, message.Label, Indent, paint, style);
        if (message.Location.Pointer is { Length: > 0 } pointer) to.WriteLine($"{Indent}At: {Printable.Of(pointer)}");
        foreach (var related in message.Related)
        {
            to.WriteLine($"{Indent}{PlaceOf(related.Location, style)}  {Printable.Of(related.Label)}");
            WriteExcerpt(to, related.Location, null, Indent + Indent, paint, style);
        }
        if (message.Fix is { } fix && !IsInLabel(message, fix)) to.WriteLine($"{Indent}Fix: {Printable.Of(fix.Title)}");
    }

    private static string PlaceOf(Location location, MessageStyle style)
    {
        var path = Printable.Of(style.ShowPath(location.Source.Path));
        if (location.Source.Content.Length > 0) return $"{path}:{location.Start.Line}:{location.Start.Column}";
        return location.Source.FirstLine > 1 ? $"{path}:{location.Source.FirstLine}" : path;
    }

    private static void WriteExcerpt(TextWriter to, Location location, string? label, string indent, Paint paint, MessageStyle style)
    {
        if (Excerpt.Of(location, Math.Max(40, style.Width - indent.Length)) is not { } excerpt)
        {
            if (label is not null) to.WriteLine($"{indent}{Printable.Of(label)}");
            return;
        }
        to.WriteLine($"{indent}{excerpt.Line}");
        var says = string.Join(", ", new[] { Until(excerpt), label }.Where(part => part is not null));
        to.Write($"{indent}{new string(' ', excerpt.Pad)}{paint.Faint}{new string('^', excerpt.Carets)}{paint.Off}");
        to.WriteLine(says.Length == 0 ? "" : $" {Printable.Of(says)}");
    }

    private static bool IsInLabel(Message message, Fix fix) =>
        message.Label?.Contains($"`{fix.Replacement}`", StringComparison.Ordinal) ?? false;

    private static string? Until(Excerpt excerpt) => excerpt.LastLine is { } line ? $"…to line {line}" : null;
}
