using System.Text;
using FindingRules.Model.Packs;

namespace FindingRules.Testing.Broken;

/// <summary>Studies that the whole one becomes by a mistake of its sender.</summary>
internal static class StudyMistakes
{
    private static readonly (string Words, string Instead)[] Meaning =
    [
        ("\"S-1\"", "\"\""), ("\"S-1\"", "\"Jane Roe\""), ("\"S-1\"", $"\"{new string('x', 65)}\""), ("\"S-1\"", "\"ж\""), ("\"S-1\"", "\"S-1\\u0000\""),
        ("\"example\"", "\"other-pack\""), ("\"side\": \"right\" }]", "\"side\": \"midline\" }]"), ("\"right\"", "\"both\""), ("\"right\"", "\"r\""),
        ("\"14 mm\"", "\"14\""), ("\"14 mm\"", "\"14 kg\""), ("\"14 mm\"", "\"14 cm\""), ("\"14 mm\"", "\"140 mm\""), ("\"14 mm\"", "\"0.1 mm\""),
        ("\"14 mm\"", "\"-14 mm\""), ("\"14 mm\"", "\"14,5 mm\""), ("\"14 mm\"", "\"1e1 mm\""), ("\"14 mm\"", "\"14 deg\""), ("\"14 mm\"", "\"fourteen mm\""),
        ("\"14 mm\"", "\"<< 14 mm\""), ("\"14 mm\"", "\"< 0.5 mm\""), ("\"14 mm\"", "\"> 90 mm\""), ("\"14 mm\"", "\"20 mm to 10 mm\""), ("\"14 mm\"", "\"10 mm to 20\""),
        ("\"14 mm\"", "\"10 mm to 20 mm to 30 mm\""), ("\"14 mm\"", $"\"{new string('9', 40)} mm\""), ("\"14 mm\"", "\"1.2345678901234567890123456789012345 mm\""),
        ("\"14 mm\"", "\"\""), ("\"14 mm\"", "\"mm\""), ("\"14 mm\"", "\"١٤ mm\""), ("\"14 mm\"", "\"14 mm; drop\""), ("\"14 mm\"", "\"14\\n mm\""),
        ("6.1", "61"), ("6.1", "0.061"), ("6.1", "6.1e99"), ("6.1", "-6.1"), ("6.1", "1e-30"), ("6.1", "6.1000000000000000000000000000000001"), ("6.1", "\"six\""),
        ("\"<\"", "\"less\""), ("\"<\"", "\"ad\""), ("\"<\"", "\"<>\""), ("\"value\": \"2\"", "\"value\": \"2 mm\""), ("\"61 years\"", "\"61.5 years\""), ("\"61 years\"", "\"610 years\""),
        ("\"61 years\"", "\"61 mm\""), ("\"61 years\"", "\"1964-05-01\""), ("\"from\": \"bursal\", \"to\": \"articular\"", "\"from\": \"articular\", \"to\": \"bursal\""),
        ("[\"bursal\", \"articular\"]", "[\"bursal\", \"bursal\"]"), ("[\"bursal\", \"articular\"]", "[\"bursal\", \"none\"]"), ("[\"bursal\", \"articular\"]", "[\"deep\"]"),
        ("\"id\": \"L2\"", "\"id\": \"L1\""), ("\"id\": \"L2\"", "\"id\": \"\""), ("\"id\": \"L2\"", "\"id\": \"L 2\""), ("\"structure\": \"infraspinatus\"", "\"structure\": \"supraspinatus\""),
        ("\"structure\": \"infraspinatus\"", "\"structure\": \"supraspinatus tendon\""), ("\"persists\"", "\"present\""), ("\"reangled\"", "\"position\""), ("\"position\"", "\"fluid\""),
        ("\"modality\"", "\"thickness\""), ("\"modality\": \"ultrasound\"", "\"name\": \"someone\""), ("\"modality\": \"ultrasound\"", "\"birth-date\": \"1964-05-01\""),
        ("\"normal\": true", "\"normal\": true, \"notAssessable\": true"), ("\"normal\": true", "\"normal\": true, \"comment\": \"looks fine\""), ("\"study\"", "\"patient\": \"someone\", \"study\""),
        ("\"subjects\"", "\"Subjects\""), ("\"shoulder\"", "\"knee\""), ("\"supersedes\": \"S-0\"", "\"supersedes\": \"S-1\""),
        ("{ \"facts\": { \"modality\": \"mri\" }", "{ \"study\": \"S-9\", \"facts\": {}"), ("\"mri\"", "\"pet\""),
    ];

    private static readonly (string Words, string Instead)[] Form =
    [
        ("{ \"study\"", "\"study\""), ("{ \"study\"", "[{ \"study\""), ("\"study\": ", "study: "), ("\"study\": ", "'study': "), ("\"study\": ", "\"study\" "), ("\"study\": ", "\"study\":: "),
        ("\"S-1\",", "\"S-1\""), ("\"S-1\",", "\"S-1\",,"), ("\"S-1\",", "\"S-1\"; "), ("\"S-1\",", "\"S-1\", /* the study */"), ("\"S-1\",", "\"S-1\", // the study\n"), ("\"S-1\",", "\"S-1\", # the study\n"),
        ("\"S-1\"", "\"S-1"), ("\"S-1\"", "\"S\n1\""), ("\"S-1\"", "\"S\t1\""), ("\"S-1\"", "\"S\u0001\""), ("\"S-1\"", "\"S\u0000\""), ("\"S-1\"", "\"\\x53\""), ("\"S-1\"", "\"\\uD800\""), ("\"S-1\"", "\"\\uDC00\\uD800\""),
        ("\"S-1\"", "\"\uD800\""), ("\"S-1\"", "\"\\u12\""), ("\"S-1\"", "S-1"), ("\"S-1\"", "undefined"), ("true", "True"), ("true", "tru"), ("true", "yes"), ("6.1", "6."), ("6.1", ".1"), ("6.1", "06.1"), ("6.1", "+6.1"),
        ("6.1", "NaN"), ("6.1", "Infinity"), ("6.1", "0x6"), ("6.1", "6,1"), ("6.1", "6.1.1"), ("6.1", "6.1e"), ("6.1", "1e999999999"), ("6.1", "--1"), ("] } }", "], } }"), ("] } }", "] } },"), ("] } }", "] } } }"), ("] } }", "] } } {}"),
        ("] } }", "] } }\n{ \"study\": \"S-2\" }"), ("] } }", "] } }\u0000"), ("\"facts\": {", "\"facts\": {\u202E"), ("\"facts\"", "\"fa\u202Ects\""), ("\"facts\"", "\"f\\u0430cts\""), ("\"facts\"", "\"\""), ("\"facts\"", "\"facts\\u0000\""),
        ("{ \"study\"", "\uFEFF\uFEFF{ \"study\""), ("{ \"study\"", "\u00A0{ \"study\""),
    ];

    public static IEnumerable<BrokenStudy> OfMeaning() => Meaning.Select(m => BrokenStudy.Replaced(m.Words, m.Instead));

    public static IEnumerable<BrokenStudy> OfForm() =>
        Form.Select(m => BrokenStudy.Replaced(m.Words, m.Instead))
            .Concat(new[] { "", " ", "\n", "null", "true", "1", "\"S-1\"", "[]", "{}", "\uFEFF", "study: S-1\n", "<study/>" }.Select(t => new BrokenStudy($"nothing but {t}", t)));

    public static IEnumerable<BrokenStudy> OfSize()
    {
        foreach (var depth in new[] { 33, 64, 65, 1_000, 30_000, 200_000 })
            foreach (var (open, close) in new[] { ("[", "]"), ("{\"a\":", "}"), ("[", "") })
            {
                var nested = $"{Repeat(open, depth)}1{Repeat(close, depth)}";
                yield return BrokenStudy.Replaced("\"14 mm\"", nested) with { Name = $"{depth} {open}" };
                yield return new BrokenStudy($"{depth} {open} and nothing else", nested);
            }
        var bytes = LoadLimits.Default.StudyBytes;
        yield return new BrokenStudy("more bytes than a study may have", BrokenStudy.Whole + new string(' ', bytes));
        yield return new BrokenStudy("one text that does not end", "\"" + new string('x', bytes / 2));
        yield return BrokenStudy.Replaced("\"14 mm\"", $"\"{new string('x', 500_000)}\"") with { Name = "a value of 500,000 letters" };
        yield return BrokenStudy.Replaced("\"14 mm\"", new string('9', 500_000)) with { Name = "a number of 500,000 digits" };
        yield return BrokenStudy.Replaced("\"facts\": {", $"\"facts\": {{ {string.Concat(Enumerable.Range(0, 20_000).Select(i => $"\"f{i}\": 1, "))}") with { Name = "20,000 facts" };
    }

    public static IEnumerable<BrokenStudy> Noise()
    {
        var random = new Random(20260201);
        const string signs = "{}[]\":,\\/ \n0123456789.-+eEtrufalsn\"\"{}x→";
        for (var i = 0; i < 200; i++)
            yield return new BrokenStudy($"signs {i}", new string([.. Enumerable.Range(0, random.Next(1, 200)).Select(_ => signs[random.Next(signs.Length)])]));
        for (var i = 0; i < 50; i++)
            yield return new BrokenStudy($"noise {i}", new string([.. Enumerable.Range(0, random.Next(1, 500)).Select(_ => (char)random.Next(0x10000))]));
    }

    private static string Repeat(string what, int times) => new StringBuilder().Insert(0, what, times).ToString();
}
