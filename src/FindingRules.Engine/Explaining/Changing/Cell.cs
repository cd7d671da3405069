using FindingRules.Model.Studies;

namespace FindingRules.Engine.Explaining.Changing;

/// <summary>Values of a finding that every test takes the same way.</summary>
/// <param name="Value">The one that stands for them; null for a finding that is not sent.</param>
/// <param name="To">That value as a study writes it.</param>
/// <param name="Range">All of them, in words.</param>
internal sealed record Cell(FindingValue? Value, string To, string Range);
