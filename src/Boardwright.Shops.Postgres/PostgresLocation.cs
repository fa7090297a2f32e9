using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Npgsql;

namespace Boardwright.Shops.Postgres;

/// <summary>A shop in a PostgreSQL database of its own.</summary>
public sealed class PostgresLocation : ShopLocation
{
    readonly NpgsqlConnectionStringBuilder connection;
    readonly DbContextOptions<ShopContext> options;

    /// <summary>A shop in a database.</summary>
    /// <param name="connectionString">Npgsql's words, such as <c>Host=shop;Database=boardwright;Username=boardwright</c>, or an address
    /// such as <c>postgresql://boardwright@shop/boardwright</c>.</param>
    /// <exception cref="ShopException">The words cannot be understood.</exception>
    public PostgresLocation(string connectionString)
    {
        connection = Read(connectionString);
        options = new DbContextOptionsBuilder<ShopContext>()
            .UseNpgsql(Words, static postgres => postgres.MigrationsAssembly(typeof(PostgresLocation).Assembly.GetName().Name))
            .Options;
    }

    /// <inheritdoc/>
    public override string Shown => FormattableString.Invariant($"postgresql://{connection.Host}:{connection.Port}/{connection.Database}");

    /// <inheritdoc/>
    public override bool MayHoldSomething => true;

    /// <summary>The connection string, with the password.</summary>
    internal string Words => connection.ConnectionString;
    /// <summary>The folder for backups that nobody named.</summary>
    public string BackupFolder { get; init; } = Path.Combine(UserFolder, "backups");

    /// <summary>Whether a text names a PostgreSQL database, not a file.</summary>
    public static bool IsMeantBy(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.StartsWith("postgres://", StringComparison.OrdinalIgnoreCase) || text.StartsWith("postgresql://", StringComparison.OrdinalIgnoreCase)
            || text.Split(';').Any(static word => word.TrimStart().StartsWith("Host=", StringComparison.OrdinalIgnoreCase)
            || word.TrimStart().StartsWith("Server=", StringComparison.OrdinalIgnoreCase));
    }

    /// <inheritdoc/>
    public override ShopContext CreateDbContext() => new(Further(options));

    internal override async Task<bool> PrepareAsync(TimeProvider time, CancellationToken cancel)
    {
        await using var context = CreateDbContext();
        await ConnectAsync(context, cancel);
        var applied = (await context.Database.GetAppliedMigrationsAsync(cancel)).ToList();
        CheckHistory(applied, context.Database.GetMigrations());
        if (applied.Count == context.Database.GetMigrations().Count())
            return false;
        if (applied.Count > 0)
            await TableCopy.WriteAsync(
                (NpgsqlConnection)context.Database.GetDbConnection(), applied[^1], Path.Combine(BackupFolder, $"{connection.Database}-before-update-{Dated(time)}"), cancel);
        await context.Database.MigrateAsync(cancel);
        return true;
    }

    internal override async Task ConnectAsync(ShopContext context, CancellationToken cancel)
    {
        try
        {
            await context.Database.OpenConnectionAsync(cancel);
            await AnswerAsync(context, cancel);
        }
        catch (Exception fault) when (Explain(fault) is { Kind: ShopError.Unreachable })
        {
            // Connections that were kept from before the server stopped are dead; a new one may live.
            await context.Database.CloseConnectionAsync();
            Close();
            await context.Database.OpenConnectionAsync(cancel);
        }
    }

    internal override async Task<DbTransaction> BeginReadingAsync(ShopContext context, CancellationToken cancel) =>
        await context.Database.GetDbConnection().BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel);

    internal override ShopException? Explain(Exception fault) => fault switch
    {
        PostgresException { SqlState: PostgresErrorCodes.DiskFull } => new(ShopError.Full, $"The disk of {Shown} is full; the last saved state is as it was.", "Make room on the server and save again.", fault),
        PostgresException
        {
            SqlState: PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.DeadlockDetected
            or PostgresErrorCodes.SerializationFailure or PostgresErrorCodes.QueryCanceled
        } =>
            new(ShopError.Busy, $"Others hold what was to be changed in {Shown}; nothing was changed.", "Try again.", fault),
        PostgresException { SqlState: PostgresErrorCodes.TooManyConnections } => new(ShopError.Busy, $"{Shown} takes no more connections.", "Try again later.", fault),
        PostgresException { SqlState: PostgresErrorCodes.InvalidCatalogName } => new(ShopError.Unreachable, $"There is no database {connection.Database} on {connection.Host}.", $"Have it made: createdb {connection.Database}", fault),
        PostgresException { SqlState: PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification } =>
            new(ShopError.Unreachable, $"{Shown} refuses the user or the password.", "Check both in the connection string.", fault),
        PostgresException { SqlState: PostgresErrorCodes.InsufficientPrivilege } => new(ShopError.Unreachable, $"{Shown} does not let this user do that.", "Make the user the owner of the database.", fault),
        PostgresException { SqlState: PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted } =>
            new(ShopError.Damaged, $"{Shown} says that its data are damaged.", "Have the server looked after, and recover from a backup.", fault),
        PostgresException
        {
            SqlState: PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown
            or PostgresErrorCodes.CannotConnectNow
        } => Unreachable(fault),
        PostgresException => null,
        NpgsqlException or System.Net.Sockets.SocketException or TimeoutException => Unreachable(fault),
        _ => null,
    };

    internal override bool IsDuplicate(Exception fault) =>
        fault is DbUpdateException { InnerException: PostgresException { SqlState: PostgresErrorCodes.UniqueViolation } };

    internal override async Task<string> BackUpAsync(Shop shop, string? target, TimeProvider time, CancellationToken cancel)
    {
        // The tools of the server need not be here, and an exported folder can be read anywhere.
        var folder = target ?? Path.Combine(BackupFolder, $"{connection.Database}-{Dated(time)}");
        await shop.ExportAsync(folder, null, cancel);
        return folder;
    }

    internal override void Close()
    {
        using var any = new NpgsqlConnection(Words);
        NpgsqlConnection.ClearPool(any);
    }

    ShopException Unreachable(Exception fault) => new(ShopError.Unreachable, $"{Shown} does not answer; what was acknowledged before is saved.", "Check that the server runs and can be reached, and try again.", fault);

    static async Task AnswerAsync(ShopContext context, CancellationToken cancel)
    {
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = "SELECT 1";
        await command.ExecuteScalarAsync(cancel);
    }

    static NpgsqlConnectionStringBuilder Read(string text)
    {
        try
        {
            if (!text.Contains("://", StringComparison.Ordinal))
                return Completed(new(text));
            var address = new Uri(text);
            var user = address.UserInfo.Split(':', 2);
            return Completed(new()
            {
                Host = address.Host,
                Port = address.Port > 0 ? address.Port : 5432,
                Database = Uri.UnescapeDataString(address.AbsolutePath.TrimStart('/')),
                Username = Uri.UnescapeDataString(user[0]) is { Length: > 0 } name ? name : null,
                Password = user.Length > 1 ? Uri.UnescapeDataString(user[1]) : null,
            });
        }
        catch (Exception fault) when (fault is ArgumentException or UriFormatException or FormatException or KeyNotFoundException)
        {
            // The text itself is not shown: it may hold a password.
            throw new ShopException(ShopError.Refused, "The connection string cannot be understood.", "Write it as Host=NAME;Database=NAME;Username=NAME;Password=… or postgresql://USER@HOST/DATABASE.", fault);
        }
    }

    static NpgsqlConnectionStringBuilder Completed(NpgsqlConnectionStringBuilder builder)
    {
        if (string.IsNullOrEmpty(builder.Database))
            builder.Database = "boardwright";
        builder.ApplicationName ??= "boardwright";
        return builder;
    }
}

/// <summary>Makes the model for the tool that writes migrations.</summary>
sealed class PostgresContextFactory : IDesignTimeDbContextFactory<ShopContext>
{
    public ShopContext CreateDbContext(string[] args) => new PostgresLocation("Host=localhost;Database=boardwright").CreateDbContext();
}
