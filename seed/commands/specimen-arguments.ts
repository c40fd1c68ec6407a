import { parseArgs } from "node:util";

export type SpecimenRequest =
  | { readonly ok: true; readonly help: true }
  | { readonly ok: true; readonly help: false; readonly seed: string; readonly out: string }
  | { readonly ok: false; readonly message: string };

/** Seeds end up in file names of tutors and in URLs of nobody: plain letters, digits, dots, dashes. */
const SEED = /^[\w.-]{1,80}$/;

/** Reads the command line of the specimen command; what is missing or unknown is told in plain words. */
export function readArguments(words: readonly string[]): SpecimenRequest {
  let values: { seed?: string; out?: string; help?: boolean };
  try {
    values = parseArgs({
      args: [...words],
      options: { seed: { type: "string" }, out: { type: "string" }, help: { type: "boolean" } },
      allowPositionals: false,
    }).values;
  } catch (error) {
    return { ok: false, message: error instanceof Error ? error.message : String(error) };
  }
  if (values.help) return { ok: true, help: true };
  const { seed, out } = values;
  if (!seed) return { ok: false, message: "--seed is missing: any short word, for example --seed monday-3." };
  if (!SEED.test(seed)) {
    return { ok: false, message: `--seed "${seed}" may have letters, digits, dots and dashes only, 80 at most.` };
  }
  if (!out) return { ok: false, message: "--out is missing: the folder to write to." };
  return { ok: true, help: false, seed, out };
}
