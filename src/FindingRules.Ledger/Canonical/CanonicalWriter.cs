using System.Buffers;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace FindingRules.Ledger.Canonical;

/// <summary>
/// One pass over the JSON: values are written as they come, and the members of an object are put in order when it ends,
/// by moving their finished bytes. Most objects that a program sends are in some fixed order, and strings and numbers mostly
/// canonical already, so that most bytes are copied once.
/// </summary>
internal sealed class CanonicalWriter(NumberForm numbers, int length)
{
    private readonly CanonicalBuffer _output = new(length + 16);
    private readonly CanonicalBuffer _names = new(256);
    private Member[] _members = new Member[16];
    private Open[] _open = new Open[8];
    private int _memberCount;
    private int _openCount;

    public byte[] Write(ReadOnlySpan<byte> json)
    {
        try
        {
            var reader = new Utf8JsonReader(json);
            while (reader.Read()) Write(ref reader);
            return _output.ToArray();
        }
        catch (InvalidOperationException e)
        {
            throw new JsonException("A text holds half of a surrogate pair, or bytes that are not UTF-8.", e);
        }
    }

    private void Write(ref Utf8JsonReader reader)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                Begin((byte)'{', isObject: true);
                break;
            case JsonTokenType.StartArray:
                Begin((byte)'[', isObject: false);
                break;
            case JsonTokenType.EndObject:
                EndObject();
                break;
            case JsonTokenType.EndArray:
                _output.Raw((byte)']');
                _openCount--;
                EndValue();
                break;
            case JsonTokenType.PropertyName:
                BeginMember(ref reader);
                break;
            default:
                BeginValue();
                WriteSimple(ref reader);
                EndValue();
                break;
        }
    }

    private void WriteSimple(ref Utf8JsonReader reader)
    {
        if (reader.TokenType == JsonTokenType.String) WriteText(ref reader);
        else if (reader.TokenType == JsonTokenType.Number) CanonicalNumber.Write(reader.ValueSpan, numbers, _output);
        else _output.Raw(reader.ValueSpan);
    }

    private void WriteText(ref Utf8JsonReader reader)
    {
        if (reader.ValueIsEscaped)
        {
            _output.Text(reader.GetString());
            return;
        }
        // What JSON allows without an escape needs none here either.
        if (!Utf8.IsValid(reader.ValueSpan)) throw new JsonException("A text is not UTF-8.");
        _output.Quoted(reader.ValueSpan);
    }

    private void Begin(byte bracket, bool isObject)
    {
        BeginValue();
        _output.Raw(bracket);
        if (_openCount == _open.Length) Array.Resize(ref _open, _open.Length * 2);
        _open[_openCount++] = new Open(isObject, _memberCount, _names.Length, _output.Length);
    }

    private void BeginMember(ref Utf8JsonReader reader)
    {
        if (_memberCount > _open[_openCount - 1].FirstMember) _output.Raw((byte)',');
        if (_memberCount == _members.Length) Array.Resize(ref _members, _members.Length * 2);
        ref var member = ref _members[_memberCount++];
        (member.Start, member.Name) = (_output.Length, _names.Length);
        if (reader.ValueIsEscaped) _names.Raw(Encoding.UTF8.GetBytes(reader.GetString()!));
        else _names.Raw(reader.ValueSpan);
        member.NameLength = _names.Length - member.Name;
        WriteText(ref reader);
        _output.Raw((byte)':');
    }

    private void BeginValue()
    {
        if (_openCount == 0) return;
        ref var open = ref _open[_openCount - 1];
        if (!open.IsObject && _output.Length > open.Start) _output.Raw((byte)',');
    }

    private void EndValue()
    {
        if (_openCount > 0 && _open[_openCount - 1].IsObject) _members[_memberCount - 1].End = _output.Length;
    }

    private void EndObject()
    {
        ref var open = ref _open[--_openCount];
        var members = _members.AsSpan(open.FirstMember, _memberCount - open.FirstMember);
        if (!IsSorted(members)) Sort(members, open.Start);
        _memberCount = open.FirstMember;
        _names.Truncate(open.Names);
        _output.Raw((byte)'}');
        EndValue();
    }

    private bool IsSorted(ReadOnlySpan<Member> members)
    {
        for (var i = 1; i < members.Length; i++)
        {
            var order = Compare(members[i - 1], members[i]);
            if (order == 0) throw new JsonException($"A member is given twice: {Encoding.UTF8.GetString(Name(members[i]))}.");
            if (order > 0) return false;
        }
        return true;
    }

    private void Sort(Span<Member> members, int start)
    {
        // Objects have few members as a rule, and for few this is the quickest; a large one is sorted in better time.
        if (members.Length > 24) members.Sort(Compare);
        else SortFew(members);
        IsSorted(members);
        var length = _output.Length - start;
        var unsorted = ArrayPool<byte>.Shared.Rent(length);
        _output.Written[start..].CopyTo(unsorted);
        _output.Truncate(start);
        foreach (ref readonly var member in members)
        {
            if (_output.Length > start) _output.Raw((byte)',');
            _output.Raw(unsorted.AsSpan(member.Start - start, member.End - member.Start));
        }
        ArrayPool<byte>.Shared.Return(unsorted);
    }

    private void SortFew(Span<Member> members)
    {
        for (var i = 1; i < members.Length; i++)
        {
            var moved = members[i];
            var to = i;
            for (; to > 0 && Compare(members[to - 1], moved) > 0; to--) members[to] = members[to - 1];
            members[to] = moved;
        }
    }

    private int Compare(Member one, Member other)
    {
        var a = Name(one);
        var b = Name(other);
        var same = a.CommonPrefixLength(b);
        return same < a.Length && same < b.Length ? Utf16Order(a[same]) - Utf16Order(b[same]) : a.Length - b.Length;
    }

    // UTF-8 sorts as UTF-16 does, but for what lies above the surrogates (EE, EF) and needs them (F0 and more).
    private static int Utf16Order(byte lead) => lead is 0xEE or 0xEF ? lead + 0x10 : lead;

    private ReadOnlySpan<byte> Name(in Member member) => _names.Written.Slice(member.Name, member.NameLength);

    private struct Member
    {
        public int Name;
        public int NameLength;
        public int Start;
        public int End;
    }

    private readonly record struct Open(bool IsObject, int FirstMember, int Names, int Start);
}
