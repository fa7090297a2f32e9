using System.Globalization;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Logging;

namespace Boardwright.App.Workbench;

/// <summary>How the workbench is started.</summary>
/// <param name="File">The board file to open; <c>null</c> for the example.</param>
sealed record WorkbenchStart(string? File)
{
    /// <summary>Port on the loopback address; 0 for any that is free.</summary>
    public int Port { get; init; }

    /// <summary>The word that lets other machines of the network in, a phone at the bench among them; <c>null</c> where only this machine is let in.</summary>
    public string? Key { get; init; }

    /// <summary>The shop, a file or a connection string; <c>null</c> for the user's own.</summary>
    public string? Shop { get; init; }
}

/// <summary>The workbench's web server: pages for a browser on this machine, and nothing that reaches out of it.</summary>
static class WorkbenchHost
{
    /// <summary>A server that is ready to be started.</summary>
    public static WebApplication Build(WorkbenchStart start)
    {
        // The static files lie beside the program, wherever it was started from.
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory, ApplicationName = typeof(WorkbenchHost).Assembly.GetName().Name });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Listen(start.Key is null ? IPAddress.Loopback : IPAddress.Any, start.Port);
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.AddSingleton(new OpenBoards(start));
        builder.Services.AddSingleton(new Judge(static examination => Spreads.Spread.Of(examination).Intervals));
        builder.Services.AddScoped<Desk>();
        builder.Services.AddScoped<Keys>();
        builder.Services.AddScoped<Outing>();
        builder.Services.AddScoped<Logbook>();
        builder.Services.AddScoped<Comparison>();
        builder.Services.AddScoped<Bench>();
        var app = builder.Build();
        app.Use(static (context, next) =>
        {
            // Pages that run only what this program serves, and are shown in no other page's frame.
            context.Response.Headers.ContentSecurityPolicy = "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; frame-ancestors 'none'; base-uri 'self'; form-action 'self'";
            context.Response.Headers.XContentTypeOptions = "nosniff";
            return next(context);
        });
        if (start.Key is { } key)
            app.Use((context, next) => LetIn(context, key, next));
        app.UseAntiforgery();
        app.MapStaticAssets();
        app.MapGet("/", () => Results.Redirect("/board"));
        app.MapGet(BuiltFiles.Route, BuiltFiles.GetAsync);
        app.MapRazorComponents<Root>().AddInteractiveServerRenderMode(options => options.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    // Who knows the word is let in once, and known by a cookie from then on; this machine needs none.
    static Task LetIn(HttpContext context, string key, RequestDelegate next)
    {
        const string Cookie = "boardwright";
        bool Is(string? said) => said is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(said), Encoding.UTF8.GetBytes(key));
        if (Is(context.Request.Query["key"]))
        {
            context.Response.Cookies.Append(Cookie, key, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Lax, MaxAge = TimeSpan.FromDays(30) });
            context.Response.Redirect(context.Request.Path);
            return Task.CompletedTask;
        }

        if (Is(context.Request.Cookies[Cookie]) || (context.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from)))
            return next(context);
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return context.Response.WriteAsync("Open the whole address that the workbench printed when it was started.");
    }

    /// <summary>The addresses under which other machines of the network reach it.</summary>
    public static IReadOnlyList<string> NetworkAddressesOf(WebApplication app, string key) =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces().Where(static card => card.OperationalStatus == OperationalStatus.Up)
            .SelectMany(static card => card.GetIPProperties().UnicastAddresses).Select(static address => address.Address)
            .Where(static address => address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(address))
            .Select(address => $"http://{address}:{new Uri(AddressesOf(app)[0]).Port.ToString(CultureInfo.InvariantCulture)}/built?key={key}"),
    ];

    /// <summary>The addresses under which a started server answers.</summary>
    public static IReadOnlyList<string> AddressesOf(WebApplication app) =>
        [.. app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses];

    /// <summary>Reads and examines the board once, so that the first page need not wait for code to be made.</summary>
    public static void WarmUp(WebApplication app) => _ = Task.Run(async () =>
    {
        using var desk = new Desk();
        await desk.OpenAsync(await app.Services.GetRequiredService<OpenBoards>().FirstAsync());
    });
}
