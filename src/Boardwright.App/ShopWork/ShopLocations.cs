using Boardwright.Shops;
using Boardwright.Shops.Postgres;
using Boardwright.Shops.Sqlite;

namespace Boardwright.App.ShopWork;

/// <summary>Finds the shop that is meant: by a word of the user, by the environment, or the user's own.</summary>
static class ShopLocations
{
    /// <summary>Opens the shop.</summary>
    /// <param name="named">A file or a connection string, or <c>null</c>.</param>
    /// <param name="cancel">Stops it.</param>
    public static Task<Shop> OpenAsync(string? named, CancellationToken cancel) => Shop.OpenAsync(Find(named), TimeProvider.System, cancel);

    /// <summary>The place that is meant.</summary>
    public static ShopLocation Find(string? named)
    {
        var place = named ?? Environment.GetEnvironmentVariable("BOARDWRIGHT_SHOP");
        if (string.IsNullOrWhiteSpace(place))
            return new SqliteLocation(SqliteLocation.DefaultPath);
        return PostgresLocation.IsMeantBy(place) ? new PostgresLocation(place) : new SqliteLocation(place);
    }

    /// <summary>Brings a backup back: a file for a shop in a file, an exported folder for every shop.</summary>
    /// <returns>Where the state before is, or <c>null</c> when there was none.</returns>
    public static async Task<string?> RecoverAsync(string? named, string source, CancellationToken cancel)
    {
        var place = Find(named);
        if (place is SqliteLocation file)
            return await file.RecoverAsync(source, TimeProvider.System, cancel);
        if (!Directory.Exists(source))
            throw new ShopException(ShopError.NotThere, $"There is no folder {source}, and a shop in PostgreSQL is recovered from an exported folder.", "Name the folder that backup or export wrote.");
        await using var shop = await Shop.OpenAsync(place, TimeProvider.System, cancel);
        return await shop.ReplaceAsync(source, cancel);
    }
}
