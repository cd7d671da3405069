namespace FindingRules.Engine.Evaluating;

/// <summary>How much was done for the studies of one examination so far.</summary>
internal sealed class WorkCount
{
    /// <summary>Planes that were intersected.</summary>
    public long Planes { get; set; }

    /// <summary>Conditions worked out one by one.</summary>
    public long Nodes { get; set; }

    /// <summary>Rules that were looked at one by one.</summary>
    public long Candidates { get; set; }
}
