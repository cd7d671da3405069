using System.Globalization;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

internal sealed class ListNode : DocumentNode
{
    public ListNode(SourceText source, TextSpan span, IReadOnlyList<DocumentNode> items) : base(source, span)
    {
        Items = items;
        for (var i = 0; i < items.Count; i++) items[i].AttachTo(this, i.ToString(CultureInfo.InvariantCulture));
    }

    public IReadOnlyList<DocumentNode> Items { get; }

    public override string Form => "a list";
}
