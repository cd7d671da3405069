namespace FindingRules.Service.Records;

/// <summary>Who a record says that it is from.</summary>
internal static class Actors
{
    /// <summary>Whoever sends a request, where the settings say no other name: requests carry no identity.</summary>
    public const string Anonymous = "anonymous";

    /// <summary>The service by itself.</summary>
    public const string Service = "findingrules";
}
