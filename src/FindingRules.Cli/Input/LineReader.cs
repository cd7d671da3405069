using System.Buffers;

namespace FindingRules.Cli.Input;

/// <param name="Number">Counted from 1.</param>
/// <param name="IsTooLong">Only its start was kept.</param>
internal readonly record struct InputLine(byte[] Bytes, int Number, bool IsTooLong)
{
    public bool IsBlank => Bytes.AsSpan().IndexOfAnyExcept(" \t\r"u8) < 0;
}

/// <summary>Lines of bytes as they arrive. Of a line longer than <paramref name="most"/> bytes the rest is passed over.</summary>
internal sealed class LineReader(Stream stream, int most)
{
    private readonly byte[] _buffer = new byte[64 * 1024];
    private int _start;
    private int _end;
    private int _number;

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
        _start = 0;
        _end = stream.Read(_buffer);
        return _end > 0;
    }
}
