using System.Collections.Immutable;
using System.Globalization;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Binding.Names;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Files;

internal static class ManifestBinder
{
    public const string Path = "pack.yaml";
    private const int KnownLanguage = 1;
    private const string Demonstration = "demonstration";

    private static readonly string[] Required = ["pack", "title", "version", "language", "department", "approval", "caution", "files"];

    /// <summary>Null where it is not known which files the pack has; a mistake elsewhere in it does not stop the rest.</summary>
    public static Manifest? Bind(MappingNode root, MessageBag messages)
    {
        var fields = Fields.Of(root, "the manifest", root.Opening, messages, Required, "withdrawn", "reasons")!;
        var name = fields.Text("pack");
        if (name is not null) NameCheck.IsName(name, messages);
        var items = fields.Items("files", least: 1);
        var files = Files(items ?? [], messages);
        var manifest = new Manifest(
            name?.Value ?? "", fields.Words("title") ?? "", Version(fields), Language(fields), fields.Words("department") ?? "",
            Caution(fields), Approval(fields, messages), Withdrawn(fields, messages), Reasons(fields, messages),
            files, items?.Count == files.Length);
        return items is null ? null : manifest;
    }

    private static string Version(Fields fields)
    {
        if (fields.Text("version") is not { } text) return "";
        var parts = text.Value.Split('.');
        if (parts.Length != 3 || !parts.All(IsPlainNumber))
            fields.Report(PackMessages.NotAVersion(text.Inside, Shown.Briefly(text.Value)));
        return text.Value;
    }

    private static bool IsPlainNumber(string text) =>
        text.Length is > 0 and < 10 && text.All(char.IsAsciiDigit) && (text.Length == 1 || text[0] != '0');

    private static int Language(Fields fields)
    {
        if (fields.Text("language") is { } text && text.Value != "1")
            fields.Report(PackMessages.LanguageVersion(text.Inside, Shown.Briefly(text.Value), KnownLanguage));
        return KnownLanguage;
    }

    private static string Caution(Fields fields)
    {
        if (fields.Text("caution") is not { } text) return Pack.StandingNotice;
        var caution = Fields.OneLine(text.Value);
        if (!caution.Contains(Pack.StandingNotice, StringComparison.Ordinal))
            fields.Report(PackMessages.CautionTooShort(text.Location, Pack.StandingNotice));
        return caution;
    }

    private static ApprovalClaim? Approval(Fields fields, MessageBag messages)
    {
        if (fields.Node("approval") is not { } node) return null;
        if (node is ScalarNode word)
        {
            if (word.Value != Demonstration)
                fields.Report(PackMessages.WrongForm(
                    word.Location, "`approval`", $"`{Shown.Briefly(word.Value)}`", $"`{Demonstration}`, or `by`, `on` and `digest`"));
            return null;
        }
        var claim = Fields.Of(node, "the approval", node.Opening, messages, ["by", "on", "digest"]);
        if (claim is null) return null;
        var (by, on, digest) = (claim.Words("by"), claim.Date("on"), claim.Text("digest"));
        if (digest is not null && !IsDigest(digest.Value))
            claim.Report(PackMessages.NotADigest(digest.Inside, Shown.Briefly(digest.Value)));
        return claim.IsSound ? new ApprovalClaim(by!, on!.Value, digest!.Value, digest.Inside) : null;
    }

    private static bool IsDigest(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigitLower);

    private static ImmutableArray<WithdrawalClaim> Withdrawn(Fields fields, MessageBag messages)
    {
        var claims = ImmutableArray.CreateBuilder<WithdrawalClaim>();
        foreach (var item in fields.Items("withdrawn") ?? [])
        {
            if (Fields.Of(item, "a withdrawal", item.Opening, messages, ["rule", "on", "because"]) is not { } claim) continue;
            var (rule, on, because) = (claim.Text("rule"), claim.Date("on"), claim.Words("because"));
            if (rule is null || !claim.IsSound) continue;
            var first = claims.FirstOrDefault(c => c.Rule.Value == rule.Value);
            if (first is null) claims.Add(new WithdrawalClaim(rule, on!.Value, because!));
            else messages.Add(PackMessages.ListedTwice(rule.Inside, "`withdrawn`", Shown.Briefly(rule.Value), first.Rule.Inside));
        }
        return claims.ToImmutable();
    }

    private static ImmutableSortedDictionary<string, string> Reasons(Fields fields, MessageBag messages)
    {
        var reasons = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (code, says) in fields.Group("reasons")?.Entries ?? [])
            if (NameCheck.IsName(code, messages) && fields.AsText(says, $"`{code.Value}`") is { } text)
                reasons[code.Value] = Fields.OneLine(text.Value);
        return reasons.ToImmutable();
    }

    private static ImmutableArray<ListedFile> Files(IReadOnlyList<DocumentNode> items, MessageBag messages)
    {
        var files = ImmutableArray.CreateBuilder<ListedFile>();
        foreach (var item in items)
        {
            if (BindFile(item, messages) is not { } file) continue;
            var first = files.FirstOrDefault(f => f.Path == file.Path);
            if (first is null) files.Add(file);
            else messages.Add(PackMessages.FileListedTwice(file.PathAt, file.Path, first.PathAt));
        }
        return files.ToImmutable();
    }

    private static ListedFile? BindFile(DocumentNode item, MessageBag messages)
    {
        if (Fields.Of(item, "a file of the manifest", item.Opening, messages, ["entries"],
            [.. FileKind.All]) is not { } fields) return null;
        string[] kinds = [.. FileKind.All.Where(fields.Has)];
        if (kinds.Length != 1)
        {
            if (fields.IsSound || kinds.Length > 1) fields.Report(PackMessages.NoFileKind(item.Location, FileKind.All));
            return null;
        }
        var (path, entries) = (fields.Text(kinds[0]), fields.Text("entries"));
        if (path is not null && !IsPath(path.Value)) fields.Report(PackMessages.NotAPath(path.Inside, Shown.Briefly(path.Value)));
        if (entries is not null && !IsPlainNumber(entries.Value))
            fields.Report(PackMessages.NotACount(entries.Inside, "`entries`", Shown.Briefly(entries.Value)));
        // A file whose entry is not right is still the file that was meant: it is read, and its names are known.
        if (path is null || !IsPath(path.Value)) return null;
        var count = entries is not null && IsPlainNumber(entries.Value) ? int.Parse(entries.Value, CultureInfo.InvariantCulture) : -1;
        return new ListedFile(kinds[0], path.Value, count, path.Inside, entries?.Inside ?? path.Inside);
    }

    private static bool IsPath(string text) =>
        text.EndsWith(".yaml", StringComparison.Ordinal)
        && text.Split('/').All(part => part.Length > 0 && char.IsAsciiLetterOrDigit(part[0])
            && part.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' or '-'));
}
