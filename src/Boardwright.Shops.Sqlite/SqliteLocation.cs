using System.Data.Common;
using Boardwright.Files;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Boardwright.Shops.Sqlite;

/// <summary>A shop in one file.</summary>
/// <remarks>
/// The file is kept with a write-ahead log and <c>synchronous=FULL</c>: a save is on the disk when it is acknowledged, and
/// a program or a machine that stops in the middle of one leaves the state before it.
/// </remarks>
public sealed class SqliteLocation : ShopLocation
{
    static readonly string[] Endings = ["-wal", "-shm", ""];
    readonly string connection;
    readonly DbContextOptions<ShopContext> options;

    /// <summary>A shop in a file.</summary>
    /// <param name="path">The file; it is made where it is not there.</param>
    /// <param name="patienceSeconds">How long a save waits while another program writes.</param>
    public SqliteLocation(string path, int patienceSeconds = 5)
    {
        Path = System.IO.Path.GetFullPath(path);
        connection = new SqliteConnectionStringBuilder
        {
            DataSource = Path,
            ForeignKeys = true,
            DefaultTimeout = patienceSeconds
        }.ConnectionString;
        options = new DbContextOptionsBuilder<ShopContext>()
            .UseSqlite(connection, static sqlite => sqlite.MigrationsAssembly(typeof(SqliteLocation).Assembly.GetName().Name))
            .AddInterceptors(new ConnectionSetup(this))
            .Options;
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <inheritdoc/>
    public override string Shown => Path;

    /// <inheritdoc/>
    public override bool MayHoldSomething => File.Exists(Path);

    /// <summary>The folder for backups that nobody named.</summary>
    public string BackupFolder => System.IO.Path.Combine(System.IO.Path.GetDirectoryName(Path)!, "backups");
    /// <summary>Further settings of each connection, by which tests make a disk full.</summary>
    internal string Pragmas { get; set; } = "";
    /// <summary>The default place of this user: <c>boardwright/shop.db</c> in the folder that the system gives programs for what they
    /// keep.</summary>
    public static string DefaultPath => System.IO.Path.Combine(UserFolder, "shop.db");

    /// <inheritdoc/>
    public override ShopContext CreateDbContext() => new(Further(options));

    internal override async Task<bool> PrepareAsync(TimeProvider time, CancellationToken cancel)
    {
        if (Directory.Exists(Path))
            throw new ShopException(ShopError.NotOurs, $"{Path} is a folder, and a shop is a file.", "Name the file, or read an exported folder with import.");
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
        await using var context = CreateDbContext();
        if (await IsCurrentAsync(context, cancel))
            return false;
        await using var alone = await AloneAsync(cancel);
        if (await IsCurrentAsync(context, cancel))
            return false;
        if ((await context.Database.GetAppliedMigrationsAsync(cancel)).Any())
            await CopyAsync(System.IO.Path.Combine(BackupFolder, $"{FileName}-before-update-{Dated(time)}.db"), cancel);
        await context.Database.OpenConnectionAsync(cancel);
        await ScalarAsync(context, "PRAGMA journal_mode=WAL", cancel);
        // A program that was killed in the middle of this leaves a mark for which others would wait for ever.
        if (await ScalarAsync(context, "SELECT name FROM sqlite_schema WHERE name = '__EFMigrationsLock'", cancel) is not null)
            await ScalarAsync(context, "DELETE FROM __EFMigrationsLock", cancel);
        await context.Database.MigrateAsync(cancel);
        return true;
    }

    /// <summary>Whether the file is a sound shop with the tables of this program.</summary>
    async Task<bool> IsCurrentAsync(ShopContext context, CancellationToken cancel)
    {
        if (new FileInfo(Path) is not { Exists: true, Length: > 0 })
            return false;
        await CheckAsync(context, cancel);
        var (applied, all) = ((await context.Database.GetAppliedMigrationsAsync(cancel)).ToList(),
            context.Database.GetMigrations().ToList());
        CheckHistory(applied, all);
        if (applied.Count == 0 && (long)(await ScalarAsync(context, "SELECT count(*) FROM sqlite_schema WHERE name NOT LIKE '\\_\\_EF%' ESCAPE '\\' AND name NOT LIKE 'sqlite%'", cancel))! > 0)
            throw new ShopException(ShopError.NotOurs, $"{Path} is a database, and not a shop.", "Name another file.");
        return applied.Count == all.Count;
    }

    /// <summary>Waits until no other program changes the tables; the system lets go of this for a program that dies.</summary>
    async Task<FileStream> AloneAsync(CancellationToken cancel)
    {
        for (var left = 600; ; left--)
        {
            try
            {
                return new FileStream(Path + ".lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException fault) when (File.Exists(Path + ".lock"))
            {
                if (left == 0)
                    throw new ShopException(ShopError.Busy, $"Another program brings {Path} up to date.", "Try again when it is done.", fault);
                await Task.Delay(100, cancel);
            }
        }
    }

    internal override Task ConnectAsync(ShopContext context, CancellationToken cancel) => context.Database.OpenConnectionAsync(cancel);

    internal override async Task<DbTransaction> BeginReadingAsync(ShopContext context, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        // A reader that begins so holds nobody up.
        return ((SqliteConnection)context.Database.GetDbConnection()).BeginTransaction(deferred: true);
    }

    internal override ShopException? Explain(Exception fault) => fault is not SqliteException sqlite ? null : sqlite.SqliteErrorCode switch
    {
        SQLitePCL.raw.SQLITE_BUSY or SQLitePCL.raw.SQLITE_LOCKED => new(ShopError.Busy, $"Another program is writing into {Path}; nothing was changed.", "Try again when it is done, or close it.", fault),
        SQLitePCL.raw.SQLITE_FULL => new(ShopError.Full, $"The disk that holds {Path} is full; the last saved state is as it was.", "Make room and save again.", fault),
        SQLitePCL.raw.SQLITE_CORRUPT or SQLitePCL.raw.SQLITE_NOTADB => Damaged(fault),
        SQLitePCL.raw.SQLITE_READONLY or SQLitePCL.raw.SQLITE_PERM => new(ShopError.Unreachable, $"{Path} may not be written by this user.", "Give yourself the permission to write it and its folder.", fault),
        SQLitePCL.raw.SQLITE_CANTOPEN or SQLitePCL.raw.SQLITE_IOERR => new(ShopError.Unreachable, $"{Path} cannot be opened or written: the disk does not let it.", "Check that the disk is there and has room, and that you may write the file and its folder.", fault),
        _ => null,
    };

    internal override bool IsDuplicate(Exception fault) =>
        fault is DbUpdateException { InnerException: SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_CONSTRAINT } };

    internal override async Task<string> BackUpAsync(Shop shop, string? target, TimeProvider time, CancellationToken cancel) =>
        await CopyAsync(target is null ? System.IO.Path.Combine(BackupFolder, $"{FileName}-{Dated(time)}.db") : System.IO.Path.GetFullPath(target), cancel);

    internal override void Close()
    {
        using var any = new SqliteConnection(connection);
        SqliteConnection.ClearPool(any);
    }

    /// <summary>Puts a backup in the place of this shop. What was there is kept beside it, damaged or not.</summary>
    /// <param name="backup">A file that a backup wrote, or a folder that an export wrote.</param>
    /// <param name="time">The clock for the name of what was there.</param>
    /// <param name="cancel">Stops it before anything is replaced.</param>
    /// <returns>Where that is now; <c>null</c> when there was nothing.</returns>
    /// <exception cref="ShopException">The backup is damaged or missing, or another program is writing into the shop.</exception>
    public async Task<string?> RecoverAsync(string backup, TimeProvider time, CancellationToken cancel = default)
    {
        var isFolder = Directory.Exists(backup);
        if (!isFolder && !File.Exists(backup))
            throw new ShopException(ShopError.NotThere, $"There is no backup {backup}.", NewestBackup() is { } newest ? $"The newest beside the shop is {newest}." : "Check the name.");
        if (File.Exists(backup + "-wal"))
            throw new ShopException(ShopError.Refused, $"{backup} is a shop in use and not a backup; nothing was changed.", "Write a backup of it first.");
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
        // Read from a copy, so that the backup itself is never written to.
        var fresh = Path + ".recovering";
        Remove(fresh);
        try
        {
            await ReadBackup(backup, isFolder, fresh, time, cancel);
            var aside = await PutAside(time, cancel);
            File.Move(fresh, Path, overwrite: false);
            return aside;
        }
        finally
        {
            Remove(fresh);
        }
    }

    static async Task ReadBackup(string backup, bool isFolder, string fresh, TimeProvider time, CancellationToken cancel)
    {
        try
        {
            if (!isFolder)
                File.Copy(backup, fresh);
            await using var copy = await Shop.OpenAsync(new SqliteLocation(fresh), time, cancel);
            if (isFolder)
                await copy.ImportAsync(backup, cancel);
        }
        catch (ShopException trouble)
        {
            throw new ShopException(ShopError.Damaged, $"{backup} cannot be used as a backup, so nothing was changed: {trouble.Says}", "Try an older backup.", trouble);
        }
    }

    /// <summary>Moves the shop's file out of the way.</summary>
    async Task<string?> PutAside(TimeProvider time, CancellationToken cancel)
    {
        if (!File.Exists(Path))
            return null;
        Close();
        await RefuseIfBusy(cancel);
        var aside = $"{Path}.before-recovery-{Dated(time)}";
        // The log belongs to the file; without it the newest saves would be missing.
        foreach (var ending in Endings)
        {
            if (File.Exists(Path + ending))
                File.Move(Path + ending, aside + ending, overwrite: false);
        }

        return aside;
    }

    static void Remove(string path)
    {
        foreach (var ending in (IEnumerable<string>)[.. Endings, ".lock"])
            File.Delete(path + ending);
    }

    string FileName => System.IO.Path.GetFileNameWithoutExtension(Path);

    async Task RefuseIfBusy(CancellationToken cancel)
    {
        try
        {
            await using var alone = new SqliteConnection(
                new SqliteConnectionStringBuilder(connection) { Pooling = false, DefaultTimeout = 1 }.ConnectionString);
            await alone.OpenAsync(cancel);
            await using var command = alone.CreateCommand();
            command.CommandText = "BEGIN IMMEDIATE; ROLLBACK;";
            await command.ExecuteNonQueryAsync(cancel);
        }
        catch (SqliteException fault) when (Explain(fault) is { Kind: ShopError.Busy })
        {
            throw new ShopException(ShopError.Busy, $"Another program is writing into {Path}; nothing was changed.", "Close it and try again.", fault);
        }
        catch (SqliteException)
        {
            // A damaged file is what recovery is for.
        }
    }

    async Task CheckAsync(ShopContext context, CancellationToken cancel)
    {
        await context.Database.OpenConnectionAsync(cancel);
        if (await ScalarAsync(context, "PRAGMA quick_check(1)", cancel) is not "ok")
            throw Damaged(null);
    }

    ShopException Damaged(Exception? fault) => new(
        ShopError.Damaged,
        $"{Path} is damaged or is not a database.",
        NewestBackup() is { } newest ? $"Bring back the newest backup: boardwright shop recover {newest}" : $"There is no backup in {BackupFolder}; look for a copy elsewhere, and keep this file.",
        fault);

    string? NewestBackup() => Directory.Exists(BackupFolder)
        ? new DirectoryInfo(BackupFolder).EnumerateFiles("*.db")
        .OrderByDescending(static file => file.Name.Length >= 21 ? file.Name[^21..] : file.Name, StringComparer.Ordinal)
        .FirstOrDefault()?.FullName
        : null;

    async Task<string> CopyAsync(string target, CancellationToken cancel)
    {
        if (File.Exists(target))
            throw new ShopException(ShopError.Refused, $"{target} is there already and was left as it is.", "Name another file.");
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(target)!);
        var partial = target + ".partial";
        File.Delete(partial);
        await using (var context = CreateDbContext())
        {
            await context.Database.OpenConnectionAsync(cancel);
            await using var command = context.Database.GetDbConnection().CreateCommand();
            command.CommandText = "VACUUM INTO $target";
            command.Parameters.Add(new SqliteParameter("$target", partial));
            await command.ExecuteNonQueryAsync(cancel);
        }

        DurableFile.Adopt(partial, target);
        return target;
    }

    static async Task<object?> ScalarAsync(ShopContext context, string sql, CancellationToken cancel)
    {
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        return await command.ExecuteScalarAsync(cancel);
    }

    sealed class ConnectionSetup(SqliteLocation place) : DbConnectionInterceptor
    {
        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA synchronous=FULL;" + place.Pragmas;
            command.ExecuteNonQuery();
        }

        public override async Task ConnectionOpenedAsync(
            DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA synchronous=FULL;" + place.Pragmas;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}

/// <summary>Makes the model for the tool that writes migrations.</summary>
sealed class SqliteContextFactory : IDesignTimeDbContextFactory<ShopContext>
{
    public ShopContext CreateDbContext(string[] args) => new SqliteLocation("shop.db").CreateDbContext();
}
