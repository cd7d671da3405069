using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace FindingRules.Drill;

/// <summary>
/// <c>d1-DIGEST-KEY-SEED-CHECK</c>: which pack text, which question, which order. The key is a hash, since the id of a case
/// often tells its answer; the check tells a slip of the pen from a question that is no more.
/// </summary>
internal sealed record QuestionId(string Digest, string Key, ulong Seed)
{
    public const ulong MostSeed = 1_000_000_000_000;
    private const int DigestDigits = 12;
    private const int KeyDigits = 12;
    private const int CheckDigits = 4;

    public static QuestionId? Read(string written)
    {
        var parts = written.Split('-');
        if (parts is not ["d1", { Length: DigestDigits } digest, { Length: KeyDigits } key, var seed, var check]) return null;
        if (!ulong.TryParse(seed, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number > MostSeed) return null;
        var id = new QuestionId(digest, key, number);
        return id.ToString() == written && check.Length == CheckDigits ? id : null;
    }

    public static string DigestOf(Model.Packs.Pack pack) => pack.TextDigest[..DigestDigits];

    public static string KeyOf(params string[] parts) => Hash(string.Join('\n', parts), KeyDigits);

    public static bool IsKey(string text) => text.Length == KeyDigits && text.All(char.IsAsciiHexDigitLower);

    public override string ToString()
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"d1-{Digest}-{Key}-{Seed}");
        return $"{text}-{Hash(text, CheckDigits)}";
    }

    private static string Hash(string text, int digits) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..digits];
}
