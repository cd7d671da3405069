namespace FindingRules.Ledger.Merkle;

/// <summary>
/// Checks inclusion and consistency proofs. Source: RFC 9162, sections 2.1.3.2 and 2.1.4.2. False for anything that
/// does not fit, an empty tree and a hash of the wrong length among them; never throws.
/// </summary>
public static class ProofVerifier
{
    public static bool IsIncluded(
        ulong index, ulong size, ReadOnlySpan<byte> leafHash, IReadOnlyList<byte[]> proof, ReadOnlySpan<byte> root)
    {
        if (index >= size || leafHash.Length != TreeHash.Size || root.Length != TreeHash.Size || !AreHashes(proof)) return false;
        var (node, last) = (index, size - 1);
        var hash = leafHash.ToArray();
        foreach (var sibling in proof)
        {
            if (last == 0) return false;
            if ((node & 1) == 1 || node == last)
            {
                hash = TreeHash.Node(sibling, hash);
                while ((node & 1) == 0 && node != 0) (node, last) = (node >> 1, last >> 1);
            }
            else
            {
                hash = TreeHash.Node(hash, sibling);
            }
            (node, last) = (node >> 1, last >> 1);
        }
        return last == 0 && root.SequenceEqual(hash);
    }

    public static bool IsConsistent(
        ulong first, ulong second, ReadOnlySpan<byte> firstRoot, ReadOnlySpan<byte> secondRoot, IReadOnlyList<byte[]> proof)
    {
        if (first == 0 || first > second || firstRoot.Length != TreeHash.Size || secondRoot.Length != TreeHash.Size) return false;
        if (!AreHashes(proof)) return false;
        if (first == second) return proof.Count == 0 && firstRoot.SequenceEqual(secondRoot);
        if (proof.Count == 0) return false;

        // A first tree that is a full subtree of the second is its own first node.
        IEnumerable<byte[]> path = IsPowerOfTwo(first) ? proof.Prepend(firstRoot.ToArray()) : proof;
        var (node, last) = (first - 1, second - 1);
        while ((node & 1) == 1) (node, last) = (node >> 1, last >> 1);
        byte[] older = path.First(), newer = older;
        foreach (var step in path.Skip(1))
        {
            if (last == 0) return false;
            if ((node & 1) == 1 || node == last)
            {
                older = TreeHash.Node(step, older);
                newer = TreeHash.Node(step, newer);
                while ((node & 1) == 0 && node != 0) (node, last) = (node >> 1, last >> 1);
            }
            else
            {
                newer = TreeHash.Node(newer, step);
            }
            (node, last) = (node >> 1, last >> 1);
        }
        return last == 0 && firstRoot.SequenceEqual(older) && secondRoot.SequenceEqual(newer);
    }

    private static bool IsPowerOfTwo(ulong size) => (size & (size - 1)) == 0;

    private static bool AreHashes(IReadOnlyList<byte[]> proof) => proof.All(h => h.Length == TreeHash.Size);
}
