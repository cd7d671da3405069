using System.Collections.Immutable;

namespace FindingRules.Language.Syntax;

/// <summary><c>study</c> (no words), or the words behind <c>each</c>.</summary>
internal sealed record ScopeSyntax(ImmutableArray<WordSyntax> Words);
