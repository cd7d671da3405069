using System.Buffers;
using System.Text;

namespace FindingRules.Ledger.Canonical;

/// <summary>Bytes of canonical JSON as they grow. Texts get only the escapes that RFC 8785 (section 3.2.2.2) prescribes.</summary>
internal sealed class CanonicalBuffer
{
    private static readonly SearchValues<char> Escaped =
        SearchValues.Create([.. Enumerable.Range(0, 0x20).Select(c => (char)c), '"', '\\']);

    private byte[] _bytes;

    public CanonicalBuffer(int capacity = 1024) => _bytes = new byte[Math.Max(capacity, 16)];

    public int Length { get; private set; }

    public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, Length);

    public void Truncate(int length) => Length = length;

    public void Raw(ReadOnlySpan<byte> bytes)
    {
        bytes.CopyTo(Room(bytes.Length));
        Length += bytes.Length;
    }

    /// <summary>Bytes that need no escape, between quotes.</summary>
    public void Quoted(ReadOnlySpan<byte> bytes)
    {
        var room = Room(bytes.Length + 2);
        room[0] = (byte)'"';
        bytes.CopyTo(room[1..]);
        room[bytes.Length + 1] = (byte)'"';
        Length += bytes.Length + 2;
    }

    public void Raw(byte one)
    {
        Room(1)[0] = one;
        Length++;
    }

    public void Ascii(string text) => Utf8(text);

    public void Text(ReadOnlySpan<char> text)
    {
        if (!text.ContainsAny(Escaped))
        {
            var room = Room(Encoding.UTF8.GetMaxByteCount(text.Length) + 2);
            room[0] = (byte)'"';
            var written = Encoding.UTF8.GetBytes(text, room[1..]);
            room[written + 1] = (byte)'"';
            Length += written + 2;
            return;
        }
        Raw((byte)'"');
        while (text.IndexOfAny(Escaped) is var next and >= 0)
        {
            Utf8(text[..next]);
            Ascii(Escape(text[next]));
            text = text[(next + 1)..];
        }
        Utf8(text);
        Raw((byte)'"');
    }

    /// <summary>A member of an object whose members the caller writes in order.</summary>
    public void Member(ref byte separator, string name)
    {
        Raw(separator);
        Text(name);
        Raw((byte)':');
        separator = (byte)',';
    }

    public void Texts(params ReadOnlySpan<string> texts)
    {
        Raw((byte)'[');
        var isFirst = true;
        foreach (var text in texts)
        {
            if (!isFirst) Raw((byte)',');
            Text(text);
            isFirst = false;
        }
        Raw((byte)']');
    }

    public byte[] ToArray() => Written.ToArray();

    private void Utf8(ReadOnlySpan<char> text) =>
        Length += Encoding.UTF8.GetBytes(text, Room(Encoding.UTF8.GetMaxByteCount(text.Length)));

    private Span<byte> Room(int more)
    {
        if (_bytes.Length - Length < more) Array.Resize(ref _bytes, Math.Max(_bytes.Length * 2, Length + more));
        return _bytes.AsSpan(Length);
    }

    private static string Escape(char c) => c switch
    {
        '"' => "\\\"",
        '\\' => @"\\",
        '\b' => "\\b",
        '\f' => "\\f",
        '\n' => "\\n",
        '\r' => "\\r",
        '\t' => "\\t",
        _ => $"\\u{(int)c:x4}",
    };
}
