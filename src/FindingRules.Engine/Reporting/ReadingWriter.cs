using FindingRules.Engine.Evaluating;
using FindingRules.Model.Packs;
using FindingRules.Model.Readings;
using FindingRules.Model.Studies;

namespace FindingRules.Engine.Reporting;

/// <summary>An examination that has been decided in, a reading out.</summary>
internal static class ReadingWriter
{
    private static readonly string EngineVersion = typeof(ReadingWriter).Assembly.GetName().Version!.ToString(fieldCount: 3);

    public static Reading Write(Examination examination, Study study) => Write(new Decided(examination, study), study);

    public static Reading Write(Decided decided, Study study)
    {
        var examination = decided.Examination;
        var pack = examination.Network.Pack;
        var undecided = UndecidedWriter.Write(decided);
        var gaps = CompletenessWriter.Write(examination, study);
        var reading = new Reading
        {
            Pack = new PackIdentity(pack.Name, pack.Version, pack.MeaningDigest, pack.TextDigest, pack.Approval is null),
            Engine = EngineVersion,
            Study = study.Key,
            Supersedes = study.Supersedes,
            Suggestions = SuggestionWriter.Write(decided),
            NextSteps = new StepWriter(decided).Write(),
            Cautions = CautionWriter.Write(decided),
            Probabilities = ProbabilityWriter.Write(decided),
            Held = WithheldWriter.Held(decided),
            Conflicts = WithheldWriter.Conflicts(decided),
            Unknown = undecided,
            Borderline = BorderlineWriter.Write(decided),
            AskNext = AskNextWriter.Write(decided, undecided),
            NotAssessed = gaps,
            ImpressionText = "",
            Notice = NoticeOf(pack),
        };
        reading = reading with { Notes = NoteWriter.Write(decided, study, reading) };
        reading = reading with { Calm = CalmWriter.Write(decided, study, reading) };
        return reading with { ImpressionText = ImpressionWriter.Write(decided, reading) };
    }

    private static string NoticeOf(Pack pack) => pack.Approval is null
        ? $"DEMONSTRATION, not approved by a clinician. {Pack.StandingNotice}"
        : Pack.StandingNotice;
}
