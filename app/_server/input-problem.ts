import type { z } from "zod";

/** Where an input does not fit, and what would. */
export interface InputProblem {
  /** Like `calls[2].start`; empty for the input as a whole. */
  readonly path: string;
  /** Completes "there should be ...". */
  readonly wanted: string;
}

/** The first thing wrong with an input, in words. */
export function describeProblem(error: z.ZodError): InputProblem {
  const issue = error.issues[0];
  return { path: formatPath(issue.path), wanted: wantedBy(issue) };
}

/** One sentence a field, for a form. */
export function problemsByField(error: z.ZodError): Record<string, string> {
  return Object.fromEntries(error.issues.map((issue) => [formatPath(issue.path), issue.message]).reverse());
}

function formatPath(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, part) => (typeof part === "number" ? `${text}[${part}]` : `${text}${text ? "." : ""}${String(part)}`),
    "",
  );
}

const KINDS: Readonly<Record<string, string>> = { int: "a whole number", array: "a list", object: "an object" };

function wantedBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return KINDS[issue.expected] ?? `a ${issue.expected}`;
    case "too_big":
      return `at most ${issue.maximum}${unitOf(issue.origin)}`;
    case "too_small":
      return `at least ${issue.minimum}${unitOf(issue.origin)}`;
    case "invalid_value":
      return `one of ${issue.values.map(String).join(", ")}`;
    case "invalid_key":
      return issue.issues[0].message;
    case "unrecognized_keys":
      return `no field named ${issue.keys.join(", ")}`;
    default:
      return issue.message;
  }
}

function unitOf(origin: string): string {
  if (origin === "array") return " entries";
  return origin === "string" ? " characters" : "";
}
