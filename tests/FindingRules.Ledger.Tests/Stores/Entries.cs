using System.Text;
using FindingRules.Ledger.Packs;
using FindingRules.Ledger.Records;

namespace FindingRules.Ledger.Tests.Stores;

/// <summary>Readings to append, as a service would.</summary>
internal static class Entries
{
    public static PackTexts Pack { get; } = PackOf("1.0.0");

    public static PackTexts PackOf(string version)
    {
        var texts = new PackTexts(new PackReference("example", version, new string('a', 64), ""),
            [new PackText("pack.yaml", Encoding.UTF8.GetBytes($"pack: example {version}\n...\n"))]);
        return texts with { Pack = texts.Pack with { TextDigest = texts.ComputeDigest() } };
    }

    public static ReadingEntry Reading(int number, IndexTerms? terms = null) => new()
    {
        Pack = Pack.Pack,
        Engine = "0.1.0",
        Actor = "report-editor",
        Study = Encoding.UTF8.GetBytes($$"""{ "study": "S-{{number}}", "value": {{number}}.50 }"""),
        Reading = Encoding.UTF8.GetBytes($$"""{"study":"S-{{number}}","suggestions":[]}"""),
        Terms = terms ?? new IndexTerms { Study = $"S-{number}" },
    };

    public static async Task<AppendResult.Appended> AddAsync(this RecordLedger ledger, ReadingEntry entry)
    {
        await ledger.StorePackAsync(Pack);
        return (AppendResult.Appended)await ledger.AppendAsync(entry);
    }

    public static async Task<AppendResult.Appended[]> AddAsync(this RecordLedger ledger, int first, int count)
    {
        await ledger.StorePackAsync(Pack);
        var results = await Task.WhenAll(Enumerable.Range(first, count).Select(i => ledger.AppendAsync(Reading(i))));
        return [.. results.Cast<AppendResult.Appended>()];
    }
}
