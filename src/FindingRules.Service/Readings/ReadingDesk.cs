using System.Threading.RateLimiting;
using FindingRules.Explaining;
using FindingRules.Model.Packs;
using FindingRules.Model.Text;
using FindingRules.Service.Hosting;

namespace FindingRules.Service.Readings;

/// <summary>Evaluates one study; a place where tests put something slow or broken.</summary>
internal delegate WholeReading StudyEvaluation(CompiledPack pack, SourceText study, LoadLimits limits);

/// <summary>What came of a study at the desk. Only <see cref="Finished"/> may hold a reading.</summary>
internal abstract record DeskAnswer
{
    public sealed record Finished(WholeReading Outcome) : DeskAnswer;

    /// <summary>An explanation of a reading, or why there is none.</summary>
    public sealed record Explained(StudyExplanation Outcome) : DeskAnswer;

    public sealed record Late : DeskAnswer;

    public sealed record Busy : DeskAnswer;

    public sealed record Failed(Exception Fault) : DeskAnswer;
}

/// <summary>Lets so many studies be evaluated at once, so many wait, and none take longer than it may.</summary>
internal sealed class ReadingDesk(ServiceSettings settings, StudyEvaluation evaluate, TimeProvider time) : IDisposable
{
    private readonly ConcurrencyLimiter _places = new(new ConcurrencyLimiterOptions
    {
        PermitLimit = settings.Limits.ConcurrentReadings,
        QueueLimit = settings.Limits.WaitingReadings,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    public Task<DeskAnswer> ReadAsync(CompiledPack pack, SourceText study, CancellationToken gone) =>
        WorkAsync(() => new DeskAnswer.Finished(evaluate(pack, study, settings.ForStudies)), gone);

    public Task<DeskAnswer> ExplainAsync(CompiledPack pack, SourceText study, Question question, CancellationToken gone) =>
        WorkAsync(() => new DeskAnswer.Explained(pack.Explain(study, question, settings.ForStudies)), gone);

    private async Task<DeskAnswer> WorkAsync(Func<DeskAnswer> answer, CancellationToken gone)
    {
        using var deadline = new CancellationTokenSource(
            TimeSpan.FromMilliseconds(settings.Limits.ReadingMilliseconds), time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, gone);
        try
        {
            var place = await _places.AcquireAsync(1, either.Token);
            if (!place.IsAcquired) return new DeskAnswer.Busy();
            var work = Task.Run(() => Work(answer, place), CancellationToken.None);
            return await work.WaitAsync(either.Token);
        }
        catch (OperationCanceledException) when (deadline.IsCancellationRequested)
        {
            return new DeskAnswer.Late();
        }
    }

    public void Dispose() => _places.Dispose();

    // A late evaluation keeps its place until it really ends: otherwise late ones would pile up without limit.
    private static DeskAnswer Work(Func<DeskAnswer> answer, RateLimitLease place)
    {
        using (place)
        {
            try
            {
                return answer();
            }
#pragma warning disable CA1031 // Whatever went wrong, the answer is that there is no reading.
            catch (Exception e)
#pragma warning restore CA1031
            {
                return new DeskAnswer.Failed(e);
            }
        }
    }
}
