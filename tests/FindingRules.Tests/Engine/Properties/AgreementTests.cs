using CsCheck;
using FindingRules.Testing.Generators;
using Xunit;

namespace FindingRules.Tests.Engine.Properties;

public sealed class AgreementTests
{
    [Fact]
    public void Network_and_reference_agree_on_random_packs_and_studies() =>
        Sample.Any.Sample(s => { BothInterpreters.Decide(s.Pack, s.Study); }, iter: 3000, print: s => s.ToString());
}
