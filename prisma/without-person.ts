import { withoutNames } from "@/lib/workshop";
import type { Prisma } from "./generated/client/client";

type Transaction = Prisma.TransactionClient;

/** Texts that people write, where somebody may be named. A course is JSON with reasons in it. */
const WRITTEN = [
  { table: "AuditEntry", column: "reason" },
  { table: "ReviewAct", column: "reason" },
  { table: "Sitting", column: "course" },
  { table: "SectionRun", column: "course" },
  { table: "ClassGroup", column: "notes" },
  { table: "ClassGroup", column: "name" },
] as const;
type Written = (typeof WRITTEN)[number];

/** Takes somebody's names out of everything that was written by others. */
export async function forgetNames(transaction: Transaction, names: readonly string[]): Promise<void> {
  for (const written of WRITTEN) {
    for (const name of names) await forgetIn(transaction, written, name);
  }
}

async function forgetIn(transaction: Transaction, { table, column }: Written, name: string): Promise<void> {
  const isJson = column === "course";
  const rows = await transaction.$queryRawUnsafe<{ readonly id: string | bigint; readonly text: string }[]>(
    // table and column are those above; only the name comes from outside
    `SELECT "id", CAST("${column}" AS TEXT) AS "text" FROM "${table}" WHERE "${column}" LIKE ? ESCAPE '\\'`,
    `%${likeOf(isJson ? JSON.stringify(name).slice(1, -1) : name)}%`,
  );
  // whoever read a course before takes their step again, and does not write the name back
  const counted = isJson ? `, "revision" = "revision" + 1` : "";
  for (const { id, text } of rows) {
    const rest = isJson ? JSON.stringify(without(JSON.parse(text), name)) : withoutNames(text, [name]);
    if (rest === text) continue;
    await transaction.$executeRawUnsafe(`UPDATE "${table}" SET "${column}" = ?${counted} WHERE "id" = ?`, rest, id);
  }
}

/** What may be the name: SQLite takes both cases for one in ASCII alone, so any letter beyond that stands for all of them. */
const likeOf = (name: string): string => name.replace(/[\\%_]/g, "\\$&").replace(/[^ -~]/gu, "_");

/** Reasons and nothing else: a name may well be a word that means something to the program. */
function without(value: unknown, name: string): unknown {
  if (Array.isArray(value)) return value.map((one) => without(one, name));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [
      key,
      key === "reason" && typeof one === "string" ? withoutNames(one, [name]) : without(one, name),
    ]),
  );
}
