using System.Security.Claims;
using Boardwright.Shops;

namespace Boardwright.App.Workbench.Frame;

/// <summary>Who works on these pages: the one who signed in, or the user of this machine where nobody has to.</summary>
sealed class CurrentUser
{
    /// <summary>Name under which revisions are saved.</summary>
    public string Name { get; private set; } = Environment.UserName is { Length: > 0 } name ? name : "builder";
    /// <summary>Whether somebody signed in.</summary>
    public bool IsSignedIn { get; private set; }

    /// <summary>Takes over who signed in.</summary>
    public void Know(ClaimsPrincipal person)
    {
        if (person.Identity is { IsAuthenticated: true, Name: { Length: > 0 } name })
            (Name, IsSignedIn) = (name, true);
    }

    /// <summary>The name below a change.</summary>
    /// <param name="why">Why it is made.</param>
    public Signature Sign(string why) => new(Name, why);
}
