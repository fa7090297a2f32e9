using System.Data.Common;
using Boardwright.App.Workbench.BoardPages;
using Boardwright.Shops;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;

namespace Boardwright.App.Workbench.Frame;

/// <summary>The sign-in of a workbench that others can reach: nothing but this page and its style is shown to anyone who has not signed
/// in.</summary>
static class SignInServices
{
    const string Page = "/sign-in";

    /// <summary>Adds what a sign-in needs.</summary>
    /// <param name="services">The services of the program.</param>
    /// <param name="place">The shop whose people may come in.</param>
    /// <param name="isPrivate">Whether the connection is encrypted, so that the cookie may go over no other.</param>
    public static void Register(IServiceCollection services, ShopLocation place, bool isPrivate)
    {
        People.Register(services, place).AddSignInManager();
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddCookie(IdentityConstants.ApplicationScheme, options =>
        {
            options.LoginPath = Page;
            options.ReturnUrlParameter = "to";
            options.Cookie.Name = "boardwright";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.Cookie.SecurePolicy = isPrivate ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest;
            options.ExpireTimeSpan = TimeSpan.FromDays(14);
            options.Events.OnValidatePrincipal = ValidateAsync;
        });
        // How soon a password that was changed, or a person who was removed, counts.
        services.Configure<SecurityStampValidatorOptions>(static options => options.ValidationInterval = TimeSpan.FromMinutes(1));
        services.AddScoped<ISecurityStampValidator, SecurityStampValidator<Person>>();
        services.AddAuthorizationBuilder().SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
        services.AddDataProtection().SetApplicationName("boardwright")
            .PersistKeysToFileSystem(new DirectoryInfo(Path.Combine(ShopLocation.UserFolder, "keys")));
    }

    /// <summary>Asks everybody for it.</summary>
    public static void Use(WebApplication app)
    {
        app.UseAuthentication();
        app.UseAuthorization();
        app.UseAntiforgery();
        app.MapGet(Page, static (string? to) => Shown(to, "", null)).AllowAnonymous();
        app.MapPost(Page, EnterAsync).AllowAnonymous();
        app.MapPost("/sign-out", static async (SignInManager<Person> signIn) =>
        {
            await signIn.SignOutAsync();
            return Results.LocalRedirect(Page);
        });
    }

    /// <summary>Its own address, with the page that was asked for.</summary>
    public static string AddressTo(string? to) => to is null ? Page : $"{Page}?to={Uri.EscapeDataString(to)}";

    static async Task<IResult> EnterAsync(
        SignInManager<Person> signIn, OpenBoards boards, HttpContext context, [FromForm] string? name, [FromForm] string? password,
        string? to)
    {
        try
        {
            // The shop says in its own words what is wrong with it; Identity would not.
            var shop = await boards.ShopAsync(context.RequestAborted);
            var result = await shop.Explained(
                () => signIn.PasswordSignInAsync((name ?? "").Trim(), password ?? "", isPersistent: true, lockoutOnFailure: true));
            if (result.Succeeded)
                return Results.LocalRedirect(IsOurs(to) ? to! : "/board");
            return Shown(to, name, result.IsLockedOut
                ? FormattableString.Invariant($"After {People.MostAttempts} failed attempts this name has to wait {People.Wait.TotalMinutes:0} minutes.")
                : "Name and password do not belong together.");
        }
        catch (ShopException trouble)
        {
            return Shown(to, name, trouble.Message);
        }
    }

    // A database that does not answer just now is no reason to send someone out who came in before.
    static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        try
        {
            await SecurityStampValidator.ValidatePrincipalAsync(context);
        }
        catch (Exception fault) when (fault is DbException or { InnerException: DbException })
        {
            context.ShouldRenew = false;
        }
    }

    static RazorComponentResult<SignIn> Shown(string? to, string? name, string? refused) =>
        new(new { To = IsOurs(to) ? to : null, Name = name ?? "", Refused = refused })
        {
            StatusCode = refused is null
        ? StatusCodes.Status200OK : StatusCodes.Status401Unauthorized
        };

    // A link that leads away from here after a sign-in would be a trap.
    static bool IsOurs(string? to) => to is ['/', not ('/' or '\\'), ..] or "/";
}
