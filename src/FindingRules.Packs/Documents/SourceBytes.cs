using System.Text;
using System.Text.Unicode;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>Bytes in, text out; the byte-order mark is left out.</summary>
internal static class SourceBytes
{
    public static SourceText? Read(string path, ReadOnlySpan<byte> bytes, int most, MessageBag messages)
    {
        if (bytes.Length > most)
        {
            messages.Add(ToolMessages.FileTooLarge(path, bytes.Length, most));
            return null;
        }
        if (!Utf8.IsValid(bytes))
        {
            messages.Add(ToolMessages.NotUtf8(path, FirstBad(bytes)));
            return null;
        }
        var text = bytes.StartsWith("\ufeff"u8) ? bytes[3..] : bytes;
        return new SourceText(path, Encoding.UTF8.GetString(text));
    }

    private static int FirstBad(ReadOnlySpan<byte> bytes)
    {
        var at = 0;
        while (at < bytes.Length && Rune.DecodeFromUtf8(bytes[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
            at += length;
        return at;
    }
}
