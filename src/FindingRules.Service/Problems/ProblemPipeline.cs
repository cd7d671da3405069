using FindingRules.Ledger.Failures;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Service.Hosting;
using FindingRules.Service.Readings;
using Microsoft.AspNetCore.Diagnostics;

namespace FindingRules.Service.Problems;

/// <summary>Turns what the framework answers by itself, and what nobody foresaw, into problem details.</summary>
internal static class ProblemPipeline
{
    public static void UseProblems(this WebApplication app)
    {
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = AnswerFaultAsync,
            AllowStatusCode404Response = true,
            // The framework would log the fault with its text, which may quote a study.
            SuppressDiagnosticsCallback = static _ => true,
        });
        app.UseStatusCodePages(static context => AnswerStatusAsync(context.HttpContext));
    }

    private static Task AnswerFaultAsync(HttpContext context)
    {
        var fault = context.Features.Get<IExceptionHandlerFeature>()?.Error;
        if (fault is BadHttpRequestException bad) return AnswerAsync(context, bad.StatusCode, OfStatus(context, bad.StatusCode));
        var log = context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(ServiceHost));
        if (fault is LedgerException ledger)
        {
            ServiceLog.LedgerFailed(log, ledger.Told.Code, ledger.Told.Text);
            context.Response.Headers.RetryAfter = "5";
            var loss = HttpMethods.IsPost(context.Request.Method) ? LedgerLosses.Of(ledger) : LedgerLoss.NothingAsked;
            return AnswerAsync(context, StatusCodes.Status503ServiceUnavailable, RecordMessages.LedgerDoesNotWork(ledger.Told.Code, loss));
        }
        if (fault is not null) ServiceLog.Failed(log, context.TraceIdentifier, fault.GetType().Name, fault.StackTrace ?? "");
        return AnswerAsync(context, StatusCodes.Status500InternalServerError, ServiceMessages.Fault());
    }

    private static Task AnswerStatusAsync(HttpContext context)
    {
        var status = context.Response.StatusCode;
        return AnswerAsync(context, status, OfStatus(context, status));
    }

    private static Task AnswerAsync(HttpContext context, int status, Message cause)
    {
        context.Response.Headers.CacheControl = "no-store";
        var problem = new Problem(status, cause)
        {
            IsForReading = HttpMethods.IsPost(context.Request.Method) && context.Request.Path.StartsWithSegments(ReadingEndpoints.Path)
                && !context.Request.Path.Value!.EndsWith("/feedback", StringComparison.Ordinal),
            Request = status >= StatusCodes.Status500InternalServerError ? context.TraceIdentifier : null,
        };
        return problem.AsResult().ExecuteAsync(context);
    }

    private static Message OfStatus(HttpContext context, int status)
    {
        var path = $"{context.Request.PathBase}{context.Request.Path}";
        return status switch
        {
            StatusCodes.Status404NotFound => ServiceMessages.NothingHere(path),
            StatusCodes.Status405MethodNotAllowed =>
                ServiceMessages.MethodNotAnswered(context.Request.Method, path, context.Response.Headers.Allow.ToString()),
            StatusCodes.Status408RequestTimeout => ServiceMessages.NotWhole(),
            StatusCodes.Status413PayloadTooLarge => ServiceMessages.RequestTooLarge(
                context.RequestServices.GetRequiredService<ServiceSettings>().Limits.StudyBytes),
            StatusCodes.Status415UnsupportedMediaType => ServiceMessages.ContentType(context.Request.ContentType),
            >= StatusCodes.Status500InternalServerError => ServiceMessages.Fault(),
            _ => ServiceMessages.BadRequest(status),
        };
    }
}
