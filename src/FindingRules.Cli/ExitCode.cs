using System.Collections.Immutable;
using FindingRules.Model.Messages;

namespace FindingRules.Cli;

/// <summary>What the shell is told.</summary>
internal static class ExitCode
{
    public const int Fine = 0;

    /// <summary>The tool could not do its work: a wrong command line, a file that is not there, a bug.</summary>
    public const int NotDone = 1;

    /// <summary>There are doubts, and the command was asked to fail on them.</summary>
    public const int Doubts = 2;

    /// <summary>The pack or a study is wrong, or a case failed.</summary>
    public const int Wrong = 3;

    /// <summary>The ledger does not verify, or a recorded reading does not come out again as it was.</summary>
    public const int NotVerified = 4;

    // FR0001 bug, FR0002 not there, FR0003 not readable, FR0007 and FR0008 file for folder and the other way round.
    private static readonly ImmutableHashSet<int> Ours = [1, 2, 3, 7, 8];

    public static int Of(IEnumerable<Message> messages)
    {
        var errors = messages.Where(m => m.Severity == Severity.Error).ToArray();
        if (errors.Length == 0) return Fine;
        return errors.Any(m => Ours.Contains(m.Number)) ? NotDone : Wrong;
    }

    /// <summary>Of several outcomes the one that matters most: what could not be done, then what is wrong.</summary>
    public static int Worse(int one, int other) =>
        one == NotDone || other == NotDone ? NotDone : Math.Max(one, other);
}
