// npm run db:new -- some_name: writes prisma/migrations/<time>_some_name/migration.sql from the difference between the
// checked-in migrations and the schema. Needs neither a terminal nor a database.
import { execFileSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
const prisma = join(root, "node_modules/prisma/build/index.js");
const difference = "migrate diff --from-migrations prisma/migrations --to-schema prisma/schema.prisma --script";

const name = process.argv[2];
if (!/^[a-z0-9_]+$/.test(name ?? "")) {
  console.error("Give the migration a name: npm run db:new -- some_name");
  process.exit(1);
}
const sql = execFileSync(process.execPath, [prisma, ...difference.split(" ")], {
  cwd: root,
  encoding: "utf8",
  stdio: ["ignore", "pipe", "inherit"],
});
if (sql.trim() === "" || /empty migration/i.test(sql)) {
  console.error("The schema has not changed since the last migration.");
  process.exit(1);
}
const time = new Date().toISOString().replace(/\D/g, "").slice(0, 14);
const folder = join(root, "prisma/migrations", `${time}_${name}`);
// only now: the difference above reads every folder that is there
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, "migration.sql"), sql);
console.log(folder);
