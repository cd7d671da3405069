using FindingRules.Language.Lexing;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using Sprache;

namespace FindingRules.Language.Grammar;

/// <summary>
/// Text to syntax, whole or not at all. The only place that sees a result of Sprache: one message for one text, at the
/// furthest place that made sense.
/// </summary>
internal static class SyntaxReader
{
    public static T? Read<T>(Parser<T> grammar, MappedText text, LoadLimits limits, MessageBag messages)
        where T : class
    {
        if (TextCheck.Check(text, limits) is { } message)
        {
            messages.Add(message);
            return null;
        }
        var expectations = new Expectations();
        try
        {
            var start = new RuleInput(text.Text, Letters.SkipGaps(text.Text, 0), expectations);
            var result = grammar(start);
            if (result.WasSuccessful) return result.Value;
        }
        catch (InsufficientExecutionStackException)
        {
            messages.Add(SyntaxMessages.TooDeep(text.Whole, limits.RuleNesting));
            return null;
        }
        messages.Add(Explain(text, expectations));
        return null;
    }

    private static Message Explain(MappedText text, Expectations expectations)
    {
        var at = Math.Max(0, expectations.Position);
        var related = expectations.Words.Contains("`)`") && FindOpenBracket(text.Text, at) is { } open
            ? text.At(new TextSpan(open, 1))
            : null;
        if (at >= text.Text.Length)
        {
            var end = text.Text.AsSpan().TrimEnd().Length;
            return SyntaxMessages.StopsHere(text.At(new TextSpan(end, 0)), expectations.Words, related);
        }
        var span = TextSpan.Between(at, EndOfFound(text.Text, at));
        return SyntaxMessages.Unexpected(text.At(span), text.Text[span.Start..span.End], expectations.Words, related);
    }

    private static int EndOfFound(string text, int at)
    {
        var end = Math.Max(Letters.EndOfWord(text, at), Letters.EndOfNumber(text, at));
        if (end > at) return end;
        var isPair = text.AsSpan(at).StartsWith("->", StringComparison.Ordinal)
            || text.AsSpan(at).StartsWith(">=", StringComparison.Ordinal)
            || text.AsSpan(at).StartsWith("<=", StringComparison.Ordinal);
        return at + (isPair ? 2 : 1);
    }

    private static int? FindOpenBracket(string text, int before)
    {
        var open = new Stack<int>();
        for (var i = 0; i < Math.Min(before, text.Length); i++)
        {
            if (text[i] == '(') open.Push(i);
            if (text[i] == ')') open.TryPop(out _);
        }
        return open.TryPeek(out var last) ? last : null;
    }
}
