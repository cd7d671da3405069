using System.Text.RegularExpressions;
using FindingRules.Model.Messages;
using Xunit;

namespace FindingRules.Architecture.Tests.Messages;

public sealed partial class CatalogueTests
{
    // A class whose name has one of these in it belongs to the family; what splits a family says more around it.
    private static readonly (string Name, int Family)[] Families =
    [
        ("ToolMessages", 0), ("UsageMessages", 0), ("YamlMessages", 1), ("PackMessages", 1), ("SyntaxMessages", 2),
        ("BindingMessages", 3), ("NameMessages", 3), ("TypeMessages", 3), ("LinkMessages", 3), ("ReviewMessages", 4),
        ("CaseMessages", 4), ("StudyMessages", 5), ("LedgerMessages", 6), ("LedgerUseMessages", 6), ("LedgerAuditMessages", 6),
        ("ServiceMessages", 7),
        ("RecordMessages", 7),
        ("ExplanationMessages", 8),
    ];

    [Fact]
    public void The_catalogue_is_found() => Assert.True(Catalogue.All.Length > 30, $"{Catalogue.All.Length} factories");

    [Fact]
    public void Each_code_has_one_factory() =>
        Expect.None(Catalogue.All.GroupBy(f => f.Code).Where(g => g.Count() > 1)
            .Select(g => $"{g.Key}: {string.Join(", ", g.Select(f => f.Name))}"));

    [Fact]
    public void A_factory_has_one_code_and_severity() =>
        Expect.None(Catalogue.All.Where(f => f.Messages.Select(m => (m.Code, m.Severity)).Distinct().Count() > 1).Select(f => f.Name));

    [Fact]
    public void A_code_is_of_the_family_of_its_class() =>
        Expect.None(Catalogue.All
            .Where(f => !Families.Any(family => f.Class.Contains(family.Name, StringComparison.Ordinal) && family.Family == f.Messages[0].Number / 1000))
            .Select(f => $"{f.Name} makes {f.Code}"));

    [Fact]
    public void Every_code_has_a_page_and_every_page_a_code()
    {
        var codes = Catalogue.All.Select(f => f.Code).ToArray();
        Expect.None(codes.Except(MessagePages.Codes).Select(c => $"{c} has no page"));
        Expect.None(MessagePages.Codes.Except(codes).Select(c => $"{c} has a page and is never told"));
    }

    [Fact]
    public void Only_the_catalogue_makes_messages() =>
        Expect.None(SourceFiles.Products
            .Where(f => !f.Path.StartsWith("src/FindingRules.Model/Messages/Catalog/", StringComparison.Ordinal))
            .Where(f => MakesMessage().IsMatch(f.Text)).Select(f => f.Path));

    [Fact]
    public void Every_factory_is_called() =>
        Expect.None(Catalogue.All.Where(f => !SourceFiles.Products.Any(s => s.Text.Contains(f.Name, StringComparison.Ordinal))).Select(f => f.Name));

    [Fact]
    public void The_catalogue_holds_factories_only() =>
        Expect.None(Catalogue.Classes.SelectMany(c => c.GetMethods().Where(m => m.DeclaringType == c && m.ReturnType != typeof(Message)))
            .Select(m => $"{m.DeclaringType!.Name}.{m.Name}"));

    [GeneratedRegex(@"\bnew Message\(|\bMessage \w+ = new\(")]
    private static partial Regex MakesMessage();
}
