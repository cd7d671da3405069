using System.Text;
using FindingRules.Testing;

namespace FindingRules.Cli.Tests;

/// <summary>One call of the command, as a shell makes it.</summary>
internal sealed record CommandRun(int Code, string Out, string Error)
{
    public static string ExamplePack { get; } = Repository.PathOf("tests", "packs", "example");

    public static CommandRun Of(params string[] arguments) => WithInput("", arguments);

    public static CommandRun WithInput(string input, params string[] arguments) => WithInput(Encoding.UTF8.GetBytes(input), arguments);

    public static CommandRun WithInput(byte[] input, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var terminal = new Terminal { Input = new MemoryStream(input), Out = output, Error = error };
        var code = CommandLine.RunAsync(arguments, terminal).GetAwaiter().GetResult();
        return new CommandRun(code, output.ToString(), error.ToString());
    }
}
