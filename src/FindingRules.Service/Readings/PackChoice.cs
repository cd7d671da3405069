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
        if (state.InForce.IsEmpty) return No(StatusCodes.Status503ServiceUnavailable, ServiceMessages.NoPackInForce());
        if (inAddress is not null && state.FindInForce(inAddress) is null)
            return No(StatusCodes.Status404NotFound, ServiceMessages.PackNotInForce(
                new SourceText("address", "").Whole, inAddress, state.Names));
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

    private static PackChoice No(int status, Message cause) => new(null, new Problem(status, cause));
}
