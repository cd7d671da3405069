using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs;

public class ExamplePackTests
{
    [Fact]
    public void The_example_pack_is_read_without_a_message()
    {
        var messages = new MessageBag();
        var pack = PackReader.Read(ExamplePack.Plain.Files, LoadLimits.Default, messages);
        Assert.Empty(messages.Sorted().Select(m => $"{m.Location} {m.Code} {m.Text} ({m.Label})"));
        Assert.NotNull(pack);
        Assert.Equal(16, pack.Rules.Length);
    }
}
