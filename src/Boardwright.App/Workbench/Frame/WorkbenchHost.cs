using System.Security.Cryptography.X509Certificates;
using Boardwright.App.ShopWork;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.App.Workbench.BuiltPages;
using Boardwright.App.Workbench.ComparePages;
using Boardwright.App.Workbench.LearnPages;
using Boardwright.App.Workbench.PaperPages;
using Boardwright.App.Workbench.RidePages;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Logging;

namespace Boardwright.App.Workbench.Frame;

/// <summary>How the workbench is started.</summary>
/// <param name="File">The board file to open; <c>null</c> for the example.</param>
sealed record WorkbenchStart(string? File)
{
    /// <summary>Port on the loopback address; 0 for any that is free.</summary>
    public int Port { get; init; }
    /// <summary>The shop, a file or a connection string; <c>null</c> for the user's own.</summary>
    public string? Shop { get; init; }
    /// <summary>From where it can be reached; beyond this machine it asks for a sign-in.</summary>
    public ListenAddress Reach { get; init; } = ListenAddress.ThisMachine;
    /// <summary>How many boards like the open one are examined to say how well its figures are known, 8 or more.</summary>
    public int Samples { get; init; } = Spreads.Spread.DefaultPoints;
    /// <summary>What encrypts the connection; <c>null</c> for none.</summary>
    public X509Certificate2? Certificate { get; init; }
}

/// <summary>The workbench's web server: pages for a browser on this machine, or for those who sign in, and nothing that reaches
/// out.</summary>
static class WorkbenchHost
{
    const string FirstPage = "/board";

    /// <summary>A server that is ready to be started.</summary>
    /// <param name="start">How it is started.</param>
    /// <param name="boards">The boards that it opens; they outlive it.</param>
    public static WebApplication Build(WorkbenchStart start, OpenBoards boards)
    {
        // The static files lie beside the program, wherever it was started from.
        var builder = WebApplication.CreateSlimBuilder(
            new WebApplicationOptions
            {
                ContentRootPath = AppContext.BaseDirectory,
                ApplicationName = typeof(WorkbenchHost).Assembly.GetName().Name
            });
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.UseKestrelCore().UseKestrelHttpsConfiguration().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Listen(start.Reach.Address, start.Port, listening =>
            {
                if (start.Certificate is { } certificate)
                    listening.UseHttps(certificate);
            });
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        // A cookie of an earlier start cannot be read any more, and is given anew.
        builder.Logging.AddFilter("Microsoft.AspNetCore.Antiforgery", LogLevel.Critical);
        builder.Services.AddRazorComponents().AddInteractiveServerComponents();
        builder.Services.AddSingleton(boards);
        builder.Services.AddScoped<CurrentUser>();
        builder.Services.AddSingleton(new BuiltJudge(static examination => Spreads.Spread.Sample(examination).Intervals));
        builder.Services.AddScoped(_ => new EditSession(start.Samples));
        builder.Services.AddScoped<KeyboardShortcuts>();
        builder.Services.AddScoped<PageScript>();
        builder.Services.AddScoped<RideSession>();
        builder.Services.AddScoped<LogSession>();
        builder.Services.AddScoped<Comparison>();
        if (start.Reach.IsThisMachine)
        {
            builder.Services.AddHostFiltering(static options => options.AllowedHosts = ["localhost", "127.0.0.1", "[::1]"]);
            // A page does not outlive the program, and neither need the keys that its marks are signed with: nothing is left in the user's
            // folders.
            builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        }
        else
        {
            SignInServices.Register(builder.Services, ShopLocations.Find(start.Shop), start.Certificate is not null);
        }

        builder.Services.AddSingleton<PaperSessions>();
        builder.Services.AddScoped<PaperSession>();
        builder.Services.AddScoped<BuildSession>();
        var app = builder.Build();
        app.Use(static (context, next) =>
        {
            // Pages that run only what this program serves, and are shown in no other page's frame.
            context.Response.Headers.ContentSecurityPolicy = "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'; frame-ancestors 'none'; base-uri 'self'; form-action 'self'";
            context.Response.Headers.XContentTypeOptions = "nosniff";
            return next(context);
        });
        // A name of elsewhere that is made to lead to this machine would let a stranger's page in.
        if (start.Reach.IsThisMachine)
            app.UseHostFiltering().UseAntiforgery();
        else
            SignInServices.Use(app);
        app.MapStaticAssets().AllowAnonymous();
        app.MapGet("/", () => Results.Redirect(FirstPage));
        app.MapGet("/papers/of/{token}/{name}", (string token, string name, PaperSessions papers) => papers.Answer(token, name));
        app.MapGet(BuiltFiles.Route, BuiltFiles.GetAsync);
        app.MapRazorComponents<Root>().AddInteractiveServerRenderMode(options => options.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    /// <summary>The addresses under which a started server answers, the handiest first.</summary>
    public static IReadOnlyList<string> AddressesOf(WebApplication app, WorkbenchStart start)
    {
        var bound = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
        return start.Reach.AddressesAt(bound.Scheme, bound.Port);
    }

    /// <summary>Examines the first board once for nobody, while the server is being built, so that its code is ready.</summary>
    public static Task RehearseAsync(OpenBoards boards) => Task.Run(async () =>
    {
        using var session = new EditSession();
        await session.OpenAsync(await boards.FirstAsync(new CurrentUser()));
    });

    /// <summary>Answers for the first page and renders it once for nobody, while the server starts, so that the first visitor need not wait
    /// for code to be made.</summary>
    public static Task WarmUpAsync(WebApplication app) => Task.Run(async () =>
    {
        await using var scope = app.Services.CreateAsyncScope();
        await VisitAsync(app, scope.ServiceProvider, FirstPage);
        await VisitAsync(app, scope.ServiceProvider, "workbench.css");
        await scope.ServiceProvider.GetRequiredService<EditSession>()
            .OpenAsync(await app.Services.GetRequiredService<OpenBoards>().FirstAsync(new CurrentUser()));
        await using var renderer = new HtmlRenderer(scope.ServiceProvider, app.Services.GetRequiredService<ILoggerFactory>());
        await renderer.Dispatcher.InvokeAsync(() => renderer.RenderComponentAsync<BoardPage>());
    });

    static Task VisitAsync(WebApplication app, IServiceProvider services, string place)
    {
        var endpoint = ((IEndpointRouteBuilder)app).DataSources.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .First(endpoint => endpoint.RoutePattern.RawText == place);
        var visit = new DefaultHttpContext { RequestServices = services };
        (visit.Request.Method, visit.Request.Scheme, visit.Request.Host, visit.Request.Path) =
            (HttpMethods.Get, Uri.UriSchemeHttp, new HostString("localhost"), new PathString("/" + place.TrimStart('/')));
        visit.SetEndpoint(endpoint);
        return endpoint.RequestDelegate!(visit);
    }
}
