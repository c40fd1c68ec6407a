import { parseArgs } from "node:util";

export type SpecimenRequest =
  | { readonly ok: true; readonly do: "help" }
  | {
      readonly ok: true;
      readonly do: "specimen";
      readonly seed: string;
      readonly out: string;
      readonly blueprint: string;
    }
  | { readonly ok: true; readonly do: "fillet"; readonly seed: string; readonly out: string; readonly isClean: boolean }
  | { readonly ok: true; readonly do: "types"; readonly seed: string; readonly out: string }
  | {
      readonly ok: true;
      readonly do: "random";
      readonly count: number;
      readonly seed: string;
      readonly out: string;
      readonly blueprint: string;
    }
  | { readonly ok: false; readonly message: string };

/** Seeds end up in file names of tutors and in URLs of nobody: plain letters, digits, dots, dashes. */
const SEED = /^[\w.-]{1,80}$/;
const MOST_SPECIMENS = 60;
/** Sheets need no seed to be asked for: the same sheet comes out each time. */
const SHEET_SEED = "sheet";
/** The sheet of types shows everything there is: no blueprint chooses from it. */
const NO_BLUEPRINT =
  "--blueprint does not go with --sheet types, which shows every imperfection: leave it out, or use --sheet random N.";

/** Reads the command line of the specimen command; what is missing or unknown is told in plain words. */
export function readArguments(words: readonly string[]): SpecimenRequest {
  let values: { seed?: string; out?: string; sheet?: string; blueprint?: string; fillet?: boolean; help?: boolean };
  let positionals: string[];
  try {
    ({ values, positionals } = parseArgs({
      args: [...words],
      options: {
        seed: { type: "string" },
        out: { type: "string" },
        sheet: { type: "string" },
        blueprint: { type: "string" },
        fillet: { type: "boolean" },
        help: { type: "boolean" },
      },
      allowPositionals: true,
    }));
  } catch (error) {
    return refused(error instanceof Error ? error.message : String(error));
  }
  if (values.help) return { ok: true, do: "help" };
  const { sheet, out, blueprint = "practice" } = values;
  if (sheet === "types" && values.blueprint !== undefined) return refused(NO_BLUEPRINT);
  const seed = values.seed ?? (sheet && SHEET_SEED);
  const isCounted = sheet === "random";
  const extra = positionals.slice(isCounted ? 1 : 0);
  if (extra.length > 0) return refused(`"${extra[0]}" is more than this command takes.`);
  if (!seed) return refused("--seed is missing: any short word, for example --seed monday-3.");
  if (!SEED.test(seed)) return refused(`--seed "${seed}" may have letters, digits, dots and dashes only, 80 at most.`);
  if (!out) return refused("--out is missing: the folder to write to.");
  if (values.fillet) {
    if (sheet) return refused("--fillet makes one specimen: it goes with no --sheet.");
    if (blueprint !== "practice" && blueprint !== "clean") {
      return refused(`--blueprint "${blueprint}" is not known for a fillet: practice or clean.`);
    }
    return { ok: true, do: "fillet", seed, out, isClean: blueprint === "clean" };
  }
  switch (sheet) {
    case undefined:
      return { ok: true, do: "specimen", seed, out, blueprint };
    case "types":
      return { ok: true, do: "types", seed, out };
    case "random": {
      const count = Number(positionals[0]);
      return Number.isInteger(count) && count >= 1 && count <= MOST_SPECIMENS
        ? { ok: true, do: "random", count, seed, out, blueprint }
        : refused(`--sheet random needs how many specimens, 1 to ${MOST_SPECIMENS}: for example --sheet random 12.`);
    }
    default:
      return refused(`--sheet "${sheet}" is not known: types or random N.`);
  }
}

const refused = (message: string): SpecimenRequest => ({ ok: false, message });
