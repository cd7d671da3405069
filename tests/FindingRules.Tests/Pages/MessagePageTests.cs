using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Text;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Pages;

/// <summary>What a page shows is true: its example causes its code and no other, and what it calls mended is.</summary>
public sealed class MessagePageTests
{
    // What only a review tells, because cases must run for it.
    private const int ReviewFamily = 4;
    private static readonly CompiledPack Example = ExamplePack.Plain.Compile();

    public static TheoryData<string> Codes => [.. MessagePages.Codes];

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_example_causes_the_code_and_no_other(string code)
    {
        var page = MessagePage.Of(code);
        Assert.NotEmpty(page.Example);
        foreach (var block in page.Example.Where(CanRun))
        {
            var messages = Run(page, block);
            var severity = messages.FirstOrDefault(m => m.Code == code)?.Severity;
            var told = messages.Where(m => m.Severity >= severity).ToArray();
            Assert.True(told.Length > 0 && told.All(m => m.Code == code), $"{code} shows:\n{Show(messages)}\n{block.Text}");
            Assert.All(told, m => Assert.InRange(m.Location.Span.End, 0, m.Location.Source.Content.Length));
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_mended_example_is_in_order(string code)
    {
        var page = MessagePage.Of(code);
        Assert.NotEmpty(page.Mend);
        foreach (var block in page.Mend.Where(CanRun))
        {
            var messages = Run(page, block);
            Assert.False(messages.Any(m => m.Severity == Severity.Error || m.Code == code), $"{code} mended shows:\n{Show(messages)}\n{block.Text}");
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Only_the_tool_the_ledger_the_service_and_questions_show_what_cannot_be_run(string code)
    {
        var page = MessagePage.Of(code);
        Assert.All(page.Example.Concat(page.Mend), block => Assert.True(
            CanRun(block) || (block.Language == "text" && page.Family is 0 or 6 or 7 or 8), $"{code}: {block.Language} {block.Kind}"));
    }

    private static bool CanRun(PageBlock block) =>
        block is { Language: "json", Kind: "study" } || (block.Language == "yaml" && (block.Kind == "pack" || ExamplePack.Kinds.Contains(block.Kind)));

    private static ImmutableArray<Message> Run(MessagePage page, PageBlock block)
    {
        if (block.Language == "json") return Example.Read(new SourceText("study.json", block.Text)).Messages;
        var pack = ExamplePack.Plain.With(block.Kind, block.Text);
        return page.Family == ReviewFamily ? PackReview.Of(pack.WithListedFilesOnly().Load()).Messages : pack.Load().Messages;
    }

    private static string Show(IEnumerable<Message> messages) =>
        string.Join('\n', messages.Select(m => $"{m.Location} {m.Severity} {m.Code} {m.Text} {m.Label}"));
}
