using FindingRules.Engine.Compiling;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Evaluating;

/// <summary>A network and a study in, a reading out.</summary>
public static class Evaluator
{
    /// <summary>What became of every rule and topic.</summary>
    public static Outcome Decide(RuleNetwork network, Study study) => throw new NotImplementedException();

    /// <summary>The reading: what <see cref="Decide"/> found, put into words.</summary>
    public static Reading Evaluate(RuleNetwork network, Study study) => throw new NotImplementedException();
}
