using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Sprache;

namespace FindingRules.Language.Lexing;

/// <summary>
/// What Sprache has in a form that suits no text from outside: its own repetitions try the failing part twice (which
/// doubles with each bracket) or recurse once per part, and its reference to a later parser throws.
/// </summary>
internal static class Combinators
{
    /// <summary>Goes back up in the grammar. Too deep for the stack is an exception that the reader turns into a message.</summary>
    public static Parser<T> Recurse<T>(Func<Parser<T>> later) => i =>
    {
        RuntimeHelpers.EnsureSufficientExecutionStack();
        return later()(i);
    };

    /// <summary>How a message names this part where it is missing.</summary>
    public static Parser<T> Expecting<T>(this Parser<T> parser, params string[] words) => i =>
    {
        var expectations = ((RuleInput)i).Expectations;
        var before = expectations.CountAt(i.Position);
        var result = parser(i);
        if (!result.WasSuccessful && result.Remainder.Equals(i)) expectations.Rename(i.Position, before, words);
        return result;
    };

    /// <summary>Once, or null; a part that began and went wrong is wrong.</summary>
    public static Parser<T?> Maybe<T>(this Parser<T> parser)
        where T : class => i =>
    {
        var result = parser(i);
        if (result.WasSuccessful) return Result.Success<T?>(result.Value, result.Remainder);
        return result.Remainder.Equals(i) ? Result.Success<T?>(null, i) : Result.Failure<T?>(result.Remainder, "", []);
    };

    /// <summary>As often as it comes; a part that began and went wrong is wrong.</summary>
    public static Parser<ImmutableArray<T>> Repeated<T>(this Parser<T> parser) => i =>
    {
        var parts = ImmutableArray.CreateBuilder<T>();
        var at = i;
        while (true)
        {
            var result = parser(at);
            if (!result.WasSuccessful)
            {
                return result.Remainder.Equals(at)
                    ? Result.Success(parts.ToImmutable(), at)
                    : Result.Failure<ImmutableArray<T>>(result.Remainder, "", []);
            }
            parts.Add(result.Value);
            at = result.Remainder;
        }
    };

    /// <summary>Whether the part stands here, without taking it.</summary>
    public static Parser<bool> Ahead<T>(this Parser<T> parser) => i =>
        parser(i).WasSuccessful ? Result.Success(true, i) : Result.Failure<bool>(i, "", []);

    /// <summary>One part, then any number of a connecting mark and a further part.</summary>
    public static Parser<(T First, ImmutableArray<(TOperator By, T Part)> More)> ChainedBy<T, TOperator>(
        this Parser<T> part, Parser<TOperator> connector)
    {
        var link = from mark in connector from next in part select (mark, next);
        return from first in part from more in link.Repeated() select (first, more);
    }
}
