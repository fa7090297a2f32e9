using Boardwright.Files;
using Npgsql;

namespace Boardwright.Shops.Postgres;

/// <summary>The tables of a shop as they are, one file each, whatever version of the program made them.</summary>
static class TableCopy
{
    /// <summary>Writes every table into a folder, all of one moment.</summary>
    public static async Task WriteAsync(NpgsqlConnection connection, string version, string folder, CancellationToken cancel)
    {
        var partial = folder + ".partial";
        Directory.CreateDirectory(partial);
        await using (var transaction = await connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancel))
        {
            var tables = new List<string>();
            await using (var command = new NpgsqlCommand("SELECT table_name FROM information_schema.tables WHERE table_schema = current_schema() AND table_type = 'BASE TABLE' ORDER BY table_name", connection, transaction))
            await using (var reader = await command.ExecuteReaderAsync(cancel))
            {
                while (await reader.ReadAsync(cancel))
                    tables.Add(reader.GetString(0));
            }

            foreach (var table in tables)
            {
                await DurableFile.WriteAsync(Path.Combine(partial, table + ".csv"), async file =>
                {
                    await using var writer = new StreamWriter(file, bufferSize: 81920, leaveOpen: true);
                    using var rows = await connection.BeginTextExportAsync($"COPY \"{table.Replace("\"", "\"\"", StringComparison.Ordinal)}\" TO STDOUT (FORMAT csv, HEADER)", cancel);
                    var part = new char[81920];
                    for (int count; (count = await rows.ReadAsync(part, cancel)) > 0;)
                        await writer.WriteAsync(part.AsMemory(0, count), cancel);
                });
            }
        }

        DurableFile.Write(Path.Combine(partial, "README.txt"), $"""
            The tables of a Boardwright shop as they were before an update of the program, after the migration {version}.
            To bring them back: make an empty database, let the program of that time open it, empty its tables, and read
            each file with psql: \copy TABLE FROM TABLE.csv (FORMAT csv, HEADER)
            in the order items, contents, revisions, files, parts, people, people_claims, people_logins, people_tokens.

            """);
        Directory.Move(partial, folder);
    }
}
