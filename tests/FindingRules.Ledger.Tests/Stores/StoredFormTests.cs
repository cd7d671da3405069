using System.Text.RegularExpressions;
using FindingRules.Ledger.Canonical;
using FindingRules.Ledger.Correlation;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Records;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Ledger.Tests.Stores;

/// <summary>What lies in the store for years, and so must never come out otherwise.</summary>
public sealed partial class StoredFormTests
{
    [Fact]
    public void A_header_is_canonical_and_comes_back_whatever_it_holds()
    {
        var context = TraceContext.Read([TraceContext.Begin().TraceParent], ["vendor=x"])!;
        foreach (var pack in new[] { null, new PackReference("p \"q\"\n", "1", new string('a', 64), new string('b', 64)) })
            foreach (var correlation in new[] { null, context, TraceContext.Begin() })
                foreach (var kind in Enum.GetValues<RecordKind>())
                {
                    var header = new RecordHeader
                    {
                        Id = Guid.CreateVersion7(),
                        Time = DateTimeOffset.FromUnixTimeMilliseconds(1_700_000_000_123),
                        Kind = kind,
                        Actor = "ä",
                        Commitment = new byte[32],
                        Pack = pack,
                        Engine = pack is null ? null
                            : "1",
                        Correlation = correlation,
                        About = correlation is null ? null : Guid.CreateVersion7(),
                    };
                    Assert.Equal(CanonicalJson.Write(header.ToBytes()), header.ToBytes());
                    Assert.Equal(header.ToBytes(), HeaderReader.Read(header.ToBytes()).ToBytes());
                }
    }

    [Fact]
    public void The_digest_of_a_packs_texts_is_the_one_that_readings_name()
    {
        var pack = ExamplePack.Plain.Compile();
        var reference = new PackReference(pack.Pack.Name, pack.Pack.Version, "", pack.Pack.TextDigest);
        var texts = new PackTexts(reference, [.. ExamplePack.Plain.Files.Select(f => new PackText(f.Path, f.Bytes))]);
        Assert.Equal(pack.Pack.TextDigest, texts.ComputeDigest());
    }

    /// <summary>Records are inserted and read; only bodies and what was made from them can be taken away, and only by
    /// an erasure.</summary>
    [Fact]
    public void No_statement_changes_or_removes_a_record()
    {
        var files = Repository.Files("src/FindingRules.Ledger", "*.cs")
            .Concat(Repository.Files("src/FindingRules.Ledger", "*.sql")).ToArray();
        var statements = files.SelectMany(f => Change().Matches(File.ReadAllText(f))
            .Select(m => $"{Path.GetFileNameWithoutExtension(f)}: {m.Value}")).Distinct().Order(StringComparer.Ordinal);
        Snapshot.Match(string.Join('\n', statements));
    }

    [GeneratedRegex(@"\b(?:UPDATE|DELETE FROM|DROP|TRUNCATE|ALTER TABLE|REPLACE INTO)\b(?! OR)(?: ON)? ?(?:\w+)?")]
    private static partial Regex Change();
}
