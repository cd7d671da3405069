using System.Collections.Immutable;
using System.Reflection;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Architecture.Tests.Messages;

/// <summary>A factory of the catalogue, and what it makes of sample arguments.</summary>
internal sealed class Catalogue(MethodInfo factory)
{
    private ImmutableArray<Message> _messages;

    public static ImmutableArray<Type> Classes { get; } =
    [
        .. typeof(ToolMessages).Assembly.GetTypes()
            .Where(t => t.Namespace == typeof(ToolMessages).Namespace && t is { IsAbstract: true, IsSealed: true })
            .OrderBy(t => t.Name, StringComparer.Ordinal),
    ];

    public static ImmutableArray<Catalogue> All { get; } =
    [
        .. Classes.SelectMany(c => c.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(m => m.ReturnType == typeof(Message))
            .Select(m => new Catalogue(m)),
    ];

    public string Class => factory.DeclaringType!.Name;

    public string Name => $"{Class}.{factory.Name}";

    public ImmutableArray<Message> Messages => _messages.IsDefault
        ? _messages = [.. Samples.SetsFor(factory).Select(set => (Message)factory.Invoke(null, set)!)]
        : _messages;

    public string Code => Messages[0].Code;

    /// <summary>Everything that a reader sees of the messages.</summary>
    public IEnumerable<string> Sentences => Messages.SelectMany(m => new[] { m.Text, m.Label, m.Fix?.Title }.OfType<string>()
        .Concat(m.Related.Select(r => r.Label)));
}
