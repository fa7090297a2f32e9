using System.Data.Common;
using Microsoft.EntityFrameworkCore;

namespace Boardwright.Shops;

/// <summary>Where a shop is kept: which database, how it is made ready, and what its errors mean.</summary>
public abstract class ShopLocation : IDbContextFactory<ShopContext>
{
    /// <summary>The folder in which the program keeps what is this user's: the shop in a file, backups, and what signed-in people are known
    /// by.</summary>
    public static string UserFolder { get; } = Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "boardwright");
    /// <summary>The place as it may be shown: a path, or a server without its password.</summary>
    public abstract string Shown { get; }
    /// <summary>Whether there may be something in it; told without opening it.</summary>
    public abstract bool MayHoldSomething { get; }
    /// <summary>Further settings of each context, by which tests stand for a later program.</summary>
    internal Func<DbContextOptions<ShopContext>, DbContextOptions<ShopContext>> Further { get; set; } = static options => options;

    /// <inheritdoc/>
    public abstract ShopContext CreateDbContext();

    /// <summary>Refuses tables of which this program does not know how they came about.</summary>
    /// <param name="applied">The migrations that made them.</param>
    /// <param name="known">The program's own, in their order.</param>
    internal void CheckHistory(IEnumerable<string> applied, IEnumerable<string> known)
    {
        if (applied.Except(known, StringComparer.Ordinal).Max(StringComparer.Ordinal) is not { } other)
            return;
        // A migration's name begins with its date; the first that is known is that of the first release.
        throw string.CompareOrdinal(other, known.First()) < 0
            ? new ShopException(
                ShopError.NotOurs,
                $"{Shown} was kept by a Boardwright from before the first release; nothing in it was changed.",
                "Write it out with that one, boardwright shop export FOLDER, and read the folder into a new shop with boardwright shop import FOLDER.")
            : new ShopException(ShopError.NotOurs, $"{Shown} was kept by a newer Boardwright.", "Use that one.");
    }

    /// <summary>Checks the database, backs it up where its tables are older than the program, and brings them up to date.</summary>
    /// <returns>Whether tables were changed, so that what is made from the texts has to be made anew.</returns>
    internal abstract Task<bool> PrepareAsync(TimeProvider time, CancellationToken cancel);

    /// <summary>Opens a connection that answers.</summary>
    internal abstract Task ConnectAsync(ShopContext context, CancellationToken cancel);
    /// <summary>Begins to read the state of one moment.</summary>
    internal abstract Task<DbTransaction> BeginReadingAsync(ShopContext context, CancellationToken cancel);

    /// <summary>What an error of the database means to a person.</summary>
    /// <returns>The trouble, or <c>null</c> when it is none of those that can befall a sound program.</returns>
    internal abstract ShopException? Explain(Exception fault);

    /// <summary>Whether a row was refused because another one with the same key came first.</summary>
    internal abstract bool IsDuplicate(Exception fault);

    /// <summary>Writes a backup and makes sure that it is on the disk.</summary>
    /// <returns>Where it is.</returns>
    internal abstract Task<string> BackUpAsync(Shop shop, string? target, TimeProvider time, CancellationToken cancel);

    /// <summary>Lets go of everything that is held open.</summary>
    internal abstract void Close();
    /// <summary>A time as it stands in file names, UTC.</summary>
    internal static string Dated(TimeProvider time) =>
        time.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd'T'HHmmss'Z'", System.Globalization.CultureInfo.InvariantCulture);
}
