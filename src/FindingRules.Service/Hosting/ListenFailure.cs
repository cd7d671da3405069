using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;

namespace FindingRules.Service.Hosting;

/// <summary>Why the server could not listen at an address, in the words of whoever chose it.</summary>
internal static class ListenFailure
{
    /// <summary>Null where the failure was another one.</summary>
    public static string? Why(Exception failure) => failure switch
    {
        IOException { InnerException: AddressInUseException } => "something else listens there",
        SocketException { SocketErrorCode: SocketError.AccessDenied } => "this user may not use the port",
        SocketException or IOException => "it is not an address of this machine",
        InvalidOperationException e when e.Message.Contains("certificate", StringComparison.OrdinalIgnoreCase) =>
            "https needs a certificate, which the settings of the server under `Kestrel` can name",
        _ => null,
    };
}
