using System.Collections.Immutable;
using FindingRules.Model.Readings;

namespace FindingRules.Model.Explanations;

/// <summary>
/// What one study and one pack have to say about a reading: why it says what it says, why it does not say something
/// else, what would change it. It refers to a reading and is never part of one. Proofs and answers are listed once each;
/// lines and parts name them by rule and subject, or by topic and subject.
/// </summary>
public sealed record Explanation
{
    public required PackIdentity Pack { get; init; }

    /// <summary>Version of the engine.</summary>
    public required string Engine { get; init; }

    public required string Study { get; init; }

    /// <summary>The lines of the reading that are explained, in its order.</summary>
    public ImmutableArray<ExplainedLine> Lines { get; init; } = [];

    /// <summary>The rules that were asked about, each at a subject.</summary>
    public ImmutableArray<ProofKey> Asked { get; init; } = [];

    public ImmutableArray<WhyNot> WhyNot { get; init; } = [];

    public ImmutableArray<WhatIf> WhatIf { get; init; } = [];

    public ImmutableArray<NextQuestion> AskNext { get; init; } = [];

    /// <summary>In the order in which the lines, and then each other, need them.</summary>
    public ImmutableArray<Proof> Proofs { get; init; } = [];

    /// <summary>What became of the topics that the proofs speak of.</summary>
    public ImmutableArray<TopicAnswer> Answers { get; init; } = [];

    public required string Notice { get; init; }

    public Proof? Find(ProofKey key) => Proofs.FirstOrDefault(p => p.Key == key);

    public TopicAnswer? Find(AnswerKey key) => Answers.FirstOrDefault(a => a.Key == key);
}

/// <summary>One line of a reading and the rules behind it.</summary>
/// <param name="Sort">suggestion, next-step, caution, probability, held or conflict.</param>
/// <param name="Name">The topic, step or caution.</param>
public sealed record ExplainedLine(
    string Sort, string Name, string Text, ImmutableArray<string> Subjects, ImmutableArray<ProofKey> By);

public sealed record ProofKey(string Rule, string Subject);

public sealed record AnswerKey(string Topic, string Subject);

/// <summary>A place in a file of the pack, lines and columns counted from 1; the end is the first column after it.</summary>
public sealed record FilePlace(string Path, int Line, int Column, int EndLine, int EndColumn);

/// <summary>A place in the study as it was sent.</summary>
/// <param name="Pointer">JSON Pointer (RFC 6901).</param>
public sealed record StudyPlace(string Pointer, int Line, int Column);
