using FindingRules.Model.Text;

namespace FindingRules.Language.Syntax;

/// <summary>One word, number or mark as it stands in the text.</summary>
internal sealed record WordSyntax(string Text, TextSpan Span);
