using System.Collections.Immutable;
using System.Text.RegularExpressions;
using FindingRules.Model.Messages;

namespace FindingRules.Tests.Pages;

/// <summary>The page of a code, taken apart into what can be run.</summary>
/// <param name="Example">Blocks that cause the code.</param>
/// <param name="Mend">The same, mended.</param>
internal sealed partial record MessagePage(string Code, ImmutableArray<PageBlock> Example, ImmutableArray<PageBlock> Mend)
{
    public int Family => Code[2] - '0';

    public static MessagePage Of(string code)
    {
        var sections = Heading().Split(MessagePages.Find(code)!.ReplaceLineEndings("\n"));
        var named = sections.Skip(1).Chunk(2).ToDictionary(part => part[0], part => part[1], StringComparer.Ordinal);
        return new MessagePage(code, Blocks(named["Example"]), Blocks(named["Mend"]));
    }

    private static ImmutableArray<PageBlock> Blocks(string section) =>
        [.. Fence().Matches(section).Select(m => new PageBlock(m.Groups[1].Value, m.Groups[2].Value, m.Groups[3].Value))];

    [GeneratedRegex(@"^## (Example|Mend|Why)\n", RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex(@"^```([a-z]+) ?([a-z-]*)\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();
}

/// <param name="Language">yaml, json or text.</param>
/// <param name="Kind">Which file of the example pack a yaml block takes the place of; study for json.</param>
internal sealed record PageBlock(string Language, string Kind, string Text);
