using System.Net;
using System.Net.Sockets;
using FindingRules.Model.Messages;
using FindingRules.Service.Hosting;
using FindingRules.Service.Readings;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace FindingRules.Service.Tests.Hosting;

public sealed class StartTests
{
    [Fact]
    public async Task A_folder_that_is_not_there_keeps_the_service_from_starting()
    {
        var (code, errors) = await RunAsync(new ServiceOptions { PackFolders = ["no-such-folder"], Urls = ["http://127.0.0.1:0"], Ledger = ServiceOptions.NoLedger });
        Assert.Equal(1, code);
        Assert.Contains("FR0002", errors, StringComparison.Ordinal);
        Assert.Contains("no-such-folder", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_in_use_keeps_the_service_from_starting()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        using var disk = PackDisk.WithExample();
        var url = $"http://127.0.0.1:{((IPEndPoint)other.LocalEndpoint).Port}";
        var (code, errors) = await RunAsync(new ServiceOptions { PackFolders = [disk.Root], Urls = [url], Ledger = ServiceOptions.NoLedger });
        Assert.Equal(1, code);
        Assert.Contains("FR7040", errors, StringComparison.Ordinal);
        Assert.Contains(url, errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_service_that_is_told_to_stop_stops_in_order()
    {
        using var disk = PackDisk.WithExample();
        using var stop = new CancellationTokenSource(TimeSpan.FromMilliseconds(300));
        using var errors = new StringWriter();
        Assert.Equal(0, await ServiceHost.RunAsync(
            new ServiceOptions { PackFolders = [disk.Root], Urls = ["http://127.0.0.1:0"], Ledger = ServiceOptions.NoLedger }, errors, stop.Token));
        Assert.Empty(errors.ToString());
    }

    [Theory]
    [InlineData("http://192.0.2.1:8080", "not an address of this machine")]
    [InlineData("https://127.0.0.1:0", "certificate")]
    public async Task An_address_that_cannot_be_listened_at_says_why(string url, string why)
    {
        using var disk = PackDisk.WithExample();
        var (code, errors) = await RunAsync(new ServiceOptions { PackFolders = [disk.Root], Urls = [url], Ledger = ServiceOptions.NoLedger });
        Assert.Equal(1, code);
        Assert.Contains("FR7040", errors, StringComparison.Ordinal);
        Assert.Contains(why, errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_study_in_flight_is_answered_before_the_service_stops()
    {
        using var release = new ManualResetEventSlim();
        using var running = new SemaphoreSlim(0);
        await using var service = await RunningService.StartAsync(change: services =>
            services.AddSingleton<StudyEvaluation>((pack, study, limits) =>
            {
                running.Release();
                release.Wait(TimeSpan.FromSeconds(20));
                return pack.ReadWhole(study, limits);
            }));
        var reading = service.PostAsync(Studies.FullThickness);
        Assert.True(await running.WaitAsync(TimeSpan.FromSeconds(10)));
        var stopping = service.StopAsync();
        release.Set();
        using var answer = await reading;
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        await stopping;
    }

    [Fact]
    public void What_is_not_said_comes_from_the_settings_and_then_from_the_defaults()
    {
        using var disk = PackDisk.WithExample();
        var settings = Read(
            [
                ("FindingRules:Packs:0", disk.Root), ("FindingRules:Limits:StudyBytes", "2048"), ("urls", "http://+:81"),
                ("FindingRules:Actor", "ward-3"),
            ],
            out var messages);
        Assert.Equal("ward-3", settings.Ledger.Actor);
        Assert.Empty(messages.Sorted());
        Assert.Equal<string>([disk.Root], settings.PackFolders);
        Assert.Equal<string>(["http://+:81"], settings.Urls);
        Assert.Equal(new ServiceLimits { StudyBytes = 2048 }, settings.Limits);
        Assert.Equal(2048, settings.ForStudies.StudyBytes);
    }

    [Fact]
    public void Nothing_said_listens_on_this_machine_only()
    {
        var settings = Read([], out var messages);
        Assert.Equal<string>([ServiceOptions.DefaultUrl], settings.Urls);
        Assert.Equal(["FR7043"], messages.Sorted().Select(m => m.Code));
    }

    [Theory]
    [InlineData("FindingRules:Limits:StudyBytes", "1MB", "FR7041")]
    [InlineData("FindingRules:Limits:StudyBytes", "0", "FR7041")]
    [InlineData("FindingRules:Limits:StudyBytes", "99999999999", "FR7041")]
    [InlineData("FindingRules:Limits:StudyByte", "2048", "FR7042")]
    [InlineData("FindingRules:Limit:StudyBytes", "2048", "FR7042")]
    [InlineData("FindingRules:Actor", "Ward 3, day shift", "FR7041")]
    [InlineData("FindingRules:Actor", "a23456789-123456789-123456789-123456789-123456789-123456789-12345", "FR7041")]
    [InlineData("FindingRules:RetentionDays", "0", "FR7041")]
    [InlineData("FindingRules:RetentionDays", "ten", "FR7041")]
    [InlineData("urls", "8080", "FR7041")]
    [InlineData("urls", "ftp://127.0.0.1", "FR7041")]
    public void A_setting_that_is_not_understood_is_said(string name, string value, string code)
    {
        using var disk = PackDisk.WithExample();
        Read([("FindingRules:Packs:0", disk.Root), (name, value)], out var messages);
        Assert.Equal([code], messages.Sorted().Select(m => m.Code));
    }

    private static ServiceSettings Read((string Name, string Value)[] settings, out MessageBag messages)
    {
        messages = new MessageBag();
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(s => KeyValuePair.Create(s.Name, (string?)s.Value))).Build();
        return ServiceSettings.Read(new ServiceOptions(), configuration, messages);
    }

    private static async Task<(int Code, string Errors)> RunAsync(ServiceOptions options)
    {
        using var errors = new StringWriter();
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        var code = await ServiceHost.RunAsync(options, errors, stop.Token);
        return (code, errors.ToString());
    }
}
