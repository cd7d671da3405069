using Xunit;

namespace FindingRules.Tests.Vectors;

/// <summary>
/// A test that reads published vectors from the folder named by FINDINGRULES_VECTORS; visibly skipped where that is not set.
/// </summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class VectorFactAttribute : FactAttribute
{
    public VectorFactAttribute()
    {
        if (VectorFolder is null) Skip = "FINDINGRULES_VECTORS names no folder of published vectors";
    }

    public static string? VectorFolder =>
        Environment.GetEnvironmentVariable("FINDINGRULES_VECTORS") is { Length: > 0 } folder ? folder : null;
}
