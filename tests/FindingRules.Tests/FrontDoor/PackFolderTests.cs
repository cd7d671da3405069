using FindingRules.Model.Packs;
using Xunit;

namespace FindingRules.Tests.FrontDoor;

public sealed class PackFolderTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public PackFolderTests() => _folder.Write("pack.yaml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void All_yaml_files_are_read_with_their_relative_paths_in_order()
    {
        _folder.Write("rules/shoulder.yaml", "rules: []\n");
        _folder.Write("rules/foot.yml");
        _folder.Write("README.md");
        var read = PackFolder.Read(_folder.Path);
        Assert.Empty(read.Messages);
        Assert.Equal(["pack.yaml", "rules/foot.yml", "rules/shoulder.yaml"], read.Files.Select(f => f.Path));
        Assert.Equal("rules: []\n"u8.ToArray(), read.Files[2].Bytes.ToArray());
    }

    [Fact]
    public void The_manifest_stands_for_its_folder() =>
        Assert.Single(PackFolder.Read(_folder.PathOf("pack.yaml")).Files);

    [Fact]
    public void A_folder_that_is_not_there_is_named_with_its_neighbour()
    {
        _folder.Write("shoulder/pack.yaml");
        var message = Assert.Single(PackFolder.Read(_folder.PathOf("sholuder")).Messages);
        Assert.Equal("FR0002", message.Code);
        Assert.Contains(_folder.PathOf("shoulder"), message.Label, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_manifest_names_the_pack_in_it()
    {
        _folder.Write("outer/inner/pack.yaml");
        var message = Assert.Single(PackFolder.Read(_folder.PathOf("outer")).Messages);
        Assert.Equal("FR0006", message.Code);
        Assert.Contains(_folder.PathOf("outer/inner"), message.Label, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_is_no_pack() =>
        Assert.Equal("FR0007", Assert.Single(PackFolder.Read(_folder.Write("study.json")).Messages).Code);

    [Fact]
    public void A_file_that_is_too_large_keeps_the_pack_from_being_read()
    {
        _folder.Write("rules.yaml", new string('#', 101));
        var read = PackFolder.Read(_folder.Path, LoadLimits.Default with { FileBytes = 100 });
        Assert.Empty(read.Files);
        Assert.Equal("FR0004", Assert.Single(read.Messages).Code);
    }

    [Fact]
    public void Too_many_files_and_too_many_bytes_are_refused()
    {
        _folder.Write("rules.yaml");
        Assert.Equal("FR0014", Assert.Single(PackFolder.Read(_folder.Path, LoadLimits.Default with { PackFiles = 1 }).Messages).Code);
        Assert.Equal("FR0014", Assert.Single(PackFolder.Read(_folder.Path, LoadLimits.Default with { PackBytes = 9 }).Messages).Code);
    }

    [Fact]
    public void A_link_that_leaves_the_folder_is_refused()
    {
        using var elsewhere = new TemporaryFolder();
        File.CreateSymbolicLink(_folder.PathOf("rules.yaml"), elsewhere.Write("rules.yaml"));
        Assert.Equal("FR0009", Assert.Single(PackFolder.Read(_folder.Path).Messages).Code);
    }

    [Fact]
    public void A_link_that_leaves_the_folder_by_way_of_another_is_refused()
    {
        using var elsewhere = new TemporaryFolder();
        elsewhere.Write("rules.yaml");
        Directory.CreateSymbolicLink(_folder.PathOf(".now"), elsewhere.Path);
        File.CreateSymbolicLink(_folder.PathOf("rules.yaml"), ".now/rules.yaml");
        Assert.Equal("FR0009", Assert.Single(PackFolder.Read(_folder.Path).Messages).Code);
    }

    [Fact]
    public void Links_within_the_folder_are_followed_and_hidden_folders_are_not_entered()
    {
        // How a cluster mounts a volume that it swaps as a whole.
        _folder.Write("..v1/rules.yaml", "rules: []\n");
        Directory.CreateSymbolicLink(_folder.PathOf("..data"), "..v1");
        File.CreateSymbolicLink(_folder.PathOf("rules.yaml"), "..data/rules.yaml");
        var read = PackFolder.Read(_folder.Path);
        Assert.Equal(["pack.yaml", "rules.yaml"], read.Files.Select(f => f.Path));
        Assert.Equal("rules: []\n"u8.ToArray(), read.Files[1].Bytes.ToArray());
    }

    [Fact]
    public void Links_in_a_circle_are_a_message()
    {
        File.CreateSymbolicLink(_folder.PathOf("a.yaml"), "b.yaml");
        File.CreateSymbolicLink(_folder.PathOf("b.yaml"), "a.yaml");
        Assert.NotEmpty(PackFolder.Read(_folder.Path).Messages);
    }

    [Fact]
    public void A_link_to_nothing_is_a_message()
    {
        File.CreateSymbolicLink(_folder.PathOf("rules.yaml"), "gone.yaml");
        Assert.Equal("FR0003", Assert.Single(PackFolder.Read(_folder.Path).Messages).Code);
    }
}
