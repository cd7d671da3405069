using System.Security.Cryptography;
using FindingRules.Ledger.Failures;

namespace FindingRules.Ledger.Signing;

/// <summary>The private key that signs tree heads: ECDSA on P-256 with SHA-256.</summary>
internal sealed class SigningKey : IDisposable
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private readonly ECDsa _key;

    private SigningKey(ECDsa key)
    {
        _key = key;
        Public = new PublicKey(key.ExportSubjectPublicKeyInfo());
    }

    public PublicKey Public { get; }

    /// <summary>Signs; the signature is a DER sequence, as common tools read it.</summary>
    public byte[] Sign(ReadOnlySpan<byte> bytes)
    {
        lock (_key) return _key.SignData(bytes, HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
    }

    /// <exception cref="LedgerException">There is no key, others may read it, or it is not a key of this kind.</exception>
    public static SigningKey Read(string path)
    {
        try
        {
            if (!File.Exists(path)) throw Fail.KeyUnusable(path, "there is no such file");
            if (!OperatingSystem.IsWindows() && File.GetUnixFileMode(path) is var mode && (mode & ~OwnerOnly) != 0)
                throw Fail.KeyExposed(path, mode);
            return Read(path, File.ReadAllText(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Fail.KeyUnusable(path, "it cannot be read", e);
        }
    }

    /// <summary>Makes a key where there is none. Of several processes that try at once, one makes it and all read it.</summary>
    public static SigningKey ReadOrMake(string path)
    {
        if (!File.Exists(path)) Make(path);
        return Read(path);
    }

    public void Dispose() => _key.Dispose();

    private static SigningKey Read(string path, string pem)
    {
        var key = ECDsa.Create();
        try
        {
            key.ImportFromPem(pem);
            // A public key is taken as well, and would fail only when a tree head is asked for.
            _ = key.SignHash(new byte[SHA256.HashSizeInBytes]);
            var curve = key.ExportParameters(false).Curve.Oid;
            if (curve.Value == "1.2.840.10045.3.1.7" || curve.FriendlyName == "nistP256") return new SigningKey(key);
            throw Fail.KeyUnusable(path, "it is on another curve");
        }
        catch (Exception e) when (e is ArgumentException or CryptographicException)
        {
            key.Dispose();
            throw Fail.KeyUnusable(path, "it holds no private key of this kind", e);
        }
    }

    private static void Make(string path)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        var draft = Path.Combine(folder, $".{Path.GetFileName(path)}.{RandomNumberGenerator.GetHexString(16, true)}");
        try
        {
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows()) options.UnixCreateMode = OwnerOnly;
            using (var file = new FileStream(draft, options))
            {
                file.Write(System.Text.Encoding.ASCII.GetBytes(key.ExportPkcs8PrivateKeyPem() + "\n"));
                file.Flush(flushToDisk: true);
            }
            File.Move(draft, path, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            File.Delete(draft);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Fail.KeyUnusable(path, "it cannot be made there", e);
        }
    }
}
