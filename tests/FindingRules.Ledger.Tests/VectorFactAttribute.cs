using Xunit;

namespace FindingRules.Ledger.Tests;

/// <summary>A test against published vectors: skipped, visibly, where <c>FINDINGRULES_VECTORS</c> does not name their folder.</summary>
internal sealed class VectorFactAttribute : FactAttribute
{
    public VectorFactAttribute()
    {
        if (Folder is null) Skip = "FINDINGRULES_VECTORS does not name the folder of published vectors.";
    }

    public static string? Folder { get; } = Environment.GetEnvironmentVariable("FINDINGRULES_VECTORS");
}
