using System.Text;
using System.Text.Unicode;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;

namespace FindingRules;

/// <summary>The bytes of a study as a text, or the message that says why they are none.</summary>
public sealed record StudyText(SourceText? Text, Message? Message)
{
    private static ReadOnlySpan<byte> ByteOrderMark => [0xEF, 0xBB, 0xBF];

    /// <param name="path">The name that messages show.</param>
    /// <param name="bytes">A whole document, or one line of a text with a study a line.</param>
    /// <param name="line">The number of that line.</param>
    public static StudyText FromBytes(string path, ReadOnlySpan<byte> bytes, LoadLimits? limits = null, int line = 1)
    {
        var most = (limits ?? LoadLimits.Default).StudyBytes;
        if (bytes.Length > most) return new StudyText(null, ToolMessages.StudyTooLarge(new SourceText(path, "", line).Whole, most));
        if (bytes.StartsWith(ByteOrderMark)) bytes = bytes[ByteOrderMark.Length..];
        return FirstWrongByte(bytes) is { } offset
            ? new StudyText(null, ToolMessages.NotUtf8(path, offset, line))
            : new StudyText(SourceText.FromUtf8(path, bytes, line), null);
    }

    private static int? FirstWrongByte(ReadOnlySpan<byte> bytes)
    {
        if (Utf8.IsValid(bytes)) return null;
        var at = 0;
        while (Rune.DecodeFromUtf8(bytes[at..], out _, out var length) == System.Buffers.OperationStatus.Done) at += length;
        return at;
    }
}
