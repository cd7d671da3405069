using System.Collections.Immutable;

namespace FindingRules.Service;

/// <summary>
/// What the service is started with. What is left out here is taken from the settings (<c>FindingRules:Packs</c>,
/// <c>Urls</c>, <c>FindingRules:Limits</c>; as environment variables <c>FindingRules__Packs__0</c> and so on), and then
/// from the defaults.
/// </summary>
public sealed record ServiceOptions
{
    public const string DefaultUrl = "http://127.0.0.1:8080";

    /// <summary>Each either one pack (it holds <c>pack.yaml</c>) or a folder of packs.</summary>
    public ImmutableArray<string> PackFolders { get; init; } = [];

    public ImmutableArray<string> Urls { get; init; } = [];

    public ServiceLimits? Limits { get; init; }
}
