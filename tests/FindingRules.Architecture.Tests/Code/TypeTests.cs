using System.Reflection;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Architecture.Tests.Code;

public sealed class TypeTests
{
    [Fact]
    public void A_class_is_sealed_static_or_abstract() =>
        Expect.None(Assemblies.Products.SelectMany(Assemblies.Types).Where(t => t is { IsClass: true, IsSealed: false, IsAbstract: false }));

    [Fact]
    public void An_interface_has_two_implementations()
    {
        var types = Assemblies.Products.SelectMany(Assemblies.Types).ToArray();
        Expect.None(types.Where(t => t.IsInterface && types.Count(c => c.IsClass && t.IsAssignableFrom(c)) < 2));
    }

    [Fact]
    public void Nothing_in_a_product_can_be_changed_from_everywhere() =>
        Expect.None(Assemblies.Products.SelectMany(Assemblies.Types)
            .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(f => f is { IsInitOnly: false, IsLiteral: false } && !f.Name.StartsWith('<'))
            .Select(f => $"{f.DeclaringType}.{f.Name}"));

    [Fact]
    public void The_front_door_is_the_one_that_was_agreed() => Snapshot.Match(PublicApi.Describe(typeof(CompiledPack).Assembly));

    [Fact]
    public void Each_stage_shows_what_the_next_one_needs() =>
        Snapshot.Match(string.Join('\n', Assemblies.Products
            .Where(a => a.GetName().Name is not ("FindingRules" or "FindingRules.Model"))
            .SelectMany(a => Assemblies.Types(a).Where(t => t.IsVisible).Select(t => t.FullName!))
            .Order(StringComparer.Ordinal)));
}
