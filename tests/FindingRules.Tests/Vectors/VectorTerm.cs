using System.Collections.Immutable;
using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;

namespace FindingRules.Tests.Vectors;

/// <summary>An expression of a published case, in either notation, as far as our language has something like it.</summary>
internal abstract record VectorTerm;

internal sealed record NullTerm : VectorTerm;

internal sealed record TruthTerm(bool Value) : VectorTerm;

internal sealed record TextTerm(string Value) : VectorTerm;

internal sealed record NumberTerm(Rational Value, Unit Unit) : VectorTerm;

internal sealed record RangeTerm(VectorTerm Low, bool LowClosed, VectorTerm High, bool HighClosed) : VectorTerm;

internal sealed record ListTerm(ImmutableArray<VectorTerm> Items) : VectorTerm;

/// <summary>A named operation: not, and, or, xor, implies, between, in, or one that ranges or lists have.</summary>
internal sealed record CallTerm(string Name, ImmutableArray<VectorTerm> Parts) : VectorTerm;

/// <summary>A comparison; null for the comparator is "not equal", null on the left the value that a test is about.</summary>
internal sealed record CompareTerm(VectorTerm? Left, Comparator? Comparator, VectorTerm Right) : VectorTerm;

internal sealed record ArithmeticTerm(ArithmeticOperator Operator, VectorTerm Left, VectorTerm Right) : VectorTerm;
