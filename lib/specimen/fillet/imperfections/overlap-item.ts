import { median } from "../../../math";
import type { Surface } from "../../../surface";
import type { SectionPoint } from "../../../weld";
import { gather, type Range, type Side } from "../../measure";
import type { FilletTruthItem } from "../fillet-truth";
import { faceSection } from "../section";

/** Every so many mm along the weld a section is taken. */
const PER_MM = 2;
/** The toe lies out over the plate by more than this, sound stretches up to the second do not end it, mm. */
const THRESHOLD = 0.5;
const BRIDGE = 2;
/** A rolled edge stands at least this high over the plate this far inside it: steeper than any wetted toe, mm. */
const LIP = { inside: 0.4, rise: 0.48 };
/** Beyond each end the toe is taken as sound between these distances, mm. */
const SOUND: Range = { from: 3, to: 10 };
/** The ends decide where the sound toe is looked for, so they are found several times over. */
const PASSES = 3;

interface Toe {
  readonly x: number;
  /** Along the plate from the corner. */
  readonly leg: number;
  readonly hasLip: boolean;
}

/**
 * Metal rolled out over one of a finished fillet's plates (`side` 1 the standing one) between two places. The sound toe is the
 * straight line between the median legs 3 to 10 mm before the start and after the end; overlap is where the leg is longer than
 * that by more than 0.5 mm and the edge stands 0.48 mm over the plate 0.4 mm inside. Width = largest reach; null where none is.
 */
export function overlapItem(
  { strip }: Pick<Surface, "strip">,
  id: string,
  side: Side,
  range: Range,
): FilletTruthItem | null {
  const toes: Toe[] = [];
  for (let n = Math.ceil((range.from - SOUND.to) * PER_MM); n <= (range.to + SOUND.to) * PER_MM; n++) {
    const face = faceSection(strip, n / PER_MM);
    if (face) toes.push({ x: n / PER_MM, ...toeOf(side < 0 ? face : mirrored(face)) });
  }
  const sign = side < 0 ? 1 : -1;
  let ends: Range = range;
  let found: ReturnType<typeof gather> = null;
  for (let pass = 0; pass < PASSES; pass++) {
    const before = soundLeg(toes, ends.from - SOUND.to, ends.from - SOUND.from);
    const after = soundLeg(toes, ends.to + SOUND.from, ends.to + SOUND.to);
    const soundings = toes
      .filter(({ x }) => x >= range.from && x <= range.to)
      .map(({ x, leg, hasLip }) => {
        const sound = before + ((after - before) * (x - ends.from)) / (ends.to - ends.from);
        const [from, to] = [(sign * sound) / Math.SQRT2, (sign * leg) / Math.SQRT2];
        return { x, value: hasLip ? leg - sound : 0, y: to, low: Math.min(from, to), high: Math.max(from, to) };
      });
    found = gather(soundings, PER_MM, THRESHOLD, BRIDGE);
    if (!found) return null;
    ends = { from: found.start, to: found.end };
  }
  if (!found) return null;
  return {
    id,
    face: "fillet",
    type: "overlap",
    start: found.start,
    end: found.end,
    across: found.across,
    size: null,
    width: found.size,
    worst: found.worst,
    outline: found.outline,
    neutral: false,
  };
}

const mirrored = (face: readonly SectionPoint[]): SectionPoint[] =>
  face.map(({ along, up }) => ({ along: up, up: along })).reverse();

function toeOf(face: readonly SectionPoint[]): Pick<Toe, "leg" | "hasLip"> {
  const leg = face[0].along;
  const inside = leg - LIP.inside;
  // the face comes in from the toe: the first point so far inside tells its height there
  const at = face.find(({ along }) => along <= inside);
  return { leg, hasLip: at !== undefined && at.up >= LIP.rise };
}

const soundLeg = (toes: readonly Toe[], from: number, to: number): number =>
  median(toes.filter(({ x }) => x >= from && x <= to).map(({ leg }) => leg));
