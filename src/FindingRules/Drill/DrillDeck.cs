using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Text;

namespace FindingRules.Drill;

/// <summary>
/// All questions that the cases of a pack give. The right option is what the engine says of the case. Immutable; any number
/// of threads may use it.
/// </summary>
public sealed class DrillDeck
{
    /// <summary>Said with every question and every answer.</summary>
    public const string Invented = "Every case is invented; an answer is what the rules of this pack say, and no more.";

    /// <summary>The largest seed.</summary>
    public const ulong MostSeed = QuestionId.MostSeed - 1;

    private readonly CompiledPack _pack;
    private readonly ImmutableArray<Spot> _spots;
    private readonly ImmutableDictionary<string, Spot> _byKey;

    private DrillDeck(CompiledPack pack)
    {
        _pack = pack;
        _spots = [.. pack.Pack.Cases.SelectMany(c => Spots.Of(new CaseView(pack, c))).DistinctBy(s => s.Key)];
        _byKey = _spots.ToImmutableDictionary(s => s.Key);
    }

    public static DrillDeck Of(CompiledPack pack) => new(pack);

    /// <summary>Whether the id is of a question of this very pack text.</summary>
    public static bool IsOf(string id, Pack pack) => QuestionId.Read(id)?.Digest == QuestionId.DigestOf(pack);

    public Pack Pack => _pack.Pack;

    public PackIdentity Identity => new(Pack.Name, Pack.Version, Pack.MeaningDigest, Pack.TextDigest, Pack.Approval is null);

    /// <summary>The caution that every page, export and answer carries.</summary>
    public string Notice =>
        $"{(Pack.Approval is null ? "DEMONSTRATION, not approved by a clinician. " : "")}{Pack.StandingNotice} {Invented}";

    /// <summary>So many questions, the same for the same seed.</summary>
    public ImmutableArray<DrillQuestion> Draw(ulong seed, int count) =>
        [.. Order(seed).Select(key => Make(key, seed)).OfType<Made>().Take(count).Select(m => m.Question)];

    /// <summary>The answer of a question, for a sheet of answers.</summary>
    public DrillAnswer? Answer(string id) => Find(id, new MessageBag()) is { } made ? new AnswerJudge(made).Answer() : null;

    /// <summary>Null where a message says why the answer cannot be judged.</summary>
    /// <param name="deciding">Marks of the findings that are said to have decided it.</param>
    public DrillJudgement? Judge(string id, int choice, ImmutableArray<string> deciding, MessageBag messages)
    {
        if (Find(id, messages) is not { } made) return null;
        var marks = made.Sheet.Items.Select(i => i.Mark).ToList();
        if (choice < 1 || choice > made.Claims.Length)
            messages.Add(DrillMessages.NoSuchOption(Words($"{choice}"), choice, made.Claims.Length));
        foreach (var strange in deciding.Except(marks)) messages.Add(DrillMessages.NoSuchFinding(Words(strange), strange, marks[^1]));
        return messages.HasErrors ? null : new AnswerJudge(made).Judge(choice, deciding) with { Notice = Notice };
    }

    /// <summary>
    /// Keys of all questions by seed: each theme once before any comes again; within that, regions and sorts by turns, a whole
    /// study before a single structure.
    /// </summary>
    internal IEnumerable<string> Order(ulong seed)
    {
        var themes = new Dictionary<string, int>(StringComparer.Ordinal);
        var fields = new Dictionary<(int, string), int>();
        var shuffled = new SeededOrder(seed).Shuffle(_spots);
        var place = shuffled.Select(s => s.Field).Distinct().Select((f, i) => (f, i)).ToDictionary(p => p.f, p => p.i);
        int Turn(int round, Spot spot) => fields[(round, spot.Field)] = fields.GetValueOrDefault((round, spot.Field)) + 1;
        return shuffled.OrderBy(s => !s.IsWhole)
            .Select(s => (Spot: s, Round: themes[s.Theme] = themes.GetValueOrDefault(s.Theme) + 1)).ToList()
            .Select(p => (p.Spot, p.Round, Turn: Turn(p.Round, p.Spot))).ToList()
            .OrderBy(p => p.Round).ThenBy(p => p.Turn).ThenBy(p => place[p.Spot.Field]).Select(p => p.Spot.Key);
    }

    internal DrillQuestion? Question(string key, ulong seed) => Make(key, seed)?.Question;

    internal Made? Find(string id, MessageBag messages)
    {
        if (QuestionId.Read(id) is not { } read)
        {
            messages.Add(DrillMessages.NotAQuestion(Words(id), id));
            return null;
        }
        var made = read.Digest == QuestionId.DigestOf(Pack) ? Make(read.Key, read.Seed) : null;
        if (made is null) messages.Add(DrillMessages.QuestionOfOtherPack(Words(id), id, Pack.Name));
        return made;
    }

    private Made? Make(string key, ulong seed) => _byKey.TryGetValue(key, out var spot) ? Made.Of(_pack, spot, seed) : null;

    private static Location Words(string written) => new SourceText("answer", written).Whole;
}
