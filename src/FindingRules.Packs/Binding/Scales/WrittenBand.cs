using FindingRules.Model.Packs;
using FindingRules.Model.Quantities;
using FindingRules.Model.Text;

namespace FindingRules.Packs.Binding.Scales;

/// <param name="Unit">The unit that the author wrote the ends in.</param>
/// <param name="At">Where the stretch is written.</param>
internal sealed record WrittenBand(Band Band, Unit Unit, Location At);
