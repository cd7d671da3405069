using System.Diagnostics;

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
            var (sent, endpoint) = (context.Request.Method, context.GetEndpoint());
            await next(context);
            var level = context.Response.StatusCode < StatusCodes.Status400BadRequest ? LogLevel.Debug : LogLevel.Information;
            if (!log.IsEnabled(level)) return;
            var method = Methods.Contains(sent) ? sent : "other method";
            var route = (endpoint as RouteEndpoint)?.RoutePattern.RawText ?? "no route";
            var milliseconds = Math.Round(Stopwatch.GetElapsedTime(start).TotalMilliseconds, 3);
            ServiceLog.Answered(log, level, method, route, context.Response.StatusCode, milliseconds);
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
