using System.CommandLine;
using FindingRules.Cli.Output;
using FindingRules.Cli.Usage;
using FindingRules.Model.Messages.Rendering;

namespace FindingRules.Cli.Commands;

internal sealed record ReviewOptions(string Pack, bool IsJson, bool FailsOnDoubt);

/// <summary><c>findingrules review PACK</c>: what is wrong or doubtful in a pack, and how its cases come out.</summary>
internal sealed class ReviewCommand(Terminal terminal)
{
    private const string Doubt = "doubt";

    public const string Help = """
        findingrules review PACK [--output text|json] [--fail-on doubt]

        Checks every file of a pack, runs its cases, and says which rules no case makes true.

          PACK               the folder that holds `pack.yaml`
          --output text      messages on standard error, the outcome on standard output (the default)
          --output json      everything on standard output
          --fail-on doubt    exit 2 where there are doubts and no errors

        Examples:
          findingrules review rules/msk-ultrasound
          findingrules review rules/msk-ultrasound --fail-on doubt --output json

        Exit codes: 0 no errors, every case passed; 2 doubts, with --fail-on doubt; 3 errors, or a case
        failed.
        """;

    public static Command Create(Terminal terminal)
    {
        var pack = new Argument<string>("PACK") { Description = "the folder that holds `pack.yaml`" };
        var output = OutputOption.Create();
        var failOn = new WordOption("--fail-on", [Doubt]);
        var command = new Command("review") { pack, output, failOn, PageOption.Help(Help, terminal) };
        command.SetAction((result, _) => Task.Run(() => new ReviewCommand(terminal).Run(
            new ReviewOptions(result.GetRequiredValue(pack), result.IsJson(output), result.GetValue(failOn) == Doubt))));
        return command;
    }

    private int Run(ReviewOptions options)
    {
        var review = PackReview.Of(PackFolder.Load(options.Pack));
        if (options.IsJson)
        {
            terminal.Out.WriteLine(ReviewJson.Of(options.Pack, review));
        }
        else
        {
            MessageText.Write(terminal.Error, review.Messages, terminal.StyleFor(options.Pack));
            ReviewText.Write(terminal.Out, options.Pack, review);
        }
        terminal.Out.Flush();
        return CodeOf(review, options);
    }

    private static int CodeOf(PackReview review, ReviewOptions options)
    {
        if (review.HasErrors) return ExitCode.Of(review.Messages);
        return review.HasDoubts && options.FailsOnDoubt ? ExitCode.Doubts : ExitCode.Fine;
    }
}
