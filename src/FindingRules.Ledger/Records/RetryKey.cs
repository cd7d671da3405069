using System.Security.Cryptography;
using System.Text;

namespace FindingRules.Ledger.Records;

/// <summary>
/// What a sender gives so that a request sent twice is recorded once: the value of its <c>Idempotency-Key</c> header, and the body of
/// the request. Keys of different actors or scopes never meet.
/// </summary>
public sealed record RetryKey(string Actor, string Key, ReadOnlyMemory<byte> Request)
{
    /// <summary>What is asked for, where one sender asks for several sorts of things with keys of its own choice.</summary>
    public string Scope { get; init; } = "";

    internal RetryMark ToMark() => new(
        SHA256.HashData(Encoding.UTF8.GetBytes($"{Actor.Length}:{Actor}{Scope.Length}:{Scope}{Key}")), SHA256.HashData(Request.Span));
}
