using System.Buffers;
using System.IO.Pipelines;
using System.Threading.Channels;

namespace FindingRules.Service.Readings.Batch;

/// <summary>
/// Works on as many blocks at once as there are processors, over all batches together, and writes their answers in the
/// order of the lines. Whoever sends faster than answers are taken has to wait, so memory stays flat.
/// </summary>
internal sealed class BatchDesk : IDisposable
{
    private static readonly int Processors = Environment.ProcessorCount;
    private readonly SemaphoreSlim _places = new(Processors, Processors);

    public async Task RunAsync(BatchReader lines, BatchAnswers answers, PipeWriter to, CancellationToken gone)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(gone);
        var underway = Channel.CreateBounded<Task<ArrayBufferWriter<byte>>>(Processors * 2);
        var sending = WorkAsync(lines, answers, underway.Writer, either.Token);
        try
        {
            await foreach (var work in underway.Reader.ReadAllAsync(either.Token))
            {
                var block = await work;
                await to.WriteAsync(block.WrittenMemory, either.Token);
            }
            await sending;
        }
        finally
        {
            // Whoever stops first stops the other: nothing may go on reading a request that is over.
            await either.CancelAsync();
            await sending.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task WorkAsync(
        BatchReader lines, BatchAnswers answers, ChannelWriter<Task<ArrayBufferWriter<byte>>> underway, CancellationToken gone)
    {
        Exception? failure = null;
        try
        {
            await foreach (var block in lines.ReadAsync(gone))
            {
                await _places.WaitAsync(gone);
                await underway.WriteAsync(Task.Run(() => AnswerAsync(answers, block), CancellationToken.None), gone);
            }
        }
        catch (Exception e)
        {
            failure = e;
            throw;
        }
        finally
        {
            underway.Complete(failure);
        }
    }

    private async Task<ArrayBufferWriter<byte>> AnswerAsync(BatchAnswers answers, BatchBlock block)
    {
        try
        {
            return await answers.OfAsync(block);
        }
        finally
        {
            _places.Release();
        }
    }

    public void Dispose() => _places.Dispose();
}
