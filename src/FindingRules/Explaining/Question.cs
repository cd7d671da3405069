using System.Collections.Immutable;
using FindingRules.Model.Explanations;
using FindingRules.Model.Messages;

namespace FindingRules.Explaining;

/// <summary>What somebody asks of a study that has been, or would be, read.</summary>
/// <param name="Rule">For why and why not: the id of a rule.</param>
/// <param name="Subject">
/// As a reading names it, such as <c>right supraspinatus</c>; where it is left out, every subject that the rule is for.
/// </param>
public sealed record Question(QuestionSort Sort, string? Rule = null, string? Subject = null);

public enum QuestionSort
{
    /// <summary>Why the reading says each of its lines.</summary>
    Trace,

    /// <summary>How a rule came out, with every part of its condition.</summary>
    Why,

    /// <summary>What keeps a rule from standing, and what would have to be different.</summary>
    WhyNot,

    /// <summary>What would take back each line of the reading.</summary>
    WhatIf,

    /// <summary>What each missing finding would lead to.</summary>
    AskNext,
}

/// <summary>The explanation, or the messages that say why there is none.</summary>
public sealed record StudyExplanation(Explanation? Explanation, ImmutableArray<Message> Messages);
