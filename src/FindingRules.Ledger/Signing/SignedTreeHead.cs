using System.Globalization;
using System.Text.Json;
using FindingRules.Ledger.Canonical;
using FindingRules.Ledger.Merkle;
using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Signing;

/// <summary>
/// What the ledger vouches for: that at this time its first <paramref name="Size"/> records had this root. It shows nothing of records
/// after them; that records were cut off at the end is seen only against a head that covers them.
/// </summary>
/// <param name="Ledger">Drawn when the ledger was begun.</param>
/// <param name="Root">RFC 9162's root hash, in hexadecimal digits.</param>
/// <param name="Key">The id of the public key.</param>
/// <param name="Signature">Over the canonical JSON of all the rest; ECDSA on P-256 with SHA-256, DER in base64.</param>
public sealed record SignedTreeHead(Guid Ledger, long Size, string Root, DateTimeOffset Time, string Key, string Signature)
{
    /// <summary>Canonical JSON; what an auditor keeps.</summary>
    public byte[] ToJson() => Write(Signature);

    /// <summary>Whether it was signed with this key, and names it.</summary>
    public bool IsSignedBy(PublicKey key)
    {
        var signature = new byte[Signature.Length];
        return key.Id == Key && Convert.TryFromBase64String(Signature, signature, out var length)
            && key.HasSigned(Write(null), signature.AsSpan(0, length));
    }

    /// <summary>Null where the bytes are not a tree head.</summary>
    public static SignedTreeHead? Read(ReadOnlyMemory<byte> json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            var root = document.RootElement;
            var head = new SignedTreeHead(
                root.GetProperty("ledger").GetGuid(), root.GetProperty("size").GetInt64(), Text(root, "root"),
                DateTimeOffset.ParseExact(
                    Text(root, "time"), RecordHeader.TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal),
                Text(root, "key"), Text(root, "signature"));
            return head.Size >= 0 && Convert.FromHexString(head.Root).Length == TreeHash.Size ? head : null;
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or FormatException or InvalidOperationException)
        {
            return null;
        }
    }

    internal static SignedTreeHead Sign(Guid ledger, long size, byte[] root, DateTimeOffset time, SigningKey key)
    {
        var whole = DateTimeOffset.FromUnixTimeMilliseconds(time.ToUnixTimeMilliseconds());
        var head = new SignedTreeHead(ledger, size, Convert.ToHexStringLower(root), whole, key.Public.Id, "");
        return head with { Signature = Convert.ToBase64String(key.Sign(head.Write(null))) };
    }

    private byte[] Write(string? signature)
    {
        var to = new CanonicalBuffer(512);
        var separator = (byte)'{';
        Member(to, ref separator, "key", Key);
        Member(to, ref separator, "ledger", Ledger.ToString());
        Member(to, ref separator, "root", Root);
        if (signature is not null) Member(to, ref separator, "signature", signature);
        to.Member(ref separator, "size");
        to.Ascii($"{Size}");
        Member(to, ref separator, "time", Time.ToUniversalTime().ToString(RecordHeader.TimeFormat));
        to.Raw((byte)'}');
        return to.ToArray();
    }

    private static void Member(CanonicalBuffer to, ref byte separator, string name, string value)
    {
        to.Member(ref separator, name);
        to.Text(value);
    }

    private static string Text(JsonElement of, string name) =>
        of.GetProperty(name).GetString() ?? throw new FormatException($"{name} is not a text.");
}
