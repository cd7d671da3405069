using System.Globalization;
using System.Text;

namespace FindingRules.Benchmarks.Growth;

/// <summary>A chart as a picture. Curves differ by dashes and marks and not by colour, so that they can be told apart in grey.</summary>
internal sealed class SvgWriter
{
    private const double Width = 760;
    private const double Height = 460;
    private const double Left = 90;
    private const double Right = Width - 30;
    private const double Bottom = Height - 70;
    private const double LineHeight = 20;
    private const string Ink = "#222";

    private static readonly string[] _dashes = ["none", "7 4", "2 3"];

    private readonly StringBuilder _svg = new();
    private readonly Chart _chart;
    private readonly double _top;
    private readonly Axis _across;
    private readonly Axis _up;

    private SvgWriter(Chart chart)
    {
        _chart = chart;
        _top = 50 + (LineHeight * chart.Curves.Length);
        var points = chart.Curves.SelectMany(c => c.Points).ToList();
        _across = Axis.Over(points.Select(p => p.X), chart.IsLogarithmic, Left, Right);
        _up = Axis.Over(points.Select(p => p.Y), isLogarithmic: true, Bottom, _top);
    }

    public static string Write(Chart chart)
    {
        var writer = new SvgWriter(chart);
        writer.WriteFrame();
        for (var i = 0; i < chart.Curves.Length; i++) writer.WriteCurve(i);
        return writer._svg.Append("</svg>\n").ToString();
    }

    private void WriteFrame()
    {
        Line($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Width} {Height}\" font-family=\"sans-serif\" font-size=\"13\" fill=\"{Ink}\">");
        Line($"<rect width=\"{Width}\" height=\"{Height}\" fill=\"#fff\"/>");
        Text(Left, 26, "start", _chart.Title, "font-size=\"16\" font-weight=\"bold\"");
        foreach (var mark in _across.Marks)
        {
            Rule(_across.At(mark), Bottom, _across.At(mark), _top);
            Text(_across.At(mark), Bottom + 20, "middle", Axis.Text(mark));
        }
        foreach (var mark in _up.Marks)
        {
            Rule(Left, _up.At(mark), Right, _up.At(mark));
            Text(Left - 8, _up.At(mark) + 4, "end", Axis.Text(mark));
        }
        Text((Left + Right) / 2, Bottom + 48, "middle", _chart.Across);
        var middle = (_top + Bottom) / 2;
        Text(24, middle, "middle", Chart.Up, Format($"transform=\"rotate(-90 24 {middle:0.#})\""));
    }

    private void WriteCurve(int number)
    {
        var curve = _chart.Curves[number];
        var points = curve.Points.Select(p => new Point(_across.At(p.X), _up.At(p.Y))).ToList();
        Stroke(number, points);
        foreach (var point in points) Mark(number, point);
        var y = 46 + (LineHeight * number);
        Stroke(number, [new Point(Left, y), new Point(Left + 44, y)]);
        Mark(number, new Point(Left + 22, y));
        Text(Left + 54, y + 4, "start", curve.Name);
    }

    private void Stroke(int number, IEnumerable<Point> points) => Line(
        $"<polyline fill=\"none\" stroke=\"{Ink}\" stroke-width=\"2\" stroke-dasharray=\"{_dashes[number]}\" points=\"{string.Join(' ', points.Select(p => Format($"{p.X:0.#},{p.Y:0.#}")))}\"/>");

    private void Mark(int number, Point at)
    {
        const double Size = 4;
        var fill = number == 1 ? "#fff" : Ink;
        if (number == 2) Line($"<path fill=\"{Ink}\" d=\"M{at.X:0.#} {at.Y - Size - 1:0.#} l{Size + 1} {2 * Size} h-{2 * (Size + 1)} z\"/>");
        else if (number == 1) Line($"<rect x=\"{at.X - Size:0.#}\" y=\"{at.Y - Size:0.#}\" width=\"{2 * Size}\" height=\"{2 * Size}\" fill=\"{fill}\" stroke=\"{Ink}\"/>");
        else Line($"<circle cx=\"{at.X:0.#}\" cy=\"{at.Y:0.#}\" r=\"{Size}\" fill=\"{fill}\" stroke=\"{Ink}\"/>");
    }

    private void Rule(double x1, double y1, double x2, double y2) =>
        Line($"<line x1=\"{x1:0.#}\" y1=\"{y1:0.#}\" x2=\"{x2:0.#}\" y2=\"{y2:0.#}\" stroke=\"#ccc\"/>");

    private void Text(double x, double y, string anchor, string text, string more = "") =>
        Line($"<text x=\"{x:0.#}\" y=\"{y:0.#}\" text-anchor=\"{anchor}\" {more}>{text}</text>");

    private void Line(FormattableString text) => _svg.Append(Format(text)).Append('\n');

    private static string Format(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
