using System.Collections.Immutable;
using FindingRules.Model.Messages;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace FindingRules.Service.Problems;

/// <summary>An answer that is not what was asked for, as problem details (RFC 9457) with the code of a message.</summary>
/// <param name="Cause">What the status stands for.</param>
/// <param name="Details">Each mistake, where there is more to say than the cause.</param>
internal sealed record Problem(int Status, Message Cause, ImmutableArray<Message> Details)
{
    public const string ContentType = "application/problem+json";

    /// <summary>Title of every problem that stands in the place of a reading.</summary>
    public const string NoReading = "No reading";

    public Problem(int status, Message cause)
        : this(status, cause, [])
    {
    }

    /// <summary>It stands in the place of a reading, and says so: it must not look like a reading without suggestions.</summary>
    public bool IsForReading { get; init; }

    /// <summary>Names the request in the log.</summary>
    public string? Request { get; init; }

    public ProblemHttpResult AsResult() => TypedResults.Problem(AsDetails());

    private ProblemDetails AsDetails()
    {
        var details = new ProblemDetails
        {
            Type = $"/v1/codes/{Cause.Code}",
            Title = IsForReading ? NoReading : ProblemTitles.Of(Cause.Code),
            Status = Status,
            Detail = Sentences(Cause),
        };
        details.Extensions["code"] = Cause.Code;
        if (IsForReading) details.Extensions["reading"] = null;
        if (Request is not null) details.Extensions["request"] = Request;
        details.Extensions["messages"] = Details.IsEmpty ? ImmutableArray.Create(Cause) : Details;
        return details;
    }

    private static string Sentences(Message message) =>
        message.Label is null ? Sentence(message.Text) : $"{Sentence(message.Text)} {Sentence(message.Label)}";

    private static string Sentence(string text) =>
        $"{char.ToUpperInvariant(text[0])}{text[1..]}{(text.EndsWith('?') ? "" : ".")}";
}
