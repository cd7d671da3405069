using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Text;
using FindingRules.Service.Packs;
using FindingRules.Service.Problems;

namespace FindingRules.Service.Readings;

/// <summary>Which pack reads a study: the one that the study or the address names, else the only one in force.</summary>
internal sealed record PackChoice(TakenPack? Pack, Problem? Problem)
{
    public static PackChoice Of(ShelfState state, StudyPeek study, string? inAddress)
    {
        if (Refusal(state, inAddress) is { } problem) return new PackChoice(null, problem);
        if (study is { Pack: { } name, PackAt: { } at })
        {
            var named = state.InForce.FirstOrDefault(p => p.Pack.Name == name);
            if (named is null)
                return No(StatusCodes.Status422UnprocessableEntity, ServiceMessages.PackNotInForce(at, name, state.Names));
            if (inAddress is null || state.FindInForce(inAddress) == named) return new PackChoice(named, null);
            return No(StatusCodes.Status422UnprocessableEntity, ServiceMessages.TwoPacksSaid(at, name, inAddress));
        }
        if (inAddress is not null) return new PackChoice(state.FindInForce(inAddress), null);
        return state.InForce is [var only]
            ? new PackChoice(only, null)
            : No(StatusCodes.Status422UnprocessableEntity, ServiceMessages.PackNotSaid(state.Names));
    }

    /// <summary>Why no study can be read, whatever it says; null where one can.</summary>
    public static Problem? Refusal(ShelfState state, string? inAddress)
    {
        if (state.InForce.IsEmpty) return new Problem(StatusCodes.Status503ServiceUnavailable, ServiceMessages.NoPackInForce());
        return inAddress is null || state.FindInForce(inAddress) is not null
            ? null
            : new Problem(StatusCodes.Status404NotFound, ServiceMessages.PackNotInForce(
                new SourceText("address", "").Whole, inAddress, state.Names));
    }

    private static PackChoice No(int status, Message cause) => new(null, new Problem(status, cause));
}
