using System.Buffers;
using System.IO.Pipelines;
using System.Runtime.CompilerServices;

namespace FindingRules.Service.Readings.Batch;

/// <summary>
/// Lines of a body as they arrive, in blocks. What has come is handed on before more is waited for, so that a client may
/// send one study and wait for its answer. Of a line longer than <paramref name="most"/> bytes nothing is kept.
/// </summary>
internal sealed class BatchReader(PipeReader body, int most)
{
    private BatchBlock _block = new();
    private int _number;
    private bool _isSkipping;

    public async IAsyncEnumerable<BatchBlock> ReadAsync([EnumeratorCancellation] CancellationToken gone)
    {
        for (var isWhole = false; !isWhole;)
        {
            var read = await body.ReadAsync(gone);
            isWhole = read.IsCompleted;
            var rest = read.Buffer;
            while (rest.PositionOf((byte)'\n') is { } end)
            {
                Take(rest.Slice(0, end));
                rest = rest.Slice(rest.GetPosition(1, end));
                if (_block.IsFull) yield return Renew();
            }
            if (isWhole && !rest.IsEmpty) Take(rest);
            else if (rest.Length > most) rest = Skip(rest);
            body.AdvanceTo(isWhole ? rest.End : rest.Start, rest.End);
            if (!_block.IsEmpty) yield return Renew();
        }
    }

    private void Take(ReadOnlySequence<byte> line)
    {
        if (_isSkipping)
        {
            _isSkipping = false;
            return;
        }
        _number++;
        if (line.Length > most) _block.AddTooLong(_number);
        else _block.Add(line, _number);
    }

    private ReadOnlySequence<byte> Skip(ReadOnlySequence<byte> start)
    {
        if (!_isSkipping) _block.AddTooLong(++_number);
        _isSkipping = true;
        return start.Slice(start.End);
    }

    private BatchBlock Renew()
    {
        var full = _block;
        _block = new BatchBlock();
        return full;
    }
}
