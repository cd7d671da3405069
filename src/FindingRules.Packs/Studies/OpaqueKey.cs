namespace FindingRules.Packs.Studies;

/// <summary>A key that a sender makes up: of a study, of a lesion.</summary>
internal static class OpaqueKey
{
    private const int Most = 64;

    public static bool Fits(string text)
    {
        if (text.Length is 0 or > Most) return false;
        foreach (var c in text)
            if (!char.IsAsciiLetterOrDigit(c) && c is not ('.' or '_' or '-'))
                return false;
        return true;
    }
}
