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
    private readonly List<Member> _members = [];
    private readonly List<Open> _open = [];

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
                _open.RemoveAt(_open.Count - 1);
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
        _output.Raw((byte)'"');
        _output.Raw(reader.ValueSpan);
        _output.Raw((byte)'"');
    }

    private void Begin(byte bracket, bool isObject)
    {
        BeginValue();
        _output.Raw(bracket);
        _open.Add(new Open(isObject, _members.Count, _names.Length, _output.Length));
    }

    private void BeginMember(ref Utf8JsonReader reader)
    {
        if (_members.Count > _open[^1].FirstMember) _output.Raw((byte)',');
        var (start, name) = (_output.Length, _names.Length);
        if (reader.ValueIsEscaped) _names.Raw(System.Text.Encoding.UTF8.GetBytes(reader.GetString()!));
        else _names.Raw(reader.ValueSpan);
        WriteText(ref reader);
        _output.Raw((byte)':');
        _members.Add(new Member(name, _names.Length - name, start, 0));
    }

    private void BeginValue()
    {
        if (_open.Count > 0 && !_open[^1].IsObject && _output.Length > _open[^1].Start) _output.Raw((byte)',');
    }

    private void EndValue()
    {
        if (_open.Count > 0 && _open[^1].IsObject) _members[^1] = _members[^1] with { End = _output.Length };
    }

    private void EndObject()
    {
        var open = _open[^1];
        _open.RemoveAt(_open.Count - 1);
        var members = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(_members)[open.FirstMember..];
        if (!IsSorted(members)) Sort(members, open.Start);
        _members.RemoveRange(open.FirstMember, _members.Count - open.FirstMember);
        _names.Truncate(open.Names);
        _output.Raw((byte)'}');
        EndValue();
    }

    private bool IsSorted(ReadOnlySpan<Member> members)
    {
        for (var i = 1; i < members.Length; i++)
        {
            var order = Compare(members[i - 1], members[i]);
            if (order == 0) throw new JsonException($"A member is given twice: {System.Text.Encoding.UTF8.GetString(Name(members[i]))}.");
            if (order > 0) return false;
        }
        return true;
    }

    private void Sort(Span<Member> members, int start)
    {
        members.Sort(Compare);
        IsSorted(members);
        var unsorted = _output.Written[start..].ToArray();
        _output.Truncate(start);
        foreach (var member in members)
        {
            if (_output.Length > start) _output.Raw((byte)',');
            _output.Raw(unsorted.AsSpan(member.Start - start, member.End - member.Start));
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

    private ReadOnlySpan<byte> Name(Member member) => _names.Written.Slice(member.Name, member.NameLength);

    private readonly record struct Member(int Name, int NameLength, int Start, int End);

    private readonly record struct Open(bool IsObject, int FirstMember, int Names, int Start);
}
