namespace FindingRules.Service;

/// <summary>Builds and runs the HTTP service.</summary>
public static class ServiceHost
{
    public static Task<int> RunAsync(string[] arguments) => throw new NotImplementedException();
}
