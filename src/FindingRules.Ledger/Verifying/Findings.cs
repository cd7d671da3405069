using System.Collections.Immutable;
using FindingRules.Model.Messages;

namespace FindingRules.Ledger.Verifying;

/// <summary>Collects what is wrong: the first hundred, and how many there are.</summary>
internal sealed class Findings(string ledger)
{
    private const int MostTold = 100;
    private readonly ImmutableArray<Message>.Builder _told = ImmutableArray.CreateBuilder<Message>();

    public string Ledger => ledger;

    public long Count { get; private set; }

    public ImmutableArray<Message> Told => _told.ToImmutable();

    public void Add(Message problem)
    {
        Count++;
        if (_told.Count < MostTold) _told.Add(problem);
    }
}
