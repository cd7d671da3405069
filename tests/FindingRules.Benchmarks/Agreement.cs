namespace FindingRules.Benchmarks;

/// <summary>Before anything is measured, all sides are shown to fire the same rules on every study.</summary>
internal static class Agreement
{
    /// <summary>Each side writes the numbers of the rules that fire on a study into the room given, and says how many.</summary>
    public static void Assert(int studies, int rules, params Func<int, int[], int>[] sides)
    {
        var (room, firing) = (new int[rules], 0);
        for (var study = 0; study < studies; study++)
        {
            var expected = Fired(sides[0], study);
            firing += expected.Length;
            for (var side = 1; side < sides.Length; side++)
                if (!Fired(sides[side], study).AsSpan().SequenceEqual(expected))
                    throw new InvalidOperationException($"Side {side} does not fire the same rules as the first, on study {study}.");
        }
        var share = firing / (double)(studies * rules);
        if (share is < 0.02 or > 0.1) throw new InvalidOperationException($"{share:P1} of the rules fire; about 5 % should.");

        int[] Fired(Func<int, int[], int> side, int study)
        {
            int[] fired = [.. room[..side(study, room)]];
            Array.Sort(fired);
            return fired;
        }
    }
}
