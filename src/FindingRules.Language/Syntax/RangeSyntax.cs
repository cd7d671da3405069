using FindingRules.Model.Text;

namespace FindingRules.Language.Syntax;

/// <summary>A stretch of quantities; an end that is not written is without limit.</summary>
internal sealed record RangeSyntax(RangeEndSyntax? Low, RangeEndSyntax? High, TextSpan Span);

internal sealed record RangeEndSyntax(NumberSyntax Number, bool IsIncluded);
