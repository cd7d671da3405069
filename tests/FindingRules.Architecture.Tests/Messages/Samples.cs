using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using FindingRules.Model.Text;

namespace FindingRules.Architecture.Tests.Messages;

/// <summary>Arguments to call a factory of the catalogue with: some with everything there, some with as little as may be.</summary>
internal static class Samples
{
    private static readonly SourceText Source = new("rules/sample.yaml", "rules:\n  - id: XX-1\n");
    private static readonly NullabilityInfoContext Nullability = new();

    public static IEnumerable<object?[]> SetsFor(MethodInfo method)
    {
        yield return [.. method.GetParameters().Select(p => Full(p.ParameterType, p))];
        yield return [.. method.GetParameters().Select(Least)];
    }

    private static object? Least(ParameterInfo parameter)
    {
        var type = parameter.ParameterType;
        if (Nullability.Create(parameter).WriteState == NullabilityState.Nullable) return null;
        if (type == typeof(bool)) return false;
        if (type.IsEnum) return Enum.GetValues(type).GetValue(0);
        return ItemOf(type) is { } item ? Many(type, [Full(item, parameter)]) : Full(type, parameter);
    }

    private static object Full(Type type, ParameterInfo parameter)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner) return Full(inner, parameter);
        if (type == typeof(string)) return "qqq-1";
        if (type == typeof(int) || type == typeof(long)) return Convert.ChangeType(7, type, null);
        if (type == typeof(char)) return '#';
        if (type == typeof(bool)) return true;
        if (type == typeof(DateOnly)) return new DateOnly(2026, 2, 1);
        if (type == typeof(Location)) return Source.Whole;
        if (type == typeof(TextSpan)) return new TextSpan(0, 5);
        if (type == typeof(SourceText)) return Source;
        if (type == typeof(MappedText)) return MappedText.Verbatim(Source);
        if (type.IsEnum) return Enum.GetValues(type).Cast<object>().Last();
        if (ItemOf(type) is { } item) return Many(type, [Full(item, parameter), Full(item, parameter)]);
        return ModelSamples.Of(type)
            ?? throw new UnknownSampleException($"{parameter.Member.DeclaringType!.Name}.{parameter.Member.Name} takes a {type.Name}: add a sample of it");
    }

    private static Type? ItemOf(Type type) => type == typeof(string) ? null
        : type.IsArray ? type.GetElementType()
        : type.IsGenericType && typeof(IEnumerable).IsAssignableFrom(type) ? type.GetGenericArguments()[0] : null;

    private static object Many(Type type, object[] items)
    {
        var item = ItemOf(type)!;
        var array = Array.CreateInstance(item, items.Length);
        items.CopyTo(array, 0);
        return type.IsAssignableFrom(array.GetType()) ? array : type.GetGenericTypeDefinition() == typeof(ImmutableArray<>)
            ? typeof(ImmutableArray).GetMethods().Single(IsFromArray).MakeGenericMethod(item).Invoke(null, [array])!
            : throw new UnknownSampleException($"there is no sample of {type}");
    }

    private static bool IsFromArray(MethodInfo method) =>
        method.Name == "Create" && method.GetParameters() is [{ ParameterType: { IsArray: true } }];
}

internal sealed class UnknownSampleException(string message) : Exception(message);
