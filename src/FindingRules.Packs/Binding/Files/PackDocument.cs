using FindingRules.Model.Text;
using FindingRules.Packs.Documents;

namespace FindingRules.Packs.Binding.Files;

/// <summary>A file of the pack that could be read.</summary>
/// <param name="IsComplete">Nothing was refused while it was read, so all that it declares is there.</param>
internal sealed record PackDocument(string Kind, SourceText Source, MappingNode Root, bool IsComplete);
