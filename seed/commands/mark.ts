import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { parseArgs } from "node:util";
import type { z } from "zod";
import { BUILT_IN_CRITERIA, builtInCriteria, type Criteria } from "../../lib/criteria";
import { REPORT_SCHEMAS } from "../../lib/report";
import { marksSchema } from "../../lib/results";
import { DEFAULT_SETTINGS, markSection } from "../../lib/scoring";
import { truthSchema } from "../../lib/specimen";

const USAGE = `Marks a report against the truth of its specimen and prints the account as JSON.

  npm run mark -- truth.json report.json [--pass 70] [--criteria iso-5817-2014-c]

--pass: marks that the piece needs, 0 to 100, at most one decimal; 70 if left out.
--criteria: id of the built-in criteria by which indications and piece are sentenced; nothing is if left out.
Exit code 0: marked. Exit code 2: a file or an option cannot be read; the message says where and why.`;

/** Something the person at the keyboard can mend. */
class BadInput extends Error {}

function parseJson(path: string): unknown {
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch {
    throw new BadInput(`${path}: cannot be read; give the path of an existing JSON file`);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new BadInput(`${path}: is not JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function parseFile<T>(path: string, schema: z.ZodType<T>): T {
  const data = parseJson(path);
  const parsed = schema.safeParse(data);
  if (parsed.success) return parsed.data;
  const lines = parsed.error.issues.map((issue) => `${basename(path)}: ${issueText(issue, data)}`);
  throw new BadInput(lines.join("\n"));
}

/** Field, what would be right, and what is there instead. */
function issueText(issue: z.core.$ZodIssue, data: unknown): string {
  const field = issue.path.reduce<string>(
    (text, key) => (typeof key === "number" ? `${text}[${key}]` : text === "" ? String(key) : `${text}.${String(key)}`),
    "",
  );
  const found = issue.path.reduce<unknown>(
    (value, key) => (typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined),
    data,
  );
  const shown = found === undefined ? "it is missing" : `found ${shorten(JSON.stringify(found))}`;
  return `${field === "" ? "the whole file" : field}: ${issue.message}; ${shown}`;
}

function shorten(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function parsePassMark(text: string): number {
  const parsed = marksSchema.safeParse(text.trim() === "" ? Number.NaN : Number(text));
  if (!parsed.success) throw new BadInput(`--pass: a number from 0 to 100 with at most one decimal; found ${text}`);
  return parsed.data;
}

function parseCriteria(id: string): Criteria {
  const criteria = builtInCriteria(id);
  const ids = BUILT_IN_CRITERIA.map((one) => one.id).join(", ");
  if (!criteria) throw new BadInput(`--criteria: one of ${ids}; found ${id}`);
  return criteria;
}

function parseArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { pass: { type: "string" }, criteria: { type: "string" }, help: { type: "boolean", short: "h" } },
    });
  } catch (error) {
    throw new BadInput(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`);
  }
}

function run(): void {
  const { values, positionals } = parseArguments();
  if (values.help) {
    console.log(USAGE);
    return;
  }
  if (positionals.length !== 2) throw new BadInput(`two files are needed, found ${positionals.length}\n\n${USAGE}`);
  const pass = values.pass === undefined ? null : parsePassMark(values.pass);
  const criteria = values.criteria === undefined ? null : parseCriteria(values.criteria);
  const truth = parseFile(positionals[0], truthSchema);
  const { kind } = truth.joint;
  const section = kind === "butt" ? "plate" : kind;
  const report = parseFile(positionals[1], REPORT_SCHEMAS[kind]);
  const passMark = pass ?? DEFAULT_SETTINGS[section].passMark;
  console.log(
    JSON.stringify(markSection(section, truth, report, { ...DEFAULT_SETTINGS[section], passMark, criteria }), null, 2),
  );
}

try {
  run();
} catch (error) {
  if (!(error instanceof BadInput)) throw error;
  console.error(error.message);
  process.exitCode = 2;
}
