using System.Buffers;

namespace FindingRules.Service.Readings.Batch;

/// <param name="Number">Counted from 1.</param>
/// <param name="IsTooLong">Nothing of it was kept.</param>
internal readonly record struct BatchLine(int Start, int Length, int Number, bool IsTooLong);

/// <summary>Some lines of a batch that are worked on together: enough to be worth a task, few enough to be held in memory.</summary>
internal sealed class BatchBlock
{
    private const int MostLines = 64;
    private const int EnoughBytes = 64 * 1024;
    private readonly ArrayBufferWriter<byte> _bytes = new();
    private readonly List<BatchLine> _lines = [];

    public IReadOnlyList<BatchLine> Lines => _lines;

    public bool IsEmpty => _lines.Count == 0;

    public bool IsFull => _lines.Count >= MostLines || _bytes.WrittenCount >= EnoughBytes;

    public ReadOnlySpan<byte> BytesOf(BatchLine line) => _bytes.WrittenSpan.Slice(line.Start, line.Length);

    /// <summary>Blank lines are no studies.</summary>
    public void Add(ReadOnlySequence<byte> line, int number)
    {
        var start = _bytes.WrittenCount;
        foreach (var piece in line) _bytes.Write(piece.Span);
        if (_bytes.WrittenSpan[start..].IndexOfAnyExcept(" \t\r"u8) >= 0)
            _lines.Add(new BatchLine(start, _bytes.WrittenCount - start, number, IsTooLong: false));
    }

    public void AddTooLong(int number) => _lines.Add(new BatchLine(_bytes.WrittenCount, 0, number, IsTooLong: true));
}
