using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;
using FindingRules.Model.Packs;
using FindingRules.Packs.Binding.Cases;
using FindingRules.Packs.Binding.Content;
using FindingRules.Packs.Binding.Files;
using FindingRules.Packs.Binding.Linking;
using FindingRules.Packs.Binding.Rules;
using FindingRules.Packs.Binding.Scales;
using FindingRules.Packs.Binding.Vocabularies;
using FindingRules.Packs.Digests;
using FindingRules.Packs.Studies;

namespace FindingRules.Packs.Binding;

/// <summary>The files of a pack in, a bound pack out; one line for each pass.</summary>
internal static class PackBinder
{
    public static Pack Bind(Manifest manifest, BindingContext context, string textDigest)
    {
        VocabularyBinder.Bind(context);
        ReferencesBinder.Bind(context);
        var topics = TopicsBinder.BindNames(context);
        var scales = ScalesBinder.BindNames(context);
        MeasuresBinder.Bind(context);
        topics.BindWordings();
        scales.BindWordings();
        NextStepsBinder.Bind(context);
        CautionsBinder.Bind(context);
        var bands = scales.BindRules();
        var drafts = RulesBinder.Bind(context);
        var rules = drafts.Select(d => d.Rule).Concat(bands).ToDictionary(r => r.Id, StringComparer.Ordinal);
        OverChecks.Check(drafts, rules, context);
        var withdrawn = WithdrawalChecks.Bind(manifest, rules, context);
        LayerChecks.Check([.. rules.Values.Where(r => !withdrawn.Any(w => w.Rule == r.Id))], context);
        var protocols = ProtocolsBinder.Bind(context);
        var study = new StudyContext(manifest.Name, context.Symbols.Vocabulary, protocols, context.Messages);
        var cases = CasesBinder.Bind(context, study, new ExpectationNames(rules, context));
        var pack = new Pack
        {
            Name = manifest.Name,
            Title = manifest.Title,
            Version = manifest.Version,
            Language = manifest.Language,
            Department = manifest.Department,
            Caution = manifest.Caution,
            Withdrawn = withdrawn,
            Reasons = manifest.Reasons,
            Symbols = context.Symbols,
            Rules = [.. rules.Values.OrderBy(r => r.Id, StringComparer.Ordinal)],
            Protocols = protocols,
            Cases = cases,
            Files = context.Files.Sources,
            MeaningDigest = "",
            TextDigest = textDigest,
        };
        return context.Messages.HasErrors ? pack
            : Approve(pack with { MeaningDigest = MeaningDigest.Of(pack) }, manifest, context.Messages);
    }

    private static Pack Approve(Pack pack, Manifest manifest, MessageBag messages)
    {
        if (manifest.Approval is not { } claim) return pack;
        if (claim.Digest == pack.MeaningDigest) return pack with { Approval = new Approval(claim.By, claim.On, claim.Digest) };
        messages.Add(PackMessages.ApprovalOfAnother(claim.DigestAt, claim.Digest, pack.MeaningDigest));
        return pack;
    }
}
