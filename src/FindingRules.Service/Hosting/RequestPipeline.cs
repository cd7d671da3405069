using System.Diagnostics;
using FindingRules.Ledger.Failures;

namespace FindingRules.Service.Hosting;

/// <summary>What is done to every request, whatever it asks for.</summary>
internal static class RequestPipeline
{
    private static readonly string[] Methods = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"];

    // The page runs its own scripts only; its style sheet is partly written into the page by its script.
    private const string PagePolicy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; "
        + "font-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /// <summary>
    /// The route as it was declared, never the path as it was sent: a client may put anything into that. What was answered as
    /// it should be is for who looks closely; a line for each request would cost more than many an answer.
    /// </summary>
    public static void UseRequestLog(this WebApplication app)
    {
        var log = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger("FindingRules.Service.Requests");
        app.Use(async (context, next) =>
        {
            var start = Stopwatch.GetTimestamp();
            // HEAD becomes another method and a fault another route on the way.
            var (sent, endpoint, isBroken) = (context.Request.Method, context.GetEndpoint(), true);
            try
            {
                await next(context);
                isBroken = false;
            }
            // What fails after the first byte is nobody's to answer any more; the framework ends the connection.
            catch (LedgerException e)
            {
                ServiceLog.LedgerFailed(log, e.Told.Code, e.Told.Text);
                throw;
            }
            catch (Exception e) when (e is not OperationCanceledException)
            {
                ServiceLog.Failed(log, context.TraceIdentifier, e.GetType().Name, e.StackTrace ?? "");
                throw;
            }
            finally
            {
                var isFine = !isBroken && context.Response.StatusCode < StatusCodes.Status400BadRequest;
                var level = isFine ? LogLevel.Debug : LogLevel.Information;
                if (log.IsEnabled(level))
                {
                    var method = Methods.Contains(sent) ? sent : "other method";
                    var route = (endpoint as RouteEndpoint)?.RoutePattern.RawText ?? "no route";
                    var milliseconds = Math.Round(Stopwatch.GetElapsedTime(start).TotalMilliseconds, 3);
                    ServiceLog.Answered(log, level, method, route, context.Response.StatusCode, milliseconds);
                }
            }
        });
    }

    public static void UseSecurityHeaders(this WebApplication app) => app.Use((context, next) =>
    {
        var headers = context.Response.Headers;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers.ContentSecurityPolicy = PagePolicy;
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        return next(context);
    });

    /// <summary>HEAD is answered like GET; the server leaves the body out by itself.</summary>
    public static void UseHead(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (HttpMethods.IsHead(context.Request.Method)) context.Request.Method = HttpMethods.Get;
        return next(context);
    });
}
