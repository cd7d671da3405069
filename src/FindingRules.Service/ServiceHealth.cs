namespace FindingRules.Service;

/// <summary>Asks a running service whether it is well, for health checks of containers that hold no other program.</summary>
public static class ServiceHealth
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(3);

    /// <summary>0 where the service at <paramref name="url"/> is alive and has a pack in force, otherwise 1 and why.</summary>
    public static async Task<int> CheckAsync(string url, TextWriter output, CancellationToken cancellation = default)
    {
        if (!Uri.TryCreate(url, UriKind.Absolute, out var service) || service.Scheme is not ("http" or "https"))
            return await NoAnswerAsync(url, output);
        using var client = new HttpClient(new SocketsHttpHandler { UseProxy = false }) { Timeout = Longest };
        try
        {
            using var answer = await client.GetAsync(new Uri(service, "/readyz"), cancellation);
            await output.WriteLineAsync(await answer.Content.ReadAsStringAsync(cancellation));
            return answer.IsSuccessStatusCode ? 0 : 1;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            return await NoAnswerAsync(url, output);
        }
    }

    private static async Task<int> NoAnswerAsync(string url, TextWriter output)
    {
        await output.WriteLineAsync($"no answer from {url}");
        return 1;
    }
}
