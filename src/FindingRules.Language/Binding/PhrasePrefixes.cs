using FindingRules.Language.Syntax;
using FindingRules.Model.Conditions;
using FindingRules.Model.Messages;
using FindingRules.Model.Messages.Catalog;

namespace FindingRules.Language.Binding;

/// <summary>The words of the language before a phrase: earlier, ipsilateral, contralateral, study.</summary>
internal sealed record PhrasePrefixes(PlaceRelation Relation, bool IsEarlier, bool IsStudy, Func<Message>? Problem)
{
    private static readonly PhrasePrefixes None = new(PlaceRelation.Own, false, false, null);

    public static PhrasePrefixes Of(BindingContext context, PhraseSyntax phrase)
    {
        var read = None;
        WordSyntax? side = null;
        foreach (var word in phrase.Prefixes)
        {
            var isTwice = (word.Text == "earlier" && read.IsEarlier) || (word.Text == "study" && read.IsStudy);
            var sideBefore = side;
            read = word.Text switch
            {
                "earlier" => read with { IsEarlier = true },
                "study" => read with { IsStudy = true },
                "ipsilateral" => read with { Relation = PlaceRelation.Ipsilateral },
                _ => read with { Relation = PlaceRelation.Contralateral },
            };
            if (word.Text is "ipsilateral" or "contralateral") side = word;
            var before = isTwice ? word.Text : sideBefore is not null && side != sideBefore ? sideBefore.Text : null;
            if (before is not null && read.Problem is null)
                read = read with { Problem = () => PlaceNameMessages.PrefixTwice(context.At(word.Span), word.Text, before) };
        }
        return read is { IsStudy: true, Problem: null } && side is not null
            ? read with { Problem = () => PlaceNameMessages.StudyWithSide(context.At(side.Span), side.Text) }
            : read;
    }
}
