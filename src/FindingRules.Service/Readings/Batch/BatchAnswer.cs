using System.Buffers;
using System.Text;
using FindingRules.Output;

namespace FindingRules.Service.Readings.Batch;

/// <summary>One line of an answer: <c>{"id", "reading"}</c>, or the object that stands where there is no reading.</summary>
/// <param name="Id">Of the record; null where nothing was recorded.</param>
internal readonly record struct BatchAnswer(Guid? Id, ReadOnlyMemory<byte> Reading, bool HasReading = true)
{
    public static BatchAnswer Without(NoReading none) => new(null, ReadingJson.NoReadingToBytes(none), HasReading: false);

    public void WriteTo(IBufferWriter<byte> to)
    {
        if (HasReading) to.Write(Encoding.ASCII.GetBytes(Id is { } id ? $"{{\"id\":\"{id}\",\"reading\":" : "{\"reading\":"));
        to.Write(Reading.Span);
        to.Write(HasReading ? "}\n"u8 : "\n"u8);
    }
}
