using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Studies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>A study's document tree in, a study out. The same for JSON and for the studies of YAML cases.</summary>
internal static class StudyBinder
{
    private const string Where = "a study";

    private static readonly string[] Known = ["study", "pack", "supersedes", "protocols", "facts", "subjects", "earlier"];
    private static readonly string[] KnownInEarlier = ["facts", "subjects"];

    /// <param name="key">The key where the study says none; null where it must say one.</param>
    public static Study? Bind(DocumentNode root, StudyContext context, string? key)
    {
        var before = context.Messages.Count;
        if (Members.AsObject(root, Where, context) is not { } members) return null;
        var study = new Study { Key = key ?? "", Location = root.Location };
        foreach (var (name, value) in members.Entries)
            study = name.Value switch
            {
                "study" => study with { Key = Key(value, "the study's key", context) ?? "" },
                "pack" => study with { PackName = PackName(value, context) },
                "supersedes" => study with { Supersedes = Key(value, "the key that it replaces", context) },
                "protocols" => study with { Protocols = ProtocolUsesBinder.Bind(value, context) },
                "facts" => study with { Facts = FindingsBinder.BindFacts(value, context) },
                "subjects" => study with { Subjects = SubjectsBinder.Bind(value, context) },
                "earlier" => BindEarlier(study, value, context),
                _ => Members.Unknown(study, name, Where, Known, context),
            };
        if (key is null && members.Find("study") is null)
            Members.Missing(root, members, Where, "study", Known, context);
        if (study.Supersedes is not null && study.Supersedes == study.Key)
            context.Messages.Add(StudyMessages.SupersedesItself(members.Find("supersedes")!.Location));
        return context.Messages.Count == before ? study : null;
    }

    private static Study BindEarlier(Study study, DocumentNode node, StudyContext context)
    {
        study = study with { Earlier = [] };
        if (Members.AsObject(node, "`earlier`", context) is not { } members) return study;
        foreach (var (name, value) in members.Entries)
            study = name.Value switch
            {
                "facts" => study with { EarlierFacts = FindingsBinder.BindFacts(value, context) },
                "subjects" => study with { Earlier = SubjectsBinder.Bind(value, context) },
                _ => Members.Unknown(study, name, "`earlier`", KnownInEarlier, context),
            };
        return study;
    }

    private static string? Key(DocumentNode node, string what, StudyContext context)
    {
        if (Members.AsText(node, what, context) is not { } text) return null;
        if (OpaqueKey.Fits(text.Value)) return text.Value;
        context.Messages.Add(StudyMessages.NotAnOpaqueKey(text.Location, what));
        return null;
    }

    private static string? PackName(DocumentNode node, StudyContext context)
    {
        if (Members.AsText(node, "`pack`", context) is not { } text) return null;
        if (text.Value != context.PackName)
            context.Messages.Add(StudyMessages.OtherPack(text.Location, Shown.Briefly(text.Value), context.PackName));
        return text.Value;
    }
}
