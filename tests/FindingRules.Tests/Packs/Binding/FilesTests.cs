using System.Text;
using FindingRules.Model.Messages;
using FindingRules.Model.Packs;
using FindingRules.Packs;
using FindingRules.Testing;
using Xunit;

namespace FindingRules.Tests.Packs.Binding;

public class FilesTests
{
    [Fact]
    public void A_folder_without_a_manifest_is_told_so()
    {
        var message = Assert.Single(Reads.Pack([.. ExamplePack.Plain.Files.Where(f => f.Path != "pack.yaml")]).Messages);
        Assert.Equal(("FR0002", "there is no file or folder `pack.yaml`"), (message.Code, message.Text));
    }

    [Fact]
    public void Bytes_that_are_no_text_are_told_with_their_offset()
    {
        var files = ExamplePack.Plain.Files.Select(f => f.Path == "cautions.yaml" ? f with { Bytes = Encoding.Latin1.GetBytes("cautions: é\n...\n") } : f);
        var message = Assert.Single(Reads.Pack([.. files]).Messages);
        Assert.Equal(("FR0005", "`cautions.yaml` is not UTF-8 text: byte 10 does not fit"), (message.Code, message.Text));
    }

    [Fact]
    public void A_file_that_is_too_large_is_not_read()
    {
        var messages = new MessageBag();
        var largest = ExamplePack.Plain.Files.Max(f => f.Bytes.Length);
        Assert.Null(PackReader.Read(ExamplePack.Plain.Files, LoadLimits.Default with { FileBytes = largest - 1 }, messages));
        Assert.Equal(["FR0004"], Reads.Codes(messages.Sorted()));
    }

    [Fact]
    public void Files_of_one_kind_may_be_several()
    {
        var rules = ExamplePack.Plain.TextOf("rules");
        var at = rules.IndexOf("  - id: TEN-010", StringComparison.Ordinal);
        var manifest = ExamplePack.Plain.TextOf("pack").Replace(
            "  - { rules: rules.yaml, entries: 12 }", "  - { rules: tendon/rules.yaml, entries: 6 }\n  - { rules: rules.yaml, entries: 6 }", StringComparison.Ordinal);
        var pack = ExamplePack.Plain.Replace("rules", rules[..at] + "...\n").Replace("pack", manifest);
        var more = new PackFile("tendon/rules.yaml", Encoding.UTF8.GetBytes("rules:\n" + rules[at..]));
        var (read, messages) = Reads.Pack(pack.Files.Add(more));
        Assert.Equal("", Reads.Show(messages));
        Assert.Equal(Reads.Example.MeaningDigest, read!.MeaningDigest);
    }

    [Fact]
    public void An_id_in_two_files_points_at_both()
    {
        var manifest = ExamplePack.Plain.TextOf("pack").Replace(
            "  - { cautions: cautions.yaml, entries: 1 }", "  - { cautions: cautions.yaml, entries: 1 }\n  - { cautions: more.yaml, entries: 1 }", StringComparison.Ordinal);
        var more = new PackFile("more.yaml", Encoding.UTF8.GetBytes(ExamplePack.Plain.TextOf("cautions")));
        var message = Assert.Single(Reads.Pack(ExamplePack.Plain.Replace("pack", manifest).Files.Add(more)).Messages);
        Assert.Equal(("FR1112", "more.yaml", "cautions.yaml"),
            (message.Code, message.Location.Source.Path, message.Related[0].Location.Source.Path));
    }

    [Fact]
    public void A_file_cut_short_at_a_good_place_is_one_message()
    {
        var rules = ExamplePack.Plain.TextOf("rules");
        var cut = rules[..rules.IndexOf("  - id: FB-002", StringComparison.Ordinal)];
        var (_, messages) = Reads.Pack(ExamplePack.Plain.Replace("rules", cut));
        Assert.Equal(["FR1006"], Reads.Codes(messages));
        Assert.Equal(["FR1206"], Reads.Codes(Reads.Pack(ExamplePack.Plain.Replace("rules", cut + "...\n")).Messages
            .Where(m => m.Location.Source.Path == "pack.yaml")));
    }
}
