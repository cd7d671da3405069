using FindingRules.Explaining;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;

namespace FindingRules.Service.Explanations;

/// <summary>The question as the address asks it, or why it is none.</summary>
internal sealed record QuestionQuery(Question? Question, Message? Message)
{
    private static readonly string[] Names = ["question", "rule", "subject", "pack"];

    private static readonly (string Word, QuestionSort Sort)[] Sorts =
    [
        ("trace", QuestionSort.Trace), ("why", QuestionSort.Why), ("why-not", QuestionSort.WhyNot), ("what-if", QuestionSort.WhatIf),
        ("ask-next", QuestionSort.AskNext),
    ];

    public static QuestionQuery Read(IQueryCollection query)
    {
        if (query.Keys.FirstOrDefault(k => !Names.Contains(k)) is { } unknown)
            return new QuestionQuery(null, ServiceMessages.UnknownParameter(unknown, Names));
        var (word, rule) = (One(query, "question"), One(query, "rule"));
        // A rule without a word for the question: how it came out.
        word ??= rule is null ? "trace" : "why";
        if (Sorts.All(s => s.Word != word))
            return new QuestionQuery(null, ExplanationMessages.UnknownQuestion(At(word), word, [.. Sorts.Select(s => s.Word)]));
        var sort = Sorts.First(s => s.Word == word).Sort;
        return new QuestionQuery(new Question(sort, rule, One(query, "subject")), null);
    }

    private static string? One(IQueryCollection query, string name) => query.TryGetValue(name, out var values) ? values.ToString() : null;

    private static Location At(string word) => new SourceText("address", word).Whole;
}
