using System.Reflection;
using System.Text;

namespace FindingRules.Architecture.Tests.Code;

/// <summary>The signatures of an assembly that others may use, one line each.</summary>
internal static class PublicApi
{
    private static readonly HashSet<string> OfEveryRecord =
        ["Equals", "GetHashCode", "ToString", "Deconstruct", "PrintMembers", "<Clone>$", "op_Equality", "op_Inequality", "EqualityContract", ".ctor(original)"];

    public static string Describe(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (var type in assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            text.Append(Word(type)).Append(' ').Append(type.FullName).Append('\n');
            foreach (var line in Members(type).Order(StringComparer.Ordinal)) text.Append("    ").Append(line).Append('\n');
        }
        return text.ToString();
    }

    private static IEnumerable<string> Members(Type type)
    {
        const BindingFlags declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        if (type.IsEnum) return Enum.GetNames(type);
        var constructors = type.GetConstructors(declared).Where(c => !IsCopy(c)).Select(c => $"new({Parameters(c)})");
        var properties = type.GetProperties(declared)
            .Select(p => $"{Static(p.GetMethod!)}{Name(p.PropertyType)} {p.Name}{(p.SetMethod is null ? "" : " { init; }")}");
        var methods = type.GetMethods(declared).Where(m => !m.IsSpecialName && !OfEveryRecord.Contains(m.Name))
            .Select(m => $"{Static(m)}{Name(m.ReturnType)} {m.Name}({Parameters(m)})");
        return constructors.Concat(properties).Concat(methods);
    }

    private static bool IsCopy(ConstructorInfo constructor) =>
        constructor.GetParameters() is [var only] && only.ParameterType == constructor.DeclaringType;

    private static string Parameters(MethodBase method) => string.Join(", ", method.GetParameters()
        .Select(p => $"{Name(p.ParameterType)} {p.Name}{(p.IsOptional ? " = default" : "")}"));

    private static string Static(MethodInfo method) => method.IsStatic ? "static " : "";

    private static string Word(Type type) =>
        type.IsEnum ? "enum" : type.IsValueType ? "struct" : type.IsInterface ? "interface" : type is { IsAbstract: true, IsSealed: true } ? "static class" : "class";

    private static string Name(Type type) => !type.IsGenericType
        ? type.Name
        : $"{type.Name.Split('`')[0]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>";
}
