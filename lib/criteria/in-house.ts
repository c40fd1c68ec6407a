import type { z } from "zod";
import { type Criteria, type Criterion, criteriaSchema, type SectionRule } from "./criteria";

/** A field that is not right, and what would be. */
export interface Problem {
  /** "rows 2, limit, formula, coefficient": rows are counted from 1. Empty where it is about the whole. */
  readonly field: string;
  readonly problem: string;
}

export type ReadCriteria =
  | { readonly ok: true; readonly criteria: Criteria }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Criteria that a tutor makes: the same as those built in, but every rule speaks of something and has a name of its own. Rows
 * of one id are one row, split by face.
 */
export const inHouseSchema: z.ZodType<Criteria> = criteriaSchema.superRefine(({ rows, sections }, context) => {
  const fail = (path: (string | number)[], message: string) => context.addIssue({ code: "custom", path, message });
  if (rows.length === 0) fail(["rows"], "rows: at least one");
  const check = (list: "rows" | "sections", rules: readonly (Criterion | SectionRule)[]) =>
    rules.forEach((rule, n) => {
      if (rule.types.length === 0) fail([list, n, "types"], "types: at least one type of the catalogue");
      const taken = rules.slice(0, n).filter(({ id }) => id === rule.id);
      if (taken.some((other) => !areOneRow(rule, other))) {
        fail([list, n, "id"], `id: one that no other rule has; ${rule.id} is taken`);
      }
    });
  check("rows", rows);
  check("sections", sections);
});

function areOneRow(rule: Criterion | SectionRule, other: Criterion | SectionRule): boolean {
  const rest = ({ types, faces, ...same }: Criterion | SectionRule) => JSON.stringify(same);
  return rest(rule) === rest(other) && !rule.faces.some((face) => other.faces.includes(face));
}

/** Reads criteria from what came in: the criteria, or every field that is not right. */
export function readCriteria(written: unknown): ReadCriteria {
  const read = inHouseSchema.safeParse(written);
  if (read.success) return { ok: true, criteria: read.data };
  return {
    ok: false,
    problems: read.error.issues.map(({ path, message }) => ({ field: fieldOf(path), problem: message })),
  };
}

/** The same from JSON text, such as a file. */
export function readCriteriaText(text: string): ReadCriteria {
  let written: unknown;
  try {
    written = JSON.parse(text);
  } catch {
    return { ok: false, problems: [{ field: "", problem: "JSON text, as criteria are saved" }] };
  }
  return readCriteria(written);
}

/** Criteria as JSON text that `readCriteriaText` reads back unchanged. */
export const writeCriteria = (criteria: Criteria): string => JSON.stringify(criteria, null, 2);

const fieldOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((field, part) => {
    if (typeof part === "number") return `${field} ${part + 1}`;
    return field === "" ? String(part) : `${field}, ${String(part)}`;
  }, "");
