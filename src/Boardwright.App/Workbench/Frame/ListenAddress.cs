using System.Globalization;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Boardwright.App.Workbench.Frame;

/// <summary>From where a workbench can be reached.</summary>
/// <param name="Address">The address that it listens on.</param>
sealed record ListenAddress(IPAddress Address)
{
    /// <summary>This machine only.</summary>
    public static ListenAddress ThisMachine { get; } = new(IPAddress.Loopback);
    /// <summary>Whether nobody but this machine reaches it.</summary>
    public bool IsThisMachine => IPAddress.IsLoopback(Address);

    /// <summary>Reads what a person writes: an address, or <c>any</c> for every one that this machine has.</summary>
    /// <returns>The reach, or <c>null</c> when it is neither.</returns>
    public static ListenAddress? Read(string text) =>
        text.Equals("any", StringComparison.OrdinalIgnoreCase) ? new(Socket.OSSupportsIPv6 ? IPAddress.IPv6Any : IPAddress.Any)
        : IPAddress.TryParse(text, out var address) ? new(address)
        : null;

    /// <summary>The addresses under which a browser finds it.</summary>
    /// <param name="scheme"><c>http</c> or <c>https</c>.</param>
    /// <param name="port">The port that it listens on.</param>
    public IReadOnlyList<string> AddressesAt(string scheme, int port) =>
        [.. Own().Select(address => $"{scheme}://{(address.AddressFamily == AddressFamily.InterNetworkV6 ? $"[{address}]" : address)}:{port.ToString(CultureInfo.InvariantCulture)}")];

    IEnumerable<IPAddress> Own()
    {
        if (!Address.Equals(IPAddress.Any) && !Address.Equals(IPAddress.IPv6Any))
            return [Address];
        // Addresses of one link only would need the browser to know the link; the others are enough.
        var all = NetworkInterface.GetAllNetworkInterfaces()
            .Where(static card => card.OperationalStatus == OperationalStatus.Up)
            .SelectMany(static card => card.GetIPProperties().UnicastAddresses)
            .Select(static unicast => unicast.Address)
            .Where(static address => !address.IsIPv6LinkLocal
            && address.AddressFamily is AddressFamily.InterNetwork or AddressFamily.InterNetworkV6);
        return all.Where(address => Address.Equals(IPAddress.IPv6Any) || address.AddressFamily == AddressFamily.InterNetwork)
            .OrderBy(IPAddress.IsLoopback).ThenBy(static address => address.AddressFamily == AddressFamily.InterNetworkV6)
            .ThenBy(static address => address.ToString(), StringComparer.Ordinal);
    }
}
