using System.Buffers.Binary;
using System.Numerics;

namespace FindingRules.Ledger.Indexing;

/// <summary>
/// Which of 1024 records that follow each other have a word. In the store few are a list of 16-bit numbers, and many a bit for each
/// with one byte more: an odd length tells it from a list.
/// </summary>
internal sealed class Places
{
    public const int Span = 1 << Shift;
    private const int Shift = 10;
    private const int BitmapBytes = Span / 8;
    private readonly ulong[] _bits = new ulong[Span / 64];

    public static long ChunkOf(long position) => position >> Shift;

    public static long FirstOf(long chunk) => chunk << Shift;

    public static int PlaceOf(long position) => (int)(position & (Span - 1));

    /// <exception cref="InvalidDataException">The bytes are not places.</exception>
    public static Places Read(ReadOnlySpan<byte> stored)
    {
        var places = new Places();
        if (stored.Length % 2 == 0)
        {
            for (; stored.Length > 0; stored = stored[2..]) places.Set(BinaryPrimitives.ReadUInt16BigEndian(stored), true);
            return places;
        }
        if (stored.Length != BitmapBytes + 1) throw new InvalidDataException("The bytes are not places.");
        for (var i = 0; i < places._bits.Length; i++) places._bits[i] = BinaryPrimitives.ReadUInt64BigEndian(stored[(i * 8)..]);
        return places;
    }

    /// <summary>The stored form of places that come in order.</summary>
    public static byte[] Write(List<ushort> inOrder)
    {
        if (inOrder.Count * 2 > BitmapBytes)
        {
            var places = new Places();
            foreach (var place in inOrder) places.Set(place, true);
            return places.Write();
        }
        var list = new byte[inOrder.Count * 2];
        for (var i = 0; i < inOrder.Count; i++) BinaryPrimitives.WriteUInt16BigEndian(list.AsSpan(i * 2), inOrder[i]);
        return list;
    }

    /// <summary>Empty where there are none.</summary>
    public byte[] Write()
    {
        if (_bits.Sum(BitOperations.PopCount) * 2 <= BitmapBytes) return Write([.. Descending(Span).Reverse().Select(p => (ushort)p)]);
        var bitmap = new byte[BitmapBytes + 1];
        for (var i = 0; i < _bits.Length; i++) BinaryPrimitives.WriteUInt64BigEndian(bitmap.AsSpan(i * 8), _bits[i]);
        return bitmap;
    }

    public void Set(int place, bool isThere)
    {
        if (place is < 0 or >= Span) throw new InvalidDataException("There is no such place.");
        var bit = 1UL << (place % 64);
        if (isThere) _bits[place / 64] |= bit;
        else _bits[place / 64] &= ~bit;
    }

    public void IntersectWith(Places other)
    {
        for (var i = 0; i < _bits.Length; i++) _bits[i] &= other._bits[i];
    }

    /// <summary>Places below a bound, the highest first.</summary>
    public IEnumerable<int> Descending(int before)
    {
        for (var i = _bits.Length - 1; i >= 0; i--)
            for (var rest = _bits[i]; rest != 0;)
            {
                var top = 63 - BitOperations.LeadingZeroCount(rest);
                rest &= ~(1UL << top);
                if ((i * 64) + top < before) yield return (i * 64) + top;
            }
    }
}

/// <summary>A row of the index: a word, and which 1024 records.</summary>
internal readonly record struct PostingKey(long Word, long Chunk) : IComparable<PostingKey>
{
    public static PostingKey Of(Occurrence of) => new(of.Word, Places.ChunkOf(of.Position));

    public int CompareTo(PostingKey other) => Word != other.Word ? Word.CompareTo(other.Word) : Chunk.CompareTo(other.Chunk);
}
