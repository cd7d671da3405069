using System.Text.Json;
using FindingRules.Model.Text;

namespace FindingRules.Model.Messages.Rendering;

/// <summary>
/// Messages as a program reads them: <c>{code, severity, text, file, line, column, endLine, endColumn, pointer?, label?,
/// related, fix?}</c>. Lines and columns count from 1, columns in UTF-16 code units; the end is the first place after
/// the words.
/// </summary>
public static class MessageJson
{
    public static void Write(Utf8JsonWriter to, IEnumerable<Message> messages)
    {
        to.WriteStartArray();
        foreach (var message in messages) Write(to, message);
        to.WriteEndArray();
    }

    public static void Write(Utf8JsonWriter to, Message message)
    {
        to.WriteStartObject();
        to.WriteString("code", message.Code);
        to.WriteString("severity", MessageText.Word(message.Severity));
        to.WriteString("text", Printable.WellFormed(message.Text));
        WritePlace(to, message.Location);
        if (message.Label is { } label) to.WriteString("label", Printable.WellFormed(label));
        to.WriteStartArray("related");
        foreach (var related in message.Related) WriteRelated(to, related);
        to.WriteEndArray();
        if (message.Fix is { } fix) WriteFix(to, fix);
        to.WriteEndObject();
    }

    private static void WriteRelated(Utf8JsonWriter to, RelatedPlace related)
    {
        to.WriteStartObject();
        to.WriteString("label", Printable.WellFormed(related.Label));
        WritePlace(to, related.Location);
        to.WriteEndObject();
    }

    private static void WriteFix(Utf8JsonWriter to, Fix fix)
    {
        to.WriteStartObject("fix");
        to.WriteString("title", Printable.WellFormed(fix.Title));
        to.WriteString("replacement", Printable.WellFormed(fix.Replacement));
        WritePlace(to, fix.Location);
        to.WriteEndObject();
    }

    private static void WritePlace(Utf8JsonWriter to, Location location)
    {
        var start = location.Start;
        var end = location.Source.PositionOf(location.Span.End);
        to.WriteString("file", Printable.WellFormed(location.Source.Path));
        to.WriteNumber("line", start.Line);
        to.WriteNumber("column", start.Column);
        to.WriteNumber("endLine", end.Line);
        to.WriteNumber("endColumn", end.Column);
        if (location.Pointer is { } pointer) to.WriteString("pointer", Printable.WellFormed(pointer));
    }
}
