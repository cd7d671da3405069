using System.Security.Cryptography;
using System.Text;

namespace FindingRules.Ledger.Records;

/// <summary>
/// What a sender gives so that a request sent twice is recorded once: the value of its <c>Idempotency-Key</c> header, and the body of
/// the request. Keys of different actors never meet.
/// </summary>
public sealed record RetryKey(string Actor, string Key, ReadOnlyMemory<byte> Request)
{
    internal RetryMark ToMark() =>
        new(SHA256.HashData(Encoding.UTF8.GetBytes($"{Actor.Length}:{Actor}{Key}")), SHA256.HashData(Request.Span));
}
