using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;

namespace FindingRules.Language.Lexing;

/// <summary>
/// Looks over the characters before the grammar does: limits, because the grammar's depth is the stack's depth, and
/// characters that no rule can hold, because the grammar would only say that it did not expect them.
/// </summary>
internal static class TextCheck
{
    private const string Marks = "+-*/<>=().;%,→≥≤";

    /// <summary>The first thing that forbids reading the text, or null.</summary>
    public static Message? Check(MappedText text, LoadLimits limits)
    {
        if (text.Text.Length > limits.RuleCharacters)
            return SyntaxMessages.TooLong(text.Whole, text.Text.Length, limits.RuleCharacters);
        var walk = new Walk(text, limits);
        for (var at = 0; at < text.Text.Length;)
        {
            if (walk.Step(ref at) is { } message) return message;
        }
        return null;
    }

    private sealed class Walk(MappedText text, LoadLimits limits)
    {
        private int _depth;
        private int _operators;

        public Message? Step(ref int at)
        {
            var content = text.Text;
            var start = at;
            if (Lookalikes.Pairing(content.AsSpan(at)) is { } pairing)
                return SyntaxMessages.OtherLanguage(text.At(new TextSpan(at, 2)), pairing.Written, pairing.Instead);
            var c = content[at];
            at = Math.Max(Letters.EndOfWord(content, at), Letters.EndOfNumber(content, at));
            if (at > start) return char.IsAsciiDigit(c) ? CheckNumber(start, ref at) : CheckWord(start, at);
            at = start + 1;
            if (!Letters.IsGap(c) && !Marks.Contains(c, StringComparison.Ordinal)) return Foreign(start);
            if (c == ')') _depth--;
            if (c == '(' && ++_depth > limits.RuleNesting)
                return SyntaxMessages.TooDeep(text.At(new TextSpan(start, 1)), limits.RuleNesting);
            return c is '+' or '-' or '*' or '/' or '<' or '>' or '=' or ';' or '≥' or '≤' ? CountOperator(start, at) : null;
        }

        private Message? CheckWord(int start, int end)
        {
            var span = TextSpan.Between(start, end);
            var word = text.Text[start..end];
            if (ReservedWords.Contains(word)) return Unit.Find(word) is null ? CountOperator(start, end) : null;
            var lower = word.ToLowerInvariant();
            return lower != word && ReservedWords.Contains(lower) ? SyntaxMessages.Capitals(text.At(span), word, lower) : null;
        }

        private Message? CheckNumber(int start, ref int end)
        {
            var content = text.Text;
            if (end + 1 < content.Length && content[end] == ',' && char.IsAsciiDigit(content[end + 1]))
            {
                var last = Letters.EndOfNumber(content, end + 1);
                var written = content[start..last];
                return SyntaxMessages.DecimalComma(text.At(TextSpan.Between(start, last)), written, written.Replace(',', '.'));
            }
            return Rational.TryRead(content.AsSpan(start, end - start), out _)
                ? null
                : SyntaxMessages.TooManyDigits(text.At(TextSpan.Between(start, end)), Rational.MostDigits);
        }

        private Message? CountOperator(int start, int end) =>
            ++_operators > limits.RuleOperators
                ? SyntaxMessages.TooManyOperators(text.At(TextSpan.Between(start, end)), limits.RuleOperators)
                : null;

        private Message Foreign(int at)
        {
            var content = text.Text;
            var isPair = char.IsHighSurrogate(content[at]) && at + 1 < content.Length && char.IsLowSurrogate(content[at + 1]);
            var point = isPair ? char.ConvertToUtf32(content[at], content[at + 1]) : content[at];
            // A half of a pair, a control or a bidirectional character must not reach a message as itself.
            var found = content[at];
            var shown = isPair || char.IsLetterOrDigit(found) || char.IsPunctuation(found) || char.IsSymbol(found) || char.IsNumber(found)
                ? content.Substring(at, isPair ? 2 : 1)
                : "";
            return SyntaxMessages.ForeignCharacter(
                text.At(new TextSpan(at, isPair ? 2 : 1)), shown, $"U+{point:X4}", Lookalikes.Instead(content[at]));
        }
    }
}
