using FindingRules.Language.Syntax;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Language.Binding;

/// <summary>What came of a phrase: its one reading, or at least the target whose value or use was wrong.</summary>
internal sealed record Resolution(PhraseReading? Reading, Target? Target);

/// <summary>Enumerates all readings of a phrase and settles for one, or says why not.</summary>
internal sealed class PhraseResolver(BindingContext context)
{
    public Resolution Resolve(PhraseSyntax phrase, Form form)
    {
        var places = new PlaceReader(context, phrase).Read();
        var readings = PhraseReading.All(context, places, phrase, form.Given);
        var fitting = readings.Where(form.Fits).ToList();
        var sound = Sound(fitting);
        if (sound.Count == 1) return new Resolution(sound[0], sound[0].Target);
        if (sound.Count > 1)
        {
            context.Report(Ambiguous(phrase, sound));
            return new Resolution(null, null);
        }
        if (fitting.Find(r => r.At.Problem is not null) is { At.Problem: { } problem } forbidden)
        {
            context.Report(problem());
            return new Resolution(null, forbidden.Target);
        }
        var misfit = BestOf(readings);
        context.Report(misfit is null
            ? new UnknownPhrase(context, phrase, places, form).Explain()
            : Hyphens.Find(context, [.. phrase.Words, .. form.Given]) ?? form.Explain(context, phrase, misfit));
        return new Resolution(null, misfit?.Target);
    }

    /// <summary>Whether the phrase could stand for itself here; says nothing.</summary>
    public bool Stands(PhraseSyntax phrase, Form form) =>
        PhraseReading.All(context, new PlaceReader(context, phrase).Read(), phrase, form.Given).Any(form.Fits);

    /// <summary>Whether any name in it exists.</summary>
    public bool IsKnown(PhraseSyntax phrase) =>
        PhraseReading.All(context, new PlaceReader(context, phrase).Read(), phrase, []).Count > 0;

    private static List<PhraseReading> Sound(List<PhraseReading> fitting) =>
    [
        .. fitting.Where(r => r.At.Problem is null)
            .DistinctBy(r => (r.Place, r.Target, string.Join(' ', r.Values.Select(v => v.Text)))),
    ];

    private Message Ambiguous(PhraseSyntax phrase, List<PhraseReading> readings)
    {
        var ways = readings.Select(r => r.SayAs).Distinct(StringComparer.Ordinal).ToList();
        var at = context.At(phrase.Span);
        var written = context.Written(phrase.Span);
        var hasWays = ways.Count == readings.Count && !ways.Contains(written);
        return hasWays
            ? NameMessages.Ambiguous(at, written, ways)
            : NameMessages.SharedName(at, phrase.Words[^1].Text, Role(readings[0]), Role(readings[1]));
    }

    private static string Role(PhraseReading reading) => reading switch
    {
        { Target: null } => "a structure",
        { Values: [_] } when reading.At.Understood > 0 => $"a value of `{reading.Target.Name}`",
        _ => reading.Target.Type,
    };

    /// <summary>The misfit that the author most likely meant: the one with a value close to what was written.</summary>
    private static PhraseReading? BestOf(List<PhraseReading> misfits) =>
        misfits
            .OrderBy(r =>
                r.Target is not null && r.Values is [var value, ..] && Spelling.Closest(value.Text, r.Target.Values) is not null ? 0 : 1)
            .ThenBy(r => r.At.Problem is null ? 0 : 1)
            .ThenByDescending(r => r.At.Understood + (r.Target is null ? 0 : 1))
            .FirstOrDefault();
}
