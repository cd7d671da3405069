using FindingRules.Model.Messages;

namespace FindingRules.Service.Packs;

/// <summary>What is in force, what was before, and what was refused.</summary>
internal sealed record PacksResponse(
    IReadOnlyList<InForceResponse> InForce, IReadOnlyList<EarlierResponse> Earlier, IReadOnlyList<RefusedResponse> Refused);

/// <param name="Folder">The last name of its folder.</param>
/// <param name="Messages">Doubts and notes that did not keep it from being taken.</param>
internal sealed record InForceResponse(
    string Folder, DateTimeOffset TakenAt, PackSummary Pack, IReadOnlyList<Message> Messages, string Url);

internal sealed record EarlierResponse(DateTimeOffset TakenAt, DateTimeOffset ReplacedAt, PackSummary Pack, string Url);

/// <summary>A folder whose present files were not taken, and why.</summary>
/// <param name="Kept">The pack that stays in force instead; absent where there is none.</param>
internal sealed record RefusedResponse(string Folder, DateTimeOffset At, PackSummary? Kept, IReadOnlyList<Message> Messages);

/// <param name="IsDemonstration">No clinician has approved this very meaning.</param>
internal sealed record PackSummary(
    string Name, string Version, string Title, string Department, bool IsDemonstration, ApprovalResponse? Approval,
    string MeaningDigest, string TextDigest, CountsResponse Counts);

internal sealed record ApprovalResponse(string By, DateOnly On);

internal sealed record CountsResponse(
    int Structures, int Findings, int StudyFacts, int Topics, int Rules, int Withdrawn, int Scales, int Protocols,
    int References, int Cases, int Files);

/// <summary>Everything of one pack text; the same for ever under the same digest.</summary>
internal sealed record PackResponse(
    PackSummary Pack, int Language, string Notice, IReadOnlyList<WithdrawnResponse> Withdrawn,
    IReadOnlyDictionary<string, string> Reasons, IReadOnlyList<FileResponse> Files, IReadOnlyList<RuleLine> Rules, string StudySchema);

internal sealed record WithdrawnResponse(string Rule, DateOnly On, string Because);

internal sealed record FileResponse(string Path, int Bytes, string Sha256, string Url);

internal sealed record RuleLine(string Id, string Revision, string For, string Rule, string Url);

/// <summary>One rule as its author wrote it.</summary>
/// <param name="Withdrawn">Present where the pack withdrew the rule: then it takes no part in readings.</param>
internal sealed record RuleResponse(
    string Id, string Revision, PackIdentityResponse Pack, string For, string Rule, string Because,
    IReadOnlyList<SourceResponse> Sources, string? Choice, string? Scale, IReadOnlyList<string> Over, string? Owner,
    DateOnly? Reviewed, DateOnly? ReviewBy, WithdrawnResponse? Withdrawn, PlaceResponse Place);

internal sealed record PackIdentityResponse(string Name, string Version, string MeaningDigest, string TextDigest, bool IsDemonstration);

internal sealed record SourceResponse(
    string Name, IReadOnlyList<string> Facts, string Cites, string Status, string? Read, string? Choice);

/// <summary>Where the rule stands, and what stands there, line for line.</summary>
internal sealed record PlaceResponse(string File, int Line, int Column, int EndLine, int EndColumn, string Url);
