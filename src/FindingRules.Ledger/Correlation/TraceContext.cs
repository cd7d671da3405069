using System.Collections.Immutable;
using System.Security.Cryptography;

namespace FindingRules.Ledger.Correlation;

/// <summary>
/// The place of a request in a distributed trace, as W3C Trace Context carries it. Only what the standard allows is taken:
/// anything else counts as not sent.
/// </summary>
public sealed record TraceContext
{
    private TraceContext(string traceId, string parentId, byte flags, ImmutableArray<string> state)
    {
        TraceId = traceId;
        ParentId = parentId;
        Flags = flags;
        State = state;
    }

    /// <summary>32 hexadecimal digits.</summary>
    public string TraceId { get; }

    /// <summary>16 hexadecimal digits.</summary>
    public string ParentId { get; }

    public byte Flags { get; }

    /// <summary>Entries such as <c>vendor=value</c>, the most recent first.</summary>
    public ImmutableArray<string> State { get; }

    /// <summary>The header <c>traceparent</c>, in the version that this code knows.</summary>
    public string TraceParent => $"00-{TraceId}-{ParentId}-{Flags:x2}";

    /// <summary>The header <c>tracestate</c>; empty where there is none.</summary>
    public string TraceStateHeader => string.Join(',', State);

    /// <summary>A trace that begins here.</summary>
    public static TraceContext Begin() => new(RandomHex(16), RandomHex(8), 0, []);

    /// <summary>Reads the headers as they came, each as often as it came. Null where there is no trace to go on with.</summary>
    public static TraceContext? Read(IReadOnlyList<string> traceParent, IReadOnlyList<string> traceState)
    {
        if (traceParent.Count != 1 || TraceParentText.Read(traceParent[0].Trim(' ', '\t')) is not { } parent) return null;
        return new TraceContext(parent.TraceId, parent.ParentId, parent.Flags, TraceStateText.Read(traceState));
    }

    /// <summary>The same trace, one step further on.</summary>
    public TraceContext Next() => new(TraceId, RandomHex(8), Flags, State);

    public TraceContext WithoutState() => State.IsEmpty ? this : new TraceContext(TraceId, ParentId, Flags, []);

    public bool Equals(TraceContext? other) =>
        other is not null && TraceParent == other.TraceParent && TraceStateHeader == other.TraceStateHeader;

    public override int GetHashCode() => TraceParent.GetHashCode(StringComparison.Ordinal);

    // All zeros would mean that there is none; a random id is that once in 2^64.
    private static string RandomHex(int bytes)
    {
        var hex = RandomNumberGenerator.GetHexString(bytes * 2, lowercase: true);
        return hex.AsSpan().ContainsAnyExcept('0') ? hex : RandomHex(bytes);
    }
}
