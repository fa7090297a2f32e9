using System.Reflection;
using Boardwright.Shops;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Boardwright.Tests.Shops;

/// <summary>The migrations of a program that is one version ahead.</summary>
sealed class LaterMigrations(IDbContextOptions options) : IMigrationsAssembly
{
    public Assembly Assembly { get; } = Assembly.Load(RelationalOptionsExtension.Extract(options).MigrationsAssembly!);

    public IReadOnlyDictionary<string, TypeInfo> Migrations => Assembly.DefinedTypes.Append(typeof(Later).GetTypeInfo())
        .Where(static type => type.IsSubclassOf(typeof(Migration)))
        .ToDictionary(static type => type.GetCustomAttribute<MigrationAttribute>()!.Id, StringComparer.Ordinal);

    public ModelSnapshot? ModelSnapshot =>
        (ModelSnapshot)Activator.CreateInstance(Assembly.DefinedTypes.Single(static type => type.IsSubclassOf(typeof(ModelSnapshot))))!;

    public static void Install(ShopLocation place) => place.Further = static options =>
        new DbContextOptionsBuilder<ShopContext>(options).ReplaceService<IMigrationsAssembly, LaterMigrations>().Options;

    public string? FindMigrationId(string nameOrId) =>
        Migrations.Keys.FirstOrDefault(id => id == nameOrId || id.EndsWith("_" + nameOrId, StringComparison.Ordinal));

    public Migration CreateMigration(TypeInfo migrationClass, string activeProvider)
    {
        var migration = (Migration)Activator.CreateInstance(migrationClass)!;
        migration.ActiveProvider = activeProvider;
        return migration;
    }

    [DbContext(typeof(ShopContext)), Migration("29990101000000_Later")]
    sealed class Later : Migration
    {
        protected override void Up(MigrationBuilder migrationBuilder) => migrationBuilder.Sql("CREATE INDEX later ON items (name)");
    }
}
