using CsCheck;
using FindingRules.Model.Packs;
using FindingRules.Model.Studies;

namespace FindingRules.Testing.Generators;

/// <summary>A random pack and a random study for it.</summary>
public sealed record Sample(Pack Pack, Study Study)
{
    public static Gen<Sample> Any { get; } = new Drawn<Sample>(draw => Make(draw, mayAskAssessed: true));

    /// <summary>Packs for which the law of monotonicity holds: <c>assessed</c> speaks of what is missing.</summary>
    public static Gen<Sample> WithoutAssessed { get; } = new Drawn<Sample>(draw => Make(draw, mayAskAssessed: false));

    public static Sample Make(Draw draw, bool mayAskAssessed)
    {
        var pack = PackDrawing.Make(draw, mayAskAssessed);
        return new Sample(pack, StudyDrawing.Make(draw, pack));
    }

    public override string ToString() => SampleText.Of(this);
}
