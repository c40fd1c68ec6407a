import type { RandomStream } from "../../random";
import type { SectionBlueprint, Slot } from "./blueprint";
import { MOST_STOPS, rowsFor } from "./check-blueprint";
import { kindOf, runsNeeded, weightOf } from "./feature-rows";
import { jointEffect } from "./joint-effects";
import type { Asked } from "./place-row";
import { type FeatureRow, NEUTRAL_ROWS } from "./rows";
import { type Sizing, sizingsOf } from "./sizing";

/** A row that can fill a slot on a face, the ways in which it can, and its weight against the others. */
export interface Candidate {
  readonly row: FeatureRow;
  readonly sizings: readonly Sizing[];
  readonly weight: number;
}

/** What can fill a slot on a face as it was welded. */
export function candidatesFor(slot: Slot, section: SectionBlueprint, asked: Asked): Candidate[] {
  return rowsFor(asked.face, slot, section)
    .map((row) => ({
      row,
      sizings: sizingsOf(row, slot.band, !section.nearLimits, asked.joint.process),
      weight: weightIn(row, asked),
    }))
    .filter(({ row, sizings, weight }) => sizings.length > 0 && weight > 0 && hasRuns(row, asked));
}

const weightIn = (row: FeatureRow, asked: Asked): number =>
  weightOf(row, asked.joint.process, asked.joint.position) * jointEffect(row, asked);

const hasRuns = (row: FeatureRow, { layout }: Asked): boolean => layout.runs.length >= runsNeeded(row);

/** Those of the candidates of which a face takes one more. */
export function openCandidates(candidates: readonly Candidate[], picked: readonly FeatureRow[]): Candidate[] {
  const isFull = picked.filter(({ site }) => site === "stop").length >= MOST_STOPS;
  return candidates.filter(
    ({ row }) => !(isFull && row.site === "stop") && picked.filter(({ type }) => type === row.type).length < row.most,
  );
}

/** Different harmless features, or different clutter, for a face; fewer where there are not so many. */
export function pickHarmless(
  asked: Asked,
  kind: "harmless" | "clutter",
  count: number,
  random: RandomStream,
): Candidate[] {
  const rows = NEUTRAL_ROWS.filter((row) => row.face === asked.face && kindOf(row) === kind && hasRuns(row, asked));
  const candidates = rows
    .map((row) => ({ row, sizings: sizingsOf(row, "any", false), weight: weightIn(row, asked) }))
    .filter(({ weight }) => weight > 0);
  const picked: Candidate[] = [];
  for (let n = 0; n < count; n++) {
    const open = candidates.filter((candidate) => picked.every(({ row }) => row.type !== candidate.row.type));
    if (open.length > 0) picked.push(pickByWeight(open, random));
  }
  return picked;
}

/** One of the candidates, each as likely as its weight is of their sum. Throws where there is none. */
export function pickByWeight(candidates: readonly Candidate[], random: RandomStream): Candidate {
  let left = random.uniform(0, 1) * candidates.reduce((sum, { weight }) => sum + weight, 0);
  for (const candidate of candidates) {
    left -= candidate.weight;
    if (left < 0) return candidate;
  }
  const last = candidates[candidates.length - 1];
  if (!last) throw new Error("nothing to pick from");
  return last;
}
