using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Boardwright.Shops.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Items : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "contents",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_contents", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "items",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    folded_name = table.Column<string>(type: "text", nullable: true),
                    latest = table.Column<int>(type: "integer", nullable: false),
                    from_item = table.Column<Guid>(type: "uuid", nullable: true),
                    from_number = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_items", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "revisions",
                columns: table => new
                {
                    item = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    saved_at = table.Column<long>(type: "bigint", nullable: false),
                    who = table.Column<string>(type: "text", nullable: false),
                    why = table.Column<string>(type: "text", nullable: false),
                    act = table.Column<string>(type: "text", nullable: false),
                    of_number = table.Column<int>(type: "integer", nullable: true),
                    name = table.Column<string>(type: "text", nullable: false),
                    main_file = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_revisions", x => new { x.item, x.number });
                    table.ForeignKey(
                        name: "FK_revisions_items_item",
                        column: x => x.item,
                        principalTable: "items",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "files",
                columns: table => new
                {
                    item = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    path = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_files", x => new { x.item, x.number, x.path });
                    table.ForeignKey(
                        name: "FK_files_contents_sha256",
                        column: x => x.sha256,
                        principalTable: "contents",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_files_revisions_item_number",
                        columns: x => new { x.item, x.number },
                        principalTable: "revisions",
                        principalColumns: new[] { "item", "number" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "files_by_content",
                table: "files",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "items_by_name",
                table: "items",
                columns: new[] { "kind", "folded_name" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "files");

            migrationBuilder.DropTable(
                name: "contents");

            migrationBuilder.DropTable(
                name: "revisions");

            migrationBuilder.DropTable(
                name: "items");
        }
    }
}
