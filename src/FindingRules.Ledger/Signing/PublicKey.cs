using System.Security.Cryptography;

namespace FindingRules.Ledger.Signing;

/// <summary>The key that checks signatures of tree heads.</summary>
public sealed class PublicKey
{
    private readonly byte[] _info;

    /// <param name="info">SubjectPublicKeyInfo in DER.</param>
    public PublicKey(ReadOnlySpan<byte> info) => _info = info.ToArray();

    /// <summary>SHA-256 of the key in DER. A tree head names it, and so also says which key to trust.</summary>
    public string Id => Convert.ToHexStringLower(SHA256.HashData(_info));

    public ReadOnlyMemory<byte> Der => _info;

    public string Pem => PemEncoding.WriteString("PUBLIC KEY", _info);

    /// <summary>From PEM; of a private key its public part. Null where it is no key of this kind.</summary>
    public static PublicKey? Read(string pem)
    {
        try
        {
            using var key = ECDsa.Create();
            key.ImportFromPem(pem);
            return new PublicKey(key.ExportSubjectPublicKeyInfo());
        }
        catch (Exception e) when (e is ArgumentException or CryptographicException)
        {
            return null;
        }
    }

    /// <summary>False for anything that does not fit, a key that is none among it.</summary>
    public bool HasSigned(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> signature)
    {
        try
        {
            using var key = ECDsa.Create();
            key.ImportSubjectPublicKeyInfo(_info, out _);
            return key.VerifyData(bytes, signature, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
        }
        catch (CryptographicException)
        {
            return false;
        }
    }
}
