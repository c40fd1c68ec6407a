import { imperfection } from "../../imperfections";
import { type Share, shareOf } from "../statistics/share";
import type { SectionObservations, TruthObservation } from "./observation";

/** Thirds of a report, in the order in which it was written. */
export const THIRDS = ["first", "middle", "last"] as const;
export type Third = (typeof THIRDS)[number];

/** A report with fewer finds on a face has no order to speak of. */
const LEAST_FINDS = 3;

/**
 * What was found and missed while the first, the middle and the last third of a face's indications were written. A find belongs
 * where it was written, a miss where the nearest find along the weld on the same face was: the eye was there then. Misalignment,
 * which runs along the whole weld, is left out.
 */
export function findsEarlyAndLate(observed: readonly SectionObservations[]): Readonly<Record<Third, Share>> {
  const counts = { first: [0, 0], middle: [0, 0], last: [0, 0] };
  for (const { truths } of observed) {
    for (const onFace of byFace(truths.filter(isPlaced))) {
      const finds = onFace
        .filter(({ order }) => order !== null)
        .sort((one, other) => (one.order ?? 0) - (other.order ?? 0));
      if (finds.length < LEAST_FINDS) continue;
      for (const truth of onFace) {
        const at = truth.order === null ? nearest(truth, finds) : finds.indexOf(truth);
        const count = counts[THIRDS[Math.floor((THIRDS.length * at) / finds.length)]];
        count[0] += Number(truth.found);
        count[1] += 1;
      }
    }
  }
  const of = ([found, total]: readonly number[]): Share => shareOf(found, total);
  return { first: of(counts.first), middle: of(counts.middle), last: of(counts.last) };
}

const isPlaced = ({ neutral, type }: TruthObservation): boolean =>
  !neutral && imperfection(type).family !== "misalignment";

function byFace(truths: readonly TruthObservation[]): TruthObservation[][] {
  const faces = new Map<string, TruthObservation[]>();
  for (const truth of truths) faces.set(truth.face, [...(faces.get(truth.face) ?? []), truth]);
  return [...faces.values()];
}

/** Which of the finds lies nearest along the weld; of two as near, the one written first. */
function nearest(miss: TruthObservation, finds: readonly TruthObservation[]): number {
  const gaps = finds.map(({ start, end }) => Math.max(0, start - miss.end, miss.start - end));
  return gaps.indexOf(Math.min(...gaps));
}
