using FindingRules.Model.Conditions;
using FindingRules.Model.Quantities;
using FindingRules.Model.Vocabularies;

namespace FindingRules.Engine.Compiling.Planes;

/// <summary>What is asked of one finding; every statement about it falls into the same cells.</summary>
/// <param name="IsOfStudy">A fact of the study, and not a finding of the rule's own subject.</param>
internal readonly record struct TestKey(
    TestSort Sort, bool IsOfStudy, int Slot, Finding Finding, ExtentRelation Relation = default, int From = 0, int To = 0)
{
    /// <summary>It is unknown unless the finding was sent of the subject itself, and no other test asks the same.</summary>
    public bool IsDirect => !IsOfStudy && Sort is TestSort.Choice or TestSort.Sign or TestSort.Measure;
}

internal enum TestSort
{
    Choice,
    Sign,
    Measure,

    /// <summary>Each statement about an extent is a test of its own: holds or not.</summary>
    Extent,

    /// <summary>Never unknown: known or not.</summary>
    Assessed,

    /// <summary>Never unknown: sent as not assessable or not.</summary>
    NotAssessable,
}

/// <summary>
/// The smallest part of a clause: a set of cells of one test. It is unknown where the value is not known, or lies on
/// both sides.
/// </summary>
internal abstract record Literal(TestKey Test);

/// <param name="Cells">A bit for each cell in which it is true.</param>
internal sealed record CellLiteral(TestKey Test, ulong Cells) : Literal(Test);

/// <param name="Region">The values for which it is true, or with <paramref name="IsNegated"/> false.</param>
internal sealed record MeasureLiteral(TestKey Test, Interval Region, bool IsNegated) : Literal(Test);
