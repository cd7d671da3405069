namespace FindingRules.Benchmarks.Deciding;

/// <summary>Before anything is measured, each side is shown to fire the same rules as this engine on every study.</summary>
internal static class Agreement
{
    /// <summary>Each side writes the numbers of the rules that fire on a study into the room given, and says how many.</summary>
    public static void Assert(int studies, int rules, Func<int, int[], int> ours, Func<int, int[], int> theirs)
    {
        var (room, firing) = (new int[rules], 0);
        for (var study = 0; study < studies; study++)
        {
            var expected = Fired(ours, study);
            firing += expected.Length;
            if (!Fired(theirs, study).AsSpan().SequenceEqual(expected))
                throw new InvalidOperationException($"The two sides do not fire the same rules on study {study}.");
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
