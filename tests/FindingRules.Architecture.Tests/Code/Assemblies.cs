using System.Reflection;
using System.Runtime.CompilerServices;

namespace FindingRules.Architecture.Tests.Code;

/// <summary>The products as they were built.</summary>
internal static class Assemblies
{
    public static IReadOnlyList<Assembly> Products { get; } =
    [
        .. Directory.EnumerateDirectories(FindingRules.Testing.Repository.PathOf("src"))
            .Select(folder => Path.GetFileName(folder)!)
            .Where(name => File.Exists(FindingRules.Testing.Repository.PathOf("src", name, $"{name}.csproj")))
            .Order(StringComparer.Ordinal)
            .Select(Assembly.Load),
    ];

    /// <summary>The types that somebody wrote.</summary>
    public static IEnumerable<Type> Types(Assembly assembly) => assembly.GetTypes()
        .Where(t => !t.Name.Contains('<', StringComparison.Ordinal) && t.Name != "Program" && t.DeclaringType?.Name.Contains('<', StringComparison.Ordinal) != true)
        .Where(t => t.GetCustomAttribute<CompilerGeneratedAttribute>() is null && t.Namespace?.StartsWith("FindingRules", StringComparison.Ordinal) == true);
}
