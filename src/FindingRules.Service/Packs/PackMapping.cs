using System.Security.Cryptography;
using FindingRules.Model.Packs;

namespace FindingRules.Service.Packs;

/// <summary>Packs and rules as the answers show them.</summary>
internal static class PackMapping
{
    public static PacksResponse AsResponse(this ShelfState state) => new(
        [.. state.InForce.Select(p => new InForceResponse(p.Folder, p.TakenAt, p.Pack.AsSummary(), p.Messages, UrlOf(p.Pack)))],
        [.. state.Earlier.Select(p => new EarlierResponse(p.TakenAt, p.ReplacedAt, p.Pack.AsSummary(), UrlOf(p.Pack)))],
        [.. state.Refused.Select(r => new RefusedResponse(r.Folder, r.At, r.Kept?.AsSummary(), r.Messages))]);

    public static PackSummary AsSummary(this Pack pack) => new(
        pack.Name, pack.Version, pack.Title, pack.Department, pack.Approval is null,
        pack.Approval is { } approval ? new ApprovalResponse(approval.By, approval.On) : null,
        pack.MeaningDigest, pack.TextDigest, CountsOf(pack));

    public static PackResponse AsResponse(this KeptPack kept)
    {
        var pack = kept.Pack;
        var url = UrlOf(pack);
        return new PackResponse(
            pack.AsSummary(), pack.Language, Pack.StandingNotice,
            [.. pack.Withdrawn.Select(AsResponse)], pack.Reasons,
            [.. kept.Files.Select(f => new FileResponse(
                f.Path, f.Bytes.Length, Convert.ToHexStringLower(SHA256.HashData(f.Bytes.Span)), FileUrl(url, f.Path)))],
            [.. pack.Rules.Select(r => new RuleLine(r.Id, r.Revision, r.Scope.Written, r.Text, RuleUrl(url, r)))],
            $"{url}/study-schema");
    }

    public static RuleResponse AsResponse(this Rule rule, Pack pack) => new(
        rule.Id, rule.Revision,
        new PackIdentityResponse(pack.Name, pack.Version, pack.MeaningDigest, pack.TextDigest, pack.Approval is null),
        rule.Scope.Written, rule.Text, rule.Because,
        [.. rule.Sources.Select(AsResponse)], rule.Choice, rule.ScaleName, rule.Over, rule.Owner, rule.Reviewed, rule.ReviewBy,
        pack.Withdrawn.FirstOrDefault(w => w.Rule == rule.Id)?.AsResponse(), PlaceOf(rule, pack));

    private static WithdrawnResponse AsResponse(this Withdrawal withdrawal) =>
        new(withdrawal.Rule, withdrawal.On, withdrawal.Because);

    private static SourceResponse AsResponse(Reference source) =>
        new(source.Name, source.Facts, source.Cites, WordOf(source.Status), source.Read, source.Choice);

    private static PlaceResponse PlaceOf(Rule rule, Pack pack)
    {
        var (source, span, _) = rule.DeclaredAt;
        var start = source.PositionOf(span.Start);
        var end = source.PositionOf(span.End);
        return new PlaceResponse(source.Path, start.Line, start.Column, end.Line, end.Column, FileUrl(UrlOf(pack), source.Path));
    }

    private static CountsResponse CountsOf(Pack pack) => new(
        pack.Vocabulary.Structures.Count,
        pack.Vocabulary.Kinds.Values.SelectMany(k => k.Findings.Values).Distinct().Count(),
        pack.Vocabulary.StudyFacts.Count, pack.Symbols.Topics.Count, pack.Rules.Length, pack.Withdrawn.Length,
        pack.Symbols.Scales.Count, pack.Protocols.Count, pack.References.Count, pack.Cases.Length, pack.Files.Length);

    private static string WordOf(SourceStatus status) => status switch
    {
        SourceStatus.AbstractRead => "abstract read",
        SourceStatus.Secondary => "secondary source read",
        SourceStatus.Computed => "computed from published figures",
        _ => "common practice, no source",
    };

    private static string UrlOf(Pack pack) => $"/v1/packs/{pack.TextDigest}";

    private static string RuleUrl(string pack, Rule rule) => $"{pack}/rules/{Uri.EscapeDataString(rule.Id)}";

    private static string FileUrl(string pack, string path) =>
        $"{pack}/files/{string.Join('/', path.Split('/').Select(Uri.EscapeDataString))}";
}
