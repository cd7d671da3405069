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

    /// <summary>In the working directory.</summary>
    public const string DefaultLedger = "findingrules-ledger.db";

    public const string NoLedger = "none";

    /// <summary>Each either one pack (it holds <c>pack.yaml</c>) or a folder of packs.</summary>
    public ImmutableArray<string> PackFolders { get; init; } = [];

    public ImmutableArray<string> Urls { get; init; } = [];

    public ServiceLimits? Limits { get; init; }

    /// <summary>
    /// The path of a file, <c>postgresql:</c> and a connection string, or <see cref="NoLedger"/>; <c>FindingRules:Ledger</c>.
    /// </summary>
    public string? Ledger { get; init; }

    /// <summary>The file of the key that signs tree heads; a ledger on a server needs one. <c>FindingRules:LedgerKey</c>.</summary>
    public string? LedgerKey { get; init; }

    /// <summary>After how many days bodies of records are erased; never where it is not said. <c>FindingRules:RetentionDays</c>.</summary>
    public int? RetentionDays { get; init; }
}
