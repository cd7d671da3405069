using System.Text;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Schemas;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FindingRules.Service.Packs;

internal static class PackEndpoints
{
    private const string Yaml = "application/yaml; charset=utf-8";
    private const string Schema = "application/schema+json; charset=utf-8";

    public static void MapPacks(this IEndpointRouteBuilder routes)
    {
        var packs = routes.MapGroup("/v1/packs").WithTags(TagOrder.Packs);
        packs.MapGet("", List)
            .WithName("ListPacks")
            .WithSummary("What is in force, what was in force before, and which folders were refused and why.")
            .Produces<PacksResponse>();
        packs.MapGet("{pack}", Find)
            .WithName("GetPack")
            .WithSummary("One pack: what it is, its files and its rules.")
            .WithDescription("By name, or by text digest; under its digest the answer never changes.")
            .Produces<PackResponse>().ProducesProblem(StatusCodes.Status404NotFound);
        packs.MapGet("{pack}/files/{**path}", FindFile)
            .WithName("GetPackFile")
            .WithSummary("A file of the pack, byte for byte as it was when the pack was taken.")
            .Produces<string>(StatusCodes.Status200OK, "application/yaml").ProducesProblem(StatusCodes.Status404NotFound);
        packs.MapGet("{pack}/rules/{id}", FindRule)
            .WithName("GetPackRule")
            .WithSummary("One rule: its words, why it is so, its sources, its revision and where it stands.")
            .Produces<RuleResponse>().ProducesProblem(StatusCodes.Status404NotFound);
        packs.MapGet("{pack}/study-schema", FindStudySchema)
            .WithName("GetStudySchema")
            .WithSummary("The JSON Schema (2020-12) of a study for the vocabulary of this pack.")
            .Produces<object>(StatusCodes.Status200OK, "application/schema+json").ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static JsonHttpResult<PacksResponse> List(HttpContext context, PackShelf shelf)
    {
        context.Response.Headers.CacheControl = "no-store";
        return TypedResults.Json(shelf.State.AsResponse(), ServiceJson.Options);
    }

    private static IResult Find(PackShelf shelf, string pack) =>
        shelf.State.Find(pack) is { } kept ? LastingResult.Json(kept.AsResponse(), IsDigest(kept, pack)) : NoSuchPack(pack);

    private static IResult FindFile(PackShelf shelf, string pack, string path = "")
    {
        if (shelf.State.Find(pack) is not { } kept) return NoSuchPack(pack);
        var file = kept.Files.FirstOrDefault(f => f.Path == path);
        return file is null
            ? NotFound(ServiceMessages.NoSuchFile(path, [.. kept.Files.Select(f => f.Path)]))
            : new LastingResult(file.Bytes.ToArray(), Yaml, IsDigest(kept, pack));
    }

    private static IResult FindRule(PackShelf shelf, string pack, string id)
    {
        if (shelf.State.Find(pack) is not { } kept) return NoSuchPack(pack);
        var rule = kept.Pack.Rules.FirstOrDefault(r => r.Id == id);
        return rule is null
            ? NotFound(ServiceMessages.NoSuchRule(id, [.. kept.Pack.Rules.Select(r => r.Id)]))
            : LastingResult.Json(rule.AsResponse(kept.Pack), IsDigest(kept, pack));
    }

    private static IResult FindStudySchema(PackShelf shelf, string pack) =>
        shelf.State.Find(pack) is { } kept
            ? new LastingResult(Encoding.UTF8.GetBytes(StudySchema.Write(kept.Pack)), Schema, IsDigest(kept, pack))
            : NoSuchPack(pack);

    private static bool IsDigest(KeptPack kept, string said) => kept.Pack.TextDigest == said;

    private static ProblemHttpResult NoSuchPack(string pack) => NotFound(ServiceMessages.NoSuchPack(pack));

    private static ProblemHttpResult NotFound(Message message) =>
        new Problem(StatusCodes.Status404NotFound, message).AsResult();
}
