using FindingRules.Ledger.Canonical;
using FindingRules.Ledger.Correlation;

namespace FindingRules.Ledger.Records;

/// <summary>
/// The part of a record that stays for ever: who, when, with which pack, and the commitment to the body. Its canonical
/// bytes are the leaf of the tree.
/// </summary>
internal sealed record RecordHeader
{
    /// <summary>Of the form of headers: a change of it is a new number.</summary>
    public const int Version = 1;

    public const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    public required Guid Id { get; init; }

    public required DateTimeOffset Time { get; init; }

    public required RecordKind Kind { get; init; }

    public required string Actor { get; init; }

    /// <summary>32 bytes; see <see cref="Records.Commitment"/>.</summary>
    public required byte[] Commitment { get; init; }

    public PackReference? Pack { get; init; }

    public string? Engine { get; init; }

    public TraceContext? Correlation { get; init; }

    public Guid? About { get; init; }

    // Members stand in the order of RFC 8785; a test holds the bytes against the canonical writer.
    public byte[] ToBytes()
    {
        var to = new CanonicalBuffer(640);
        var separator = (byte)'{';
        if (About is { } about) Write(to, ref separator, "about", about.ToString());
        Write(to, ref separator, "actor", Actor);
        Write(to, ref separator, "commitment", Convert.ToHexStringLower(Commitment));
        if (Engine is not null) Write(to, ref separator, "engine", Engine);
        Write(to, ref separator, "id", Id.ToString());
        Write(to, ref separator, "kind", KindWord(Kind));
        if (Pack is not null) WritePack(to, ref separator, Pack);
        Write(to, ref separator, "time", Time.ToString(TimeFormat));
        if (Correlation is not null) Write(to, ref separator, "traceparent", Correlation.TraceParent);
        if (Correlation is { State.IsEmpty: false }) Write(to, ref separator, "tracestate", Correlation.TraceStateHeader);
        to.Member(ref separator, "v");
        to.Ascii($"{Version}");
        to.Raw((byte)'}');
        return to.ToArray();
    }

    public static string KindWord(RecordKind kind) => kind switch
    {
        RecordKind.Reading => "reading",
        RecordKind.Shadow => "shadow",
        RecordKind.Feedback => "feedback",
        RecordKind.Erasure => "erasure",
        RecordKind.Withdrawal => "withdrawal",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such kind of record."),
    };

    private static void Write(CanonicalBuffer to, ref byte separator, string name, string value)
    {
        to.Member(ref separator, name);
        to.Text(value);
    }

    private static void WritePack(CanonicalBuffer to, ref byte separator, PackReference pack)
    {
        to.Member(ref separator, "pack");
        var inner = (byte)'{';
        Write(to, ref inner, "meaning", pack.MeaningDigest);
        Write(to, ref inner, "name", pack.Name);
        Write(to, ref inner, "text", pack.TextDigest);
        Write(to, ref inner, "version", pack.Version);
        to.Raw((byte)'}');
    }
}
