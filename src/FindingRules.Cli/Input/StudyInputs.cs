using System.Text.Json;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;

namespace FindingRules.Cli.Input;

/// <summary>
/// The studies behind a word of the command line: a JSON file has one, an NDJSON file (<c>.ndjson</c>, <c>.jsonl</c>) one
/// a line. Standard input (<c>-</c>) and files of other names are looked at: where the first line is a whole JSON value,
/// or the second begins with a bracket, there is one a line.
/// </summary>
internal sealed class StudyInputs(Stream standardInput, LoadLimits limits)
{
    public const string StandardInput = "-";

    public static string NameOf(string word) => word == StandardInput ? "standard input" : word;

    public IEnumerable<StudyInput> Read(string word)
    {
        if (word == StandardInput) return Read(NameOf(word), "", () => standardInput);
        if (Directory.Exists(word)) return [Failed(word, null, ToolMessages.NotAStudyFile(word))];
        if (!File.Exists(word)) return [Failed(word, null, ToolMessages.FileNotFound(word, NearbyPath.Closest(word)))];
        return Read(word, Path.GetExtension(word), () => File.OpenRead(word));
    }

    private IEnumerable<StudyInput> Read(string name, string extension, Func<Stream> open)
    {
        using var reader = new LineReader(open, limits.StudyBytes);
        var hasAny = false;
        foreach (var study in extension.ToUpperInvariant() switch
        {
            ".JSON" => Whole([], reader, name),
            ".NDJSON" or ".JSONL" => Lines([], reader, name),
            _ => Sniff(reader, name),
        })
        {
            hasAny = true;
            yield return study;
        }
        if (reader.Failure is { } why) yield return Failed(name, null, ToolMessages.FileNotReadable(name, why));
        else if (!hasAny) yield return Failed(name, null, ToolMessages.EmptyInput(name));
    }

    private IEnumerable<StudyInput> Sniff(LineReader reader, string name)
    {
        var first = new List<InputLine>();
        while (first.Count(l => !l.IsBlank) < 2 && reader.TryRead(out var line))
        {
            first.Add(line);
            if (!line.IsBlank && IsWholeValue(line.Bytes)) return Lines(first, reader, name);
        }
        var inked = first.Where(l => !l.IsBlank).ToArray();
        return inked.Length == 2 && inked[1].Bytes.AsSpan().StartsWith("{"u8)
            ? Lines(first, reader, name)
            : Whole(first, reader, name);
    }

    private IEnumerable<StudyInput> Lines(IEnumerable<InputLine> read, LineReader reader, string name)
    {
        foreach (var line in read.Concat(Rest(reader)).Where(l => !l.IsBlank))
            yield return line.IsTooLong
                ? Failed(name, line.Number, ToolMessages.StudyTooLarge(new SourceText(name, "", line.Number).Whole, limits.StudyBytes))
                : FromBytes(name, line.Bytes, line.Number);
    }

    private IEnumerable<StudyInput> Whole(IEnumerable<InputLine> read, LineReader reader, string name)
    {
        var bytes = new List<byte>();
        var isInked = false;
        foreach (var line in read.Concat(Rest(reader)))
        {
            if (line.IsTooLong || bytes.Count + line.Bytes.Length > limits.StudyBytes)
                return [Failed(name, null, ToolMessages.StudyTooLarge(new SourceText(name, "").Whole, limits.StudyBytes))];
            isInked |= !line.IsBlank;
            bytes.AddRange(line.Bytes);
            bytes.Add((byte)'\n');
        }
        return isInked && reader.Failure is null ? [FromBytes(name, bytes.ToArray(), null)] : [];
    }

    private StudyInput FromBytes(string name, byte[] bytes, int? line)
    {
        var text = StudyText.FromBytes(name, bytes, limits, line ?? 1);
        return new StudyInput(name, line, text.Text, text.Message);
    }

    private static StudyInput Failed(string name, int? line, Message why) => new(name, line, null, why);

    private static IEnumerable<InputLine> Rest(LineReader reader)
    {
        while (reader.TryRead(out var line)) yield return line;
    }

    private static bool IsWholeValue(byte[] bytes)
    {
        var reader = new Utf8JsonReader(bytes);
        try
        {
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject) return false;
            reader.Skip();
            return !reader.Read();
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
