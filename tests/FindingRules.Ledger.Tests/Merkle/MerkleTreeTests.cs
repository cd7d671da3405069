using System.Text.Json;
using CsCheck;
using FindingRules.Ledger.Merkle;
using Xunit;

namespace FindingRules.Ledger.Tests.Merkle;

public sealed class MerkleTreeTests
{
    /// <summary>Source: transparency-dev/merkle at 417fb0c, re-derived independently.</summary>
    [VectorFact]
    public void Published_roots_are_reached_leaf_by_leaf()
    {
        using var vectors = Read("roots-vectors.json");
        var leaves = Strings(vectors.RootElement.GetProperty("leafInputsHex")).Select(Convert.FromHexString).ToList();
        var roots = Strings(vectors.RootElement.GetProperty("rootHashesHexBySize")).Select(Convert.FromHexString).ToList();
        var tree = new Frontier();
        Assert.Equal(roots[0], tree.Root());
        for (var i = 0; i < leaves.Count; i++)
        {
            tree.Append(TreeHash.Leaf(leaves[i]), []);
            Assert.Equal(roots[i + 1], tree.Root());
        }
    }

    /// <summary>Source: the same.</summary>
    [VectorFact]
    public void Published_inclusion_proofs_are_judged_as_published()
    {
        var (good, bad) = (0, 0);
        foreach (var file in Files("inclusion"))
        {
            using var vector = Read(file);
            var v = vector.RootElement;
            var isRight = ProofVerifier.IsIncluded(
                v.GetProperty("leafIdx").GetUInt64(), v.GetProperty("treeSize").GetUInt64(), Bytes(v, "leafHash"), Proof(v),
                    Bytes(v, "root"));
            Judge(file, v, isRight, ref good, ref bad);
        }
        Assert.Equal((6, 92), (good, bad));
    }

    [VectorFact]
    public void Published_consistency_proofs_are_judged_as_published()
    {
        var (good, bad) = (0, 0);
        foreach (var file in Files("consistency"))
        {
            using var vector = Read(file);
            var v = vector.RootElement;
            var isRight = ProofVerifier.IsConsistent(
                v.GetProperty("size1").GetUInt64(), v.GetProperty("size2").GetUInt64(), Bytes(v, "root1"), Bytes(v, "root2"), Proof(v));
            // Its two roots are of 12 bytes, which is no hash: this is refused here.
            if (Path.GetFileName(file) == "sizes-are-equal-one-and-proof-is-empty.json") Assert.False(isRight);
            else Judge(file, v, isRight, ref good, ref bad);
        }
        Assert.Equal((5, 92), (good, bad));
    }

    [Fact]
    public void Every_proof_that_is_made_verifies_and_with_any_bit_turned_does_not() =>
        Gen.Select(Gen.ULong[1, 700], Gen.ULong[0, 699], Gen.ULong[1, 700], Gen.Int[0, 255]).Sample((size, index, earlier, bit) =>
        {
            index %= size;
            earlier = 1 + ((earlier - 1) % size);
            var tree = new GrownTree(size);
            var root = tree.Root();
            var leaf = tree.Leaves[(int)index];
            var proof = tree.Prove(ProofPath.Inclusion(index, size));
            Assert.True(ProofVerifier.IsIncluded(index, size, leaf, proof, root));
            Assert.False(ProofVerifier.IsIncluded(index, size, Turned(leaf, bit), proof, root));
            Assert.False(ProofVerifier.IsIncluded(index, size, leaf, proof, Turned(root, bit)));

            var before = new GrownTree(earlier).Root();
            var consistency = tree.Prove(ProofPath.Consistency(earlier, size));
            Assert.True(ProofVerifier.IsConsistent(earlier, size, before, root, consistency));
            Assert.False(ProofVerifier.IsConsistent(earlier, size, Turned(before, bit), root, consistency));
            if (earlier < size) Assert.False(ProofVerifier.IsConsistent(earlier, size, before, Turned(root, bit), consistency));
        });

    [Fact]
    public void A_frontier_goes_on_where_it_was_written_down() =>
        Gen.Int[0, 600].Sample(size =>
        {
            var (whole, resumed) = (new Frontier(), new Frontier());
            for (var i = 0; i < size; i++)
            {
                List<KeptNode> ofWhole = [], ofResumed = [];
                whole.Append(TreeHash.Leaf(BitConverter.GetBytes(i)), ofWhole);
                if (i % 7 == 0) resumed = new Frontier(resumed.Size, resumed.ToBytes());
                resumed.Append(TreeHash.Leaf(BitConverter.GetBytes(i)), ofResumed);
                Assert.Equal(ofWhole.Select(n => (n.Level, n.Place)), ofResumed.Select(n => (n.Level, n.Place)));
            }
            Assert.Equal(whole.Root(), resumed.Root());
        });

    [Fact]
    public void A_frontier_of_another_size_is_refused() =>
        Assert.Throws<InvalidDataException>(() => new Frontier(3, new byte[TreeHash.Size]));

    private static byte[] Turned(byte[] hash, int bit)
    {
        var turned = (byte[])hash.Clone();
        turned[bit / 8] ^= (byte)(1 << (bit % 8));
        return turned;
    }

    private static void Judge(string file, JsonElement vector, bool isRight, ref int good, ref int bad)
    {
        var expected = !vector.GetProperty("wantErr").GetBoolean();
        Assert.True(expected == isRight, $"{file}: expected {expected}, got {isRight}");
        if (expected) good++;
        else bad++;
    }

    private static JsonDocument Read(string file) =>
        JsonDocument.Parse(File.ReadAllBytes(Path.Combine(VectorFactAttribute.Folder!, "merkle", file)));

    private static string[] Files(string folder) =>
        Directory.GetFiles(Path.Combine(VectorFactAttribute.Folder!, "merkle", "testdata", folder), "*.json",
            SearchOption.AllDirectories);

    private static byte[] Bytes(JsonElement vector, string name) => vector.GetProperty(name).GetBytesFromBase64();

    private static List<byte[]> Proof(JsonElement vector) => vector.GetProperty("proof") is { ValueKind: JsonValueKind.Array } proof
        ? [.. proof.EnumerateArray().Select(h => h.GetBytesFromBase64())]
        : [];

    private static IEnumerable<string> Strings(JsonElement array) => array.EnumerateArray().Select(e => e.GetString()!);
}
