using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace Boardwright.Shops;

/// <summary>Someone who may sign in where the workbench is reached over a network.</summary>
public sealed class Person : IdentityUser;

/// <summary>The people of a shop. Passwords are kept as Identity keeps them, salted and stretched, and never as they are.</summary>
/// <remarks>They stay out of an exported folder, and are in a backup of a shop in a file.</remarks>
/// <param name="shop">The shop, made ready.</param>
public sealed class People(Shop shop)
{
    /// <summary>Least length of a password. Length and not the kinds of letters counts, after NIST SP 800-63B.</summary>
    public const int ShortestPassword = 12;
    /// <summary>Failed attempts in a row after which a name has to wait.</summary>
    public const int MostAttempts = 5;
    /// <summary>How long it waits.</summary>
    public static TimeSpan Wait { get; } = TimeSpan.FromMinutes(5);

    /// <summary>Adds Identity over a shop's own database to a program's services.</summary>
    /// <param name="services">The services.</param>
    /// <param name="place">Where the shop is kept.</param>
    public static IdentityBuilder Register(IServiceCollection services, ShopLocation place)
    {
        services.AddScoped(_ => place.CreateDbContext());
        return services.AddIdentityCore<Person>(static options =>
        {
            options.User.AllowedUserNameCharacters = "";
            options.Password.RequiredLength = ShortestPassword;
            options.Password.RequireDigit = options.Password.RequireLowercase = options.Password.RequireUppercase =
                options.Password.RequireNonAlphanumeric = false;
            options.Password.RequiredUniqueChars = 4;
            options.Lockout.MaxFailedAccessAttempts = MostAttempts;
            options.Lockout.DefaultLockoutTimeSpan = Wait;
        }).AddEntityFrameworkStores<ShopContext>();
    }

    /// <summary>Names of those who may sign in, in order.</summary>
    public Task<IReadOnlyList<string>> ListAsync() => With<IReadOnlyList<string>>(static people =>
        Task.FromResult<IReadOnlyList<string>>(
        [.. people.Users.Select(static person => person.UserName!).AsEnumerable().Order(StringComparer.OrdinalIgnoreCase)]));

    /// <summary>Lets someone sign in.</summary>
    /// <exception cref="ShopException">The name is taken or empty, or the password too short.</exception>
    public Task AddAsync(string name, string password) =>
        With(async people => Settled(await people.CreateAsync(new Person { UserName = name.Trim() }, password)));

    /// <summary>Gives someone another password, and ends what was signed in with the old one.</summary>
    /// <exception cref="ShopException">There is nobody of that name, or the password is too short.</exception>
    public Task ChangePasswordAsync(string name, string password) => With(async people =>
    {
        var person = await FindAsync(people, name);
        // The new one is judged before the old one is taken away.
        foreach (var judge in people.PasswordValidators)
            Settled(await judge.ValidateAsync(people, person, password));
        Settled(await people.RemovePasswordAsync(person));
        Settled(await people.AddPasswordAsync(person, password));
        return Settled(await people.SetLockoutEndDateAsync(person, null));
    });

    /// <summary>Lets someone sign in no more. The revisions that they saved keep their name.</summary>
    /// <exception cref="ShopException">There is nobody of that name.</exception>
    public Task RemoveAsync(string name) => With(async people => Settled(await people.DeleteAsync(await FindAsync(people, name))));

    Task<T> With<T>(Func<UserManager<Person>, Task<T>> ask) => shop.Explained(async () =>
    {
        var services = new ServiceCollection().AddLogging();
        Register(services, shop.Place);
        await using var all = services.BuildServiceProvider();
        await using var scope = all.CreateAsyncScope();
        return await ask(scope.ServiceProvider.GetRequiredService<UserManager<Person>>());
    });

    async Task<Person> FindAsync(UserManager<Person> people, string name) => await people.FindByNameAsync(name.Trim())
        ?? throw new ShopException(ShopError.NotThere, $"Nobody called {name} may sign in to the shop {shop.Place.Shown}.", "See who may with: boardwright shop people list");

    static bool Settled(IdentityResult result) =>
        result.Succeeded ? true : throw new ShopException(ShopError.Refused, string.Join(" ", result.Errors.Select(Describe)), "Give another one.");

    static string Describe(IdentityError error) => error.Code switch
    {
        nameof(IdentityErrorDescriber.DuplicateUserName) => "Somebody of that name may sign in already.",
        nameof(IdentityErrorDescriber.InvalidUserName) => "A name has at least one letter.",
        nameof(IdentityErrorDescriber.PasswordTooShort) => FormattableString.Invariant($"A password has at least {ShortestPassword} letters; a few words in a row do well."),
        nameof(IdentityErrorDescriber.PasswordRequiresUniqueChars) => "A password has at least four different letters.",
        _ => error.Description,
    };
}
