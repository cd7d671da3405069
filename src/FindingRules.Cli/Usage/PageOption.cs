using System.CommandLine;
using System.CommandLine.Invocation;

namespace FindingRules.Cli.Usage;

/// <summary>An option that answers with a page of text and runs nothing: <c>--help</c>, <c>--version</c>.</summary>
internal sealed class PageOption : Option<bool>
{
    private readonly Terminal _terminal;
    private readonly string _page;

    public PageOption(string name, string page, Terminal terminal, params string[] aliases)
        : base(name, aliases)
    {
        _page = page;
        _terminal = terminal;
        Arity = ArgumentArity.Zero;
        Action = new Writing(this);
    }

    public static PageOption Help(string page, Terminal terminal) => new("--help", page, terminal, "-h", "-?");

    private sealed class Writing(PageOption option) : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            option._terminal.Out.WriteLine(option._page);
            option._terminal.Out.Flush();
            return ExitCode.Fine;
        }
    }
}
