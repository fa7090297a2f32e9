using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;

namespace Boardwright.Shops;

/// <summary>The tables of a shop. Only the place that keeps the shop knows which database they are in.</summary>
/// <remarks>
/// What a revision consists of is kept by its SHA-256, once however many revisions share it. Times are whole
/// milliseconds since 1970, because databases round and order their own times differently.
/// </remarks>
/// <param name="options">The database.</param>
public sealed class ShopContext(DbContextOptions<ShopContext> options) : IdentityUserContext<Person>(options)
{
    internal DbSet<ItemRow> Items => Set<ItemRow>();

    internal DbSet<RevisionRow> Revisions => Set<RevisionRow>();

    internal DbSet<FileRow> Files => Set<FileRow>();

    internal DbSet<ContentRow> Contents => Set<ContentRow>();

    internal DbSet<PartRow> Parts => Set<PartRow>();

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        base.OnModelCreating(builder);
        builder.Entity<Person>().ToTable("people");
        builder.Entity<IdentityUserClaim<string>>().ToTable("people_claims");
        builder.Entity<IdentityUserLogin<string>>().ToTable("people_logins");
        builder.Entity<IdentityUserToken<string>>().ToTable("people_tokens");
        builder.Entity<ItemRow>(item =>
        {
            item.ToTable("items");
            item.Property(row => row.Id).HasColumnName("id").ValueGeneratedNever();
            item.Property(row => row.Kind).HasColumnName("kind").HasConversion<string>();
            item.Property(row => row.Name).HasColumnName("name");
            item.Property(row => row.Folded).HasColumnName("folded_name");
            item.Property(row => row.Latest).HasColumnName("latest").IsConcurrencyToken();
            item.Property(row => row.FromItem).HasColumnName("from_item");
            item.Property(row => row.FromNumber).HasColumnName("from_number");
            // Deleted items have no folded name, so theirs can be used again.
            item.HasIndex(row => new { row.Kind, row.Folded }).IsUnique().HasDatabaseName("items_by_name");
        });
        builder.Entity<RevisionRow>(revision =>
        {
            revision.ToTable("revisions");
            revision.HasKey(row => new { row.ItemId, row.Number });
            revision.Property(row => row.ItemId).HasColumnName("item");
            revision.Property(row => row.Number).HasColumnName("number");
            revision.Property(row => row.Milliseconds).HasColumnName("saved_at");
            revision.Property(row => row.Who).HasColumnName("who");
            revision.Property(row => row.Why).HasColumnName("why");
            revision.Property(row => row.Act).HasColumnName("act").HasConversion<string>();
            revision.Property(row => row.Of).HasColumnName("of_number");
            revision.Property(row => row.Name).HasColumnName("name");
            revision.Property(row => row.Main).HasColumnName("main_file");
            revision.HasOne<ItemRow>().WithMany().HasForeignKey(row => row.ItemId).OnDelete(DeleteBehavior.Restrict);
        });
        builder.Entity<FileRow>(file =>
        {
            file.ToTable("files");
            file.HasKey(row => new { row.ItemId, row.Number, row.Path });
            file.Property(row => row.ItemId).HasColumnName("item");
            file.Property(row => row.Number).HasColumnName("number");
            file.Property(row => row.Path).HasColumnName("path");
            file.Property(row => row.Hash).HasColumnName("sha256");
            file.HasOne<RevisionRow>().WithMany().HasForeignKey(row => new { row.ItemId, row.Number }).OnDelete(DeleteBehavior.Restrict);
            file.HasOne<ContentRow>().WithMany().HasForeignKey(row => row.Hash).OnDelete(DeleteBehavior.Restrict);
            file.HasIndex(row => row.Hash).HasDatabaseName("files_by_content");
        });
        builder.Entity<ContentRow>(content =>
        {
            content.ToTable("contents");
            content.HasKey(row => row.Hash);
            content.Property(row => row.Hash).HasColumnName("sha256");
            content.Property(row => row.Bytes).HasColumnName("bytes");
        });
        builder.Entity<PartRow>(part =>
        {
            part.ToTable("parts");
            part.HasKey(row => new { row.ItemId, row.Order });
            part.Property(row => row.ItemId).HasColumnName("item");
            part.Property(row => row.Order).HasColumnName("place");
            part.Property(row => row.PartId).HasColumnName("part");
            part.Property(row => row.Kind).HasColumnName("kind");
            part.Property(row => row.Name).HasColumnName("name");
            part.Property(row => row.Supplier).HasColumnName("supplier");
            part.Property(row => row.Price).HasColumnName("price");
            part.Property(row => row.Stock).HasColumnName("stock");
            part.Property(row => row.Words).HasColumnName("words");
            part.HasOne<ItemRow>().WithMany().HasForeignKey(row => row.ItemId).OnDelete(DeleteBehavior.Cascade);
            part.HasIndex(row => row.PartId).HasDatabaseName("parts_by_id");
        });
    }
}

sealed class ItemRow
{
    public required Guid Id { get; init; }

    public required ItemKind Kind { get; init; }

    public required string Name { get; set; }

    public required string? Folded { get; set; }

    public required int Latest { get; set; }

    public Guid? FromItem { get; init; }

    public int? FromNumber { get; init; }
}

sealed class RevisionRow
{
    public required Guid ItemId { get; init; }

    public required int Number { get; init; }

    public required long Milliseconds { get; init; }

    public required string Who { get; init; }

    public required string Why { get; init; }

    public required Act Act { get; init; }

    public int? Of { get; init; }

    public required string Name { get; init; }

    public required string Main { get; init; }
}

sealed class FileRow
{
    public required Guid ItemId { get; init; }

    public required int Number { get; init; }

    public required string Path { get; init; }

    public required string Hash { get; init; }
}

sealed class ContentRow
{
    public required string Hash { get; init; }

    public required byte[] Bytes { get; init; }
}

/// <summary>A part of the newest revision of a shelf file: an index of its text, made anew with each save.</summary>
sealed class PartRow
{
    public required Guid ItemId { get; init; }

    public required int Order { get; init; }

    public required string PartId { get; init; }

    public required string Kind { get; init; }

    public required string Name { get; init; }

    public required string Supplier { get; init; }

    public required string Price { get; init; }

    public required int? Stock { get; init; }

    /// <summary>Everything that is searched, in small letters.</summary>
    public required string Words { get; init; }
}
