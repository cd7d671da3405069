using System.Buffers;

namespace FindingRules.Output;

/// <summary>Room to write into that is borrowed and given back.</summary>
internal sealed class PooledBytes : IBufferWriter<byte>, IDisposable
{
    private const int MostReadings = 32 * 1024;
    private byte[] _room = ArrayPool<byte>.Shared.Rent(MostReadings);
    private int _written;

    public void Advance(int count) => _written += count;

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        Ensure(Math.Max(1, sizeHint));
        return _room.AsMemory(_written);
    }

    public Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    public byte[] ToArray() => _room.AsSpan(0, _written).ToArray();

    public void Dispose() => ArrayPool<byte>.Shared.Return(_room);

    private void Ensure(int count)
    {
        if (_room.Length - _written >= count) return;
        var larger = ArrayPool<byte>.Shared.Rent(Math.Max(2 * _room.Length, _written + count));
        _room.AsSpan(0, _written).CopyTo(larger);
        ArrayPool<byte>.Shared.Return(_room);
        _room = larger;
    }
}
