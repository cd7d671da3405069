using FindingRules.Model.Text;

namespace FindingRules.Packs.Documents;

/// <summary>Stands where something was refused already: whoever meets it says nothing more.</summary>
internal sealed class BrokenNode(SourceText source, TextSpan span) : DocumentNode(source, span)
{
    public override string Form => "something refused";
}
