using System.Collections.Immutable;

namespace FindingRules.Model.Explanations;

/// <summary>One finding that would have to be different.</summary>
/// <param name="Subject">Whose; <c>earlier right supraspinatus</c> in the earlier study.</param>
/// <param name="Was">What is known now; null where nothing is.</param>
/// <param name="Origin">sent, normal, not-assessable or not-sent.</param>
/// <param name="Place">Where the study says so now.</param>
/// <param name="To">A value that does it, as a study writes it; the one nearest to what was sent.</param>
/// <param name="Range">All the values that do the same, in words.</param>
public sealed record Change(
    string Subject, string SubjectTitle, string Finding, string Title, string? Was, string Origin, StudyPlace? Place, string To,
    string Range);

/// <summary>
/// Changes that together have the result; none of them can be left out. It was tried on the whole study with the
/// engine.
/// </summary>
/// <param name="Said">What the reading would then say that it does not say now.</param>
/// <param name="Gone">What it would no longer say.</param>
public sealed record Way(ImmutableArray<Change> Changes, ImmutableArray<string> Said, ImmutableArray<string> Gone);

/// <summary>How far a search for ways went.</summary>
/// <param name="IsComplete">No way with at most <paramref name="UpTo"/> changes is missing.</param>
/// <param name="UpTo">The largest number of findings changed together that was searched to the end.</param>
/// <param name="Findings">How many findings it could have changed.</param>
/// <param name="Tried">How many changed studies were evaluated.</param>
/// <param name="Because">Why it is incomplete.</param>
public sealed record Search(bool IsComplete, int UpTo, int Findings, int Tried, ImmutableArray<string> Because);

/// <summary>Why a rule does not stand at a subject, or does not get its answer through.</summary>
/// <param name="Stands">It does stand, and its topics are published: there is nothing to explain away.</param>
public sealed record WhyNot(ProofKey Key, bool Stands, Obstacle? Obstacle, ImmutableArray<Way> Ways, Search Search);

/// <summary>The first thing that stood in the way.</summary>
/// <param name="Sort">
/// false-part, unknown-part, superior, unknown-superior, held, unknown-hold, conflict, or other-answer (something
/// unknown could still give the topic another value).
/// </param>
/// <param name="Part">The part of the condition, for the first two.</param>
/// <param name="Rules">The rules that did it, with their proofs.</param>
/// <param name="Behind">Where the part tests a topic: what stood in the way of the rules that could have given it the answer.</param>
public sealed record Obstacle(
    string Sort, ProofPart? Part, AnswerKey? Topic, ImmutableArray<ProofKey> Rules, ImmutableArray<Hindrance> Behind);

/// <summary>A rule and the first thing that stood in its way.</summary>
public sealed record Hindrance(ProofKey Rule, Obstacle Obstacle);

/// <summary>What would take back one line of the reading, and how near that is.</summary>
/// <param name="Ways">
/// The smallest changes after which the line is not said any more, or says something else; of a withheld topic, after which
/// it is not withheld.
/// </param>
/// <param name="SurvivesPrecision">No rule that it rests on would be decided otherwise within the precision of measurement.</param>
public sealed record WhatIf(
    ExplainedLine Line, ImmutableArray<Way> Ways, Search Search, ImmutableArray<Margin> Margins, bool SurvivesPrecision);

/// <summary>How far a measurement is from a threshold that a line rests on.</summary>
public sealed record Margin(
    ProofKey By, string Words, string Value, string Threshold, string? Distance, string? Precision, bool IsWithinPrecision);

/// <summary>A finding that is missing, what hangs on it, and what each answer would lead to.</summary>
/// <param name="Worth">How much of what is open its answers settle, the weightiest sort first; the order is by this.</param>
public sealed record NextQuestion(
    string Subject, string SubjectTitle, string Finding, string Title, ImmutableArray<Share> Worth, ImmutableArray<Answer> Answers);

/// <param name="Sort">Such as urgent next step, definite impression.</param>
/// <param name="Settled">Sum over the open consequences of the sort: the share of answers that settle it; an exact fraction.</param>
public sealed record Share(string Sort, string Settled);

/// <summary>One answer, or a stretch of values that all lead to the same.</summary>
/// <param name="Value">A value that stands for all of them, as a study writes it.</param>
/// <param name="Range">All of them, in words.</param>
/// <param name="Said">What the reading would then say that it does not say now.</param>
/// <param name="RuledOut">What could no longer be said.</param>
public sealed record Answer(string Value, string Range, ImmutableArray<string> Said, ImmutableArray<string> RuledOut);
