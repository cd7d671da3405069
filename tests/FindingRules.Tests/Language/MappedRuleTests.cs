using System.Collections.Immutable;
using FindingRules.Language;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Language;

/// <summary>A rule is read from its value and reported where it stands in the file.</summary>
public sealed class MappedRuleTests
{
    private const string File = "rules:\n  - rule: |\n      echo anechoic and\n        thicknes above 4 mm\n      → thickened\n";

    [Fact]
    public void A_message_points_into_the_file()
    {
        var bag = new MessageBag();

        var meaning = new RuleLanguage(ExampleSymbols.Plain, LoadLimits.Default, bag).ReadRule(Block(), Reading.ScopeOf(ExampleSymbols.Plain, "each tendon"));

        Assert.Null(meaning);
        var message = Assert.Single(bag.Sorted());
        Assert.Equal("thicknes", message.Location.Words);
        Assert.Equal("rules.yaml:4:9", message.Location.ToString());
        Assert.Equal("thicknes", message.Fix!.Location.Words);
    }

    [Fact]
    public void Every_part_of_a_condition_knows_its_words()
    {
        var file = new SourceText("rules.yaml", File.Replace("thicknes ", "thickness ", StringComparison.Ordinal));
        var bag = new MessageBag();
        var text = BlockOf(file);

        var meaning = new RuleLanguage(ExampleSymbols.Plain, LoadLimits.Default, bag).ReadRule(text, Reading.ScopeOf(ExampleSymbols.Plain, "each tendon"));

        var both = Assert.IsType<AllOf>(meaning!.Condition);
        Assert.Equal(["echo anechoic", "thickness above 4 mm"], both.Parts.Select(p => p.Location.Words));
        Assert.StartsWith("echo", both.Location.Words, StringComparison.Ordinal);
        Assert.EndsWith("4 mm", both.Location.Words, StringComparison.Ordinal);
        Assert.Equal("thickened", Assert.Single(meaning.Conclusions).Location.Words);
    }

    private static MappedText Block() => BlockOf(new SourceText("rules.yaml", File));

    /// <summary>The block scalar without its indent of six.</summary>
    private static MappedText BlockOf(SourceText file)
    {
        var offsets = ImmutableArray.CreateBuilder<int>();
        var start = file.Content.IndexOf("echo", StringComparison.Ordinal);
        for (var at = start; at < file.Content.Length; at++)
        {
            var column = file.PositionOf(at).Column;
            if (column > 6 || file.Content[at] == '\n') offsets.Add(at);
        }
        var text = string.Concat(offsets.Select(o => file.Content[o]));
        offsets.Add(file.Content.Length);
        return new MappedText(file, text, offsets.ToImmutable());
    }
}
