using System.Buffers;

namespace FindingRules.Cli.Input;

/// <param name="Number">Counted from 1.</param>
/// <param name="IsTooLong">Only its start was kept.</param>
internal readonly record struct InputLine(byte[] Bytes, int Number, bool IsTooLong)
{
    public bool IsBlank => Bytes.AsSpan().IndexOfAnyExcept(" \t\r"u8) < 0;
}

/// <summary>
/// Lines of bytes as they arrive. Of a line longer than <paramref name="most"/> bytes the rest is passed over. Where the
/// system does not give the bytes the lines end, and <see cref="Failure"/> says why.
/// </summary>
internal sealed class LineReader(Func<Stream> open, int most) : IDisposable
{
    private readonly byte[] _buffer = new byte[64 * 1024];
    private int _start;
    private int _end;
    private int _number;
    private Stream? _stream;

    public string? Failure { get; private set; }

    public bool TryRead(out InputLine line)
    {
        var bytes = new ArrayBufferWriter<byte>();
        var isTooLong = false;
        var hasAny = false;
        while (true)
        {
            if (_start == _end && !Fill())
            {
                line = new InputLine(bytes.WrittenSpan.ToArray(), ++_number, isTooLong);
                return hasAny;
            }
            hasAny = true;
            var available = _buffer.AsSpan(_start, _end - _start);
            var newline = available.IndexOf((byte)'\n');
            var piece = newline < 0 ? available : available[..newline];
            isTooLong |= bytes.WrittenCount + piece.Length > most;
            bytes.Write(piece[..Math.Min(piece.Length, most - bytes.WrittenCount)]);
            _start += newline < 0 ? piece.Length : newline + 1;
            if (newline < 0) continue;
            line = new InputLine(bytes.WrittenSpan.ToArray(), ++_number, isTooLong);
            return true;
        }
    }

    private bool Fill()
    {
        (_start, _end) = (0, 0);
        try
        {
            _stream ??= open();
            _end = _stream.Read(_buffer);
        }
        catch (Exception failure) when (Unreadable.Is(failure))
        {
            Failure = Unreadable.Because(failure);
        }
        return _end > 0;
    }

    public void Dispose() => _stream?.Dispose();
}
