using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text;
using FindingRules.Benchmarks.Workload;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace FindingRules.Benchmarks.Peers;

/// <summary>Writes the numbers of the rules that fire into the room given, and says how many they are.</summary>
public delegate int Firing(in StudyFacts study, int[] fired);

/// <summary>
/// The rules as <c>if</c>s over a struct, in methods of a few rules each, which the just-in-time compiler optimises best.
/// Written out here and compiled by the C# compiler, as a program's own source would be, before anything is measured.
/// </summary>
internal static class HandWritten
{
    private const int RulesPerMethod = 16;

    public static Firing Compile(ImmutableArray<RuleSketch> rules)
    {
        var tree = CSharpSyntaxTree.ParseText(Source(rules));
        var references = new[] { typeof(object).Assembly.Location, RuntimeAssembly("System.Runtime"), typeof(StudyFacts).Assembly.Location };
        var compilation = CSharpCompilation.Create(
            $"hand-written-{rules.Length}", [tree], references.Distinct().Select(r => MetadataReference.CreateFromFile(r)),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release));
        using var assembly = new MemoryStream();
        var emitted = compilation.Emit(assembly);
        if (!emitted.Success) throw new InvalidOperationException(string.Join('\n', emitted.Diagnostics.Take(10)));
        return Assembly.Load(assembly.ToArray()).GetType("HandWritten")!.GetMethod("Run")!.CreateDelegate<Firing>();
    }

    private static string RuntimeAssembly(string name) => Assembly.Load(name).Location;

    private static string Source(ImmutableArray<RuleSketch> rules)
    {
        var (methods, calls) = (new StringBuilder(), new StringBuilder());
        foreach (var group in rules.GroupBy(r => r.Structure))
            foreach (var (some, part) in group.Chunk(RulesPerMethod).Select((some, part) => (some, part)))
            {
                calls.Append(CultureInfo.InvariantCulture, $"        n = Part{group.Key}_{part}(study[{group.Key}], fired, n);\n");
                methods.Append(CultureInfo.InvariantCulture, $"    [MethodImpl(MethodImplOptions.AggressiveOptimization)]\n    private static int Part{group.Key}_{part}(in SiteFacts s, int[] fired, int n)\n    {{\n");
                foreach (var rule in some)
                    methods.Append(CultureInfo.InvariantCulture, $"        if ({string.Join(" && ", rule.Comparisons.Select(Text))}) fired[n++] = {rule.Number};\n");
                methods.Append("        return n;\n    }\n");
            }
        return $$"""
            using System.Runtime.CompilerServices;
            using FindingRules.Benchmarks.Workload;

            public static class HandWritten
            {
                public static int Run(in StudyFacts study, int[] fired)
                {
                    var n = 0;
            {{calls}}        return n;
                }

            {{methods}}}
            """;
    }

    private static string Text(Comparison comparison) => comparison.Relation switch
    {
        Relation.AtLeast => string.Create(CultureInfo.InvariantCulture, $"s.{comparison.Finding} >= {comparison.Operand / 10.0:0.0}"),
        Relation.Below => string.Create(CultureInfo.InvariantCulture, $"s.{comparison.Finding} < {comparison.Operand / 10.0:0.0}"),
        _ => $"({string.Join(" || ", Values(comparison.Operand).Select(v => $"s.{comparison.Finding} == {v}"))})",
    };

    public static IEnumerable<int> Values(int bits) => Enumerable.Range(0, 8).Where(v => (bits & (1 << v)) != 0);
}
