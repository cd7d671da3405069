using System.Security.Cryptography;
using FindingRules.Ledger.Merkle;

namespace FindingRules.Ledger.Records;

/// <summary>A record with everything hashed, ready to be given its place in the tree.</summary>
internal sealed record NewRecord(RecordHeader Header, byte[] HeaderBytes, byte[] Leaf, StoredBody Body, RetryMark? Retry)
{
    /// <param name="head">All but id, time and commitment, which are given here.</param>
    public static NewRecord Of(RecordHead head, byte[] content, byte[] answer, IndexTerms terms, DateTimeOffset now, RetryMark? retry)
    {
        var body = new StoredBody(RandomNumberGenerator.GetBytes(Commitment.SaltSize), content, answer, TermsJson.Write(terms));
        var time = DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds());
        var header = new RecordHeader
        {
            Id = Guid.CreateVersion7(time),
            Time = time,
            Kind = head.Kind,
            Actor = head.Actor,
            Commitment = Commitment.Of(body),
            Pack = head.Pack,
            Engine = head.Engine,
            // What other programs write into the state of a trace is free text, and nothing takes text out of a header again.
            Correlation = head.Correlation?.WithoutState(),
            About = head.About,
        };
        var bytes = header.ToBytes();
        return new NewRecord(header, bytes, TreeHash.Leaf(bytes), body, retry);
    }
}

/// <summary>What the sender of a record says of it.</summary>
internal sealed record RecordHead(
    RecordKind Kind, string Actor, PackReference? Pack = null, string? Engine = null,
    Correlation.TraceContext? Correlation = null, Guid? About = null);

/// <summary>Lets a repeated request find the record that the first one made.</summary>
/// <param name="Key">SHA-256 of the actor and the key that was sent.</param>
/// <param name="Request">SHA-256 of the request's body.</param>
internal sealed record RetryMark(byte[] Key, byte[] Request);
