using System.Collections.Immutable;
using FindingRules.Model.Explanations;

namespace FindingRules.Drill;

/// <summary>A question about an invented case of a pack, without its answer.</summary>
/// <param name="Id">Says which question of which pack text, and by which seed; nothing needs to be kept to judge an answer.</param>
/// <param name="Key">The same for the same question whatever the seed, for counting how it went.</param>
/// <param name="Examination">What examination it was and what is known of the study as a whole.</param>
/// <param name="Options">One of them is right.</param>
public sealed record DrillQuestion(
    string Id, string Key, DrillSort Sort, string Asks, ImmutableArray<string> Examination,
    ImmutableArray<DrillSubject> Subjects, ImmutableArray<DrillOption> Options);

public enum DrillSort
{
    /// <summary>What can be said of a subject.</summary>
    Impression,

    /// <summary>What to do now.</summary>
    NextStep,

    /// <summary>Which missing finding would settle most.</summary>
    LookNext,
}

/// <summary>A structure, a lesion of one or the study as a whole, with what was found of it.</summary>
public sealed record DrillSubject(string Title, ImmutableArray<DrillFinding> Findings);

/// <param name="Mark">The letters by which an answer names it: a, b, … z, aa, ….</param>
/// <param name="Value">In words; "not assessed" where nothing is known.</param>
public sealed record DrillFinding(string Mark, string Title, string Value);

/// <param name="Number">Counted from 1.</param>
public sealed record DrillOption(int Number, string Text);

public enum DrillVerdict
{
    Right,

    /// <summary>The right option; of what decided it, something was not named.</summary>
    ReasonIncomplete,

    /// <summary>The right option, for findings that play no part in it.</summary>
    WrongReason,

    Wrong,
}

/// <summary>What became of an answer, with the proofs behind it.</summary>
/// <param name="RestsOn">Marks of the findings that the right option rests on.</param>
/// <param name="Essential">Those of them without which it would not be right.</param>
/// <param name="Overlooked">What speaks against the option chosen, or was left out of the reason.</param>
/// <param name="Traces">Why the right option is right; then, of a wrong one, why it is not and what it would take.</param>
public sealed record DrillJudgement(
    string Id, DrillVerdict Verdict, int Choice, int Right, string RightText, ImmutableArray<string> RestsOn,
    ImmutableArray<string> Essential, ImmutableArray<DrillOverlooked> Overlooked, ImmutableArray<Explanation> Traces, string Notice);

/// <summary>A finding that was overlooked, and what is claimed of it.</summary>
/// <param name="Sort">
/// contradicts: the option chosen needs another value. missing: the option chosen needs a value, and nothing is known.
/// essential: without it the right option would not be right. no-part: it was named and plays no part. unknown: as long as
/// it is not known, nothing can be said.
/// </param>
/// <param name="Mark">Null where the case does not show it.</param>
/// <param name="To">For contradicts and missing: a value that does it, together with the others of the same sort.</param>
public sealed record DrillOverlooked(
    string Sort, string? Mark, string Subject, string Finding, string? Was, string? To, string Text);

/// <summary>A question's answer, for a sheet of answers.</summary>
public sealed record DrillAnswer(
    string Id, int Right, string RightText, ImmutableArray<string> RestsOn, ImmutableArray<string> Essential,
    ImmutableArray<string> Rules, ImmutableArray<string> Because);
