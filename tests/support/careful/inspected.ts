import { DEFAULT_CRITERIA } from "../../../lib/criteria";
import { imperfection } from "../../../lib/imperfections";
import { randomStream } from "../../../lib/random";
import type { Report } from "../../../lib/report";
import { DEFAULT_TOLERANCES, type DimensionLine, type SentencesResult, type StatementLine } from "../../../lib/results";
import { DEFAULT_SETTINGS, markSection } from "../../../lib/scoring";
import { generateFilletSpecimen, generateSpecimen, type Truth } from "../../../lib/specimen";
import type { JointKind } from "../../../lib/weld";
import { withSentences } from "../../../seed/demo/inspector/sentences";
import { inspectFillet } from "./fillet";
import { inspectPlate } from "./plate";

/** A size that was measured beside the true one, mm. */
export interface Sized {
  readonly what: string;
  readonly written: number | null;
  readonly actual: number;
  readonly isWithin: boolean;
}

/** One specimen of a seed, inspected by a careful hand and marked by the rule. */
export interface Inspected {
  readonly seed: string;
  /** Marks of the section, 0 to 100. */
  readonly mark: number;
  readonly dimensions: readonly DimensionLine[];
  readonly statements: readonly StatementLine[];
  readonly sizes: readonly Sized[];
  readonly sentences: SentencesResult;
}

/** Makes the practice specimen of a seed, inspects it, and marks the report. */
export function inspected(kind: JointKind, seed: string): Inspected {
  const random = randomStream(`careful inspector ${seed}`);
  if (kind === "butt") {
    const { surfaces, recipe, truth } = generateSpecimen(seed);
    return marked("plate", seed, truth, inspectPlate(surfaces, recipe.rolled, truth, random));
  }
  const { surface, truth } = generateFilletSpecimen(seed);
  return marked("fillet", seed, truth, inspectFillet(surface, truth, random));
}

/** Questions are left out: their keys are known, and whether they can be answered is tested where they are made. */
function marked(section: "plate" | "fillet", seed: string, truth: Truth, report: Report): Inspected {
  const criteria = DEFAULT_CRITERIA;
  const sentenced = withSentences(report, truth.joint, criteria);
  const result = markSection(section, truth, sentenced, { ...DEFAULT_SETTINGS[section], criteria });
  const found = truth.items.filter(({ neutral }) => !neutral);
  const sizes = found.flatMap((item, n): Sized[] => {
    if (item.size === null || imperfection(item.type).size === null) return [];
    const written = report.calls[n].size;
    const { full, share } = DEFAULT_TOLERANCES.size;
    const isWithin = written !== null && Math.abs(written - item.size) <= Math.max(full, share * item.size) + 1e-9;
    return [{ what: `${item.type} at ${Math.round(item.worst[0])}`, written, actual: item.size, isWithin }];
  });
  const { lines = [], statements = [] } = result.dimensions ?? {};
  return { seed, mark: result.mark / 1000, dimensions: lines, statements, sizes, sentences: result.sentences! };
}
