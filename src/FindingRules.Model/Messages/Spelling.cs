namespace FindingRules.Model.Messages;

/// <summary>One good suggestion for a misspelt name, or none: a silly one is worse than none.</summary>
public static class Spelling
{
    private const int FewEnoughToList = 6;

    /// <summary>The name that differs in capitals only, else the one within min(2, length/3) edits; ties by ordinal order.</summary>
    public static string? Closest(string found, IEnumerable<string> names)
    {
        string? best = null;
        var bestDistance = Math.Min(2, found.Length / 3) + 1;
        foreach (var name in names.Order(StringComparer.Ordinal))
        {
            if (string.Equals(name, found, StringComparison.OrdinalIgnoreCase)) return name;
            if (found.Length < 3 || name.Length < 3 || Math.Abs(name.Length - found.Length) >= bestDistance) continue;
            var distance = Distance(found, name);
            if (distance >= bestDistance) continue;
            (best, bestDistance) = (name, distance);
        }
        return best;
    }

    /// <summary>"did you mean `x`?", or the whole list where it is short, or null.</summary>
    public static string? Help(string found, IReadOnlyCollection<string> names)
    {
        if (Closest(found, names) is { } closest) return $"did you mean `{closest}`?";
        return names.Count is > 0 and <= FewEnoughToList ? $"one of {List(names)}" : null;
    }

    /// <summary>`a`, `b` or `c`.</summary>
    public static string List(IEnumerable<string> names, string lastWord = "or")
    {
        var quoted = names.Select(n => $"`{n}`").ToArray();
        return quoted.Length <= 1 ? string.Concat(quoted) : $"{string.Join(", ", quoted[..^1])} {lastWord} {quoted[^1]}";
    }

    /// <summary>Edits with transposition of neighbours (optimal string alignment).</summary>
    public static int Distance(string a, string b)
    {
        var table = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) table[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) table[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = a[i - 1] == b[j - 1] ? 0 : 1;
                var least = Math.Min(Math.Min(table[i - 1, j] + 1, table[i, j - 1] + 1), table[i - 1, j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) least = Math.Min(least, table[i - 2, j - 2] + 1);
                table[i, j] = least;
            }
        return table[a.Length, b.Length];
    }
}
