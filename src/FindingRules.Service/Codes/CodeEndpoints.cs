using System.Collections.Immutable;
using System.Text;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.OpenApi;
using FindingRules.Service.Problems;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FindingRules.Service.Codes;

/// <summary>The pages behind message codes; the type of every problem leads here.</summary>
internal static class CodeEndpoints
{
    private const string Markdown = "text/markdown; charset=utf-8";
    private static readonly CodesResponse All = new(
        [.. MessagePages.Codes.Select(c => new CodeLine(c, ProblemTitles.Of(c), $"/v1/codes/{c}"))]);


    public static void MapCodes(this IEndpointRouteBuilder routes)
    {
        var codes = routes.MapGroup("/v1/codes").WithTags(TagOrder.Codes);
        codes.MapGet("", List)
            .WithName("ListCodes")
            .WithSummary("Every message code with its title.");
        codes.MapGet("{code}", Find)
            .WithName("GetCode")
            .WithSummary("What a message means, an example that causes it, and how to mend it.")
            .Produces<string>(StatusCodes.Status200OK, "text/markdown").ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static Ok<CodesResponse> List() => TypedResults.Ok(All);

    private static Results<ContentHttpResult, ProblemHttpResult> Find(string code) =>
        IsCode(code) && MessagePages.Find(code) is { } page
            ? TypedResults.Content(page, Markdown, Encoding.UTF8)
            : new Problem(StatusCodes.Status404NotFound, ServiceMessages.NoSuchCode(code)).AsResult();

    private static bool IsCode(string code) => code.Length == 6 && code.All(char.IsAsciiLetterOrDigit);
}

internal sealed record CodesResponse(ImmutableArray<CodeLine> Codes);

internal sealed record CodeLine(string Code, string Title, string Url);
