namespace FindingRules.Model.Messages.Rendering;

/// <summary>The colour of a severity as terminal sequences (ECMA-48 SGR); empty where colour is not wanted.</summary>
internal sealed record Paint(string Strong, string Faint, string Off)
{
    private static readonly Paint None = new("", "", "");
    private static readonly Paint Error = new("\e[1;31m", "\e[31m", "\e[0m");
    private static readonly Paint Doubt = new("\e[1;33m", "\e[33m", "\e[0m");
    private static readonly Paint Note = new("\e[1;36m", "\e[36m", "\e[0m");

    public static Paint For(Severity severity, bool hasColour) => !hasColour ? None : severity switch
    {
        Severity.Error => Error,
        Severity.Doubt => Doubt,
        _ => Note,
    };
}
