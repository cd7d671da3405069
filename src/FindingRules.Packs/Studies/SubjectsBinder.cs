using System.Collections.Immutable;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Studies;
using FindingRules.Model.Vocabularies;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Studies;

/// <summary>The structures of a study, each with its findings and lesions.</summary>
internal static class SubjectsBinder
{
    private const string Where = "a subject";

    private static readonly string[] Known = ["structure", "side", "normal", "notAssessable", "findings", "lesions"];
    private static readonly string[] KnownInLesion = ["id", "findings"];

    public static ImmutableArray<StudySubject> Bind(DocumentNode node, StudyContext context)
    {
        if (Members.AsList(node, "`subjects`", context) is not { } list) return [];
        var subjects = ImmutableArray.CreateBuilder<StudySubject>(list.Items.Count);
        var firsts = new Dictionary<(Structure, Side), StudySubject>(list.Items.Count);
        foreach (var item in list.Items)
        {
            if (BindOne(item, context) is not { } subject) continue;
            if (firsts.TryAdd((subject.Structure, subject.Side), subject)) subjects.Add(subject);
            else
                context.Messages.Add(StudyMessages.DuplicateSubject(
                    item.Opening, new Subject(subject.Structure, subject.Side, null).Key,
                    firsts[(subject.Structure, subject.Side)].Location));
        }
        RefuseUnsided(subjects, firsts, context);
        // The same study is read alike in whatever order it was sent; so with the lesions below.
        subjects.Sort((a, b) => a.Structure == b.Structure ? a.Side - b.Side : string.CompareOrdinal(a.Structure.Name, b.Structure.Name));
        return subjects.ToImmutable();
    }

    // Without a side beside the same structure with one: nobody could say which of the two is meant.
    private static void RefuseUnsided(
        ImmutableArray<StudySubject>.Builder subjects, Dictionary<(Structure, Side), StudySubject> firsts, StudyContext context)
    {
        foreach (var subject in subjects)
        {
            if (subject.Side != Side.Unknown) continue;
            var sided = firsts.GetValueOrDefault((subject.Structure, Side.Left))
                ?? firsts.GetValueOrDefault((subject.Structure, Side.Right));
            if (sided is not null)
                context.Messages.Add(StudyMessages.UnsidedBesideSided(subject.Location, subject.Structure.Name, sided.Location));
        }
    }

    private static StudySubject? BindOne(DocumentNode node, StudyContext context)
    {
        if (Members.AsObject(node, Where, context) is not { } members) return null;
        foreach (var (name, _) in members.Entries)
            if (!Known.Contains(name.Value))
                Members.Unknown(0, name, Where, Known, context);
        if (BindStructure(node, members, context) is not { } structure) return null;
        var side = members.Find("side") is { } sent
            ? SideReader.Read(sent, structure.Name, structure.IsPaired, context)
            : structure.IsPaired ? Side.Unknown : Side.None;
        var isNormal = members.Find("normal") is { } normal && Members.AsTrueOrFalse(normal, "`normal`", context);
        var isHidden = members.Find("notAssessable") is { } hidden && Members.AsTrueOrFalse(hidden, "`notAssessable`", context);
        if (isNormal && isHidden) context.Messages.Add(StudyMessages.NormalAndNotAssessable(node.Opening, structure.Name));
        var findings = members.Find("findings") is { } found ? FindingsBinder.Bind(found, structure, context) : Findings.None;
        var lesions = members.Find("lesions") is { } listed ? BindLesions(listed, structure, context) : [];
        return side is null ? null : new StudySubject(structure, side.Value, isNormal, isHidden, findings, lesions, node.Location);
    }

    private static Structure? BindStructure(DocumentNode node, MappingNode members, StudyContext context)
    {
        if (members.Find("structure") is not { } named)
        {
            Members.Missing(node, members, Where, "structure", Known, context);
            return null;
        }
        if (Members.AsText(named, "`structure`", context) is not { } word) return null;
        if (context.Vocabulary.Structures.TryGetValue(word.Value, out var structure)) return structure;
        var kind = context.Vocabulary.Kinds.GetValueOrDefault(word.Value);
        var help = kind is null ? null : $"such as {Spelling.List(context.Vocabulary.StructuresOf(kind).Take(6).Select(s => s.Name))}";
        context.Messages.Add(StudyMessages.UnknownStructure(
            word.Location, Shown.Briefly(word.Value), help, [.. context.Vocabulary.Structures.Keys]));
        return null;
    }

    private static ImmutableArray<Lesion> BindLesions(DocumentNode node, Structure structure, StudyContext context)
    {
        if (Members.AsList(node, "`lesions`", context) is not { } list) return [];
        if (list.Items.Count > Lesion.Most)
        {
            context.Messages.Add(StudyMessages.TooManyLesions(list.Opening, structure.Name, list.Items.Count, Lesion.Most));
            return [];
        }
        var lesions = ImmutableArray.CreateBuilder<Lesion>(list.Items.Count);
        var firsts = new Dictionary<string, Lesion>(list.Items.Count, StringComparer.Ordinal);
        foreach (var item in list.Items)
        {
            if (BindLesion(item, structure, context) is not { } lesion) continue;
            if (firsts.TryAdd(lesion.Id, lesion)) lesions.Add(lesion);
            else context.Messages.Add(StudyMessages.DuplicateLesion(item.Opening, lesion.Id, firsts[lesion.Id].Location));
        }
        lesions.Sort((a, b) => string.CompareOrdinal(a.Id, b.Id));
        return lesions.ToImmutable();
    }

    private static Lesion? BindLesion(DocumentNode node, Structure structure, StudyContext context)
    {
        if (Members.AsObject(node, "a lesion", context) is not { } members) return null;
        foreach (var (name, _) in members.Entries)
            if (!KnownInLesion.Contains(name.Value))
                Members.Unknown(0, name, "a lesion", KnownInLesion, context);
        var findings = members.Find("findings") is { } found ? FindingsBinder.Bind(found, structure, context) : Findings.None;
        if (members.Find("id") is not { } named)
        {
            Members.Missing(node, members, "a lesion", "id", KnownInLesion, context);
            return null;
        }
        if (Members.AsText(named, "the lesion's `id`", context) is not { } id) return null;
        if (OpaqueKey.Fits(id.Value)) return new Lesion(id.Value, findings, node.Location);
        context.Messages.Add(StudyMessages.NotAnOpaqueKey(id.Location, "the lesion's `id`"));
        return null;
    }
}
