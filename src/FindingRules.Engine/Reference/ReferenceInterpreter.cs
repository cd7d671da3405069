using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reference;

/// <summary>The semantics, slow and obvious, for tests: it walks every condition for every subject and keeps nothing.</summary>
public static class ReferenceInterpreter
{
    public static Outcome Decide(Pack pack, Study study) => throw new NotImplementedException();
}
