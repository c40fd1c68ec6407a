import { type ImperfectionType, imperfection } from "../../imperfections";
import type { MaskExtent } from "../measure";
import type { Point, TruthItem } from "../truth";
import type { FaceWork } from "../work";

/** What measuring the finished surface gave for one imperfection, mm. */
export interface Found {
  readonly start: number;
  readonly end: number;
  readonly across: number;
  readonly size: number | null;
  readonly width: number | null;
  readonly worst: Point;
  readonly outline: readonly Point[];
  /** True for a decoy, whatever its size. */
  readonly harmless?: boolean;
}

/**
 * Makes the truth's record of something found. Point types get start = end = middle; what lies below the catalogue's
 * recordable size or length is neutral.
 */
export function truthItem(work: FaceWork, id: string, type: ImperfectionType, found: Found): TruthItem {
  const entry = imperfection(type);
  const middle = (found.start + found.end) / 2;
  const isPoint = entry.extent === "point";
  const tooSmall = found.size !== null && found.size < entry.recordedFrom;
  const tooShort = !isPoint && found.end - found.start < entry.recordedLength;
  return {
    id,
    face: work.face,
    type,
    start: isPoint ? middle : found.start,
    end: isPoint ? middle : found.end,
    across: found.across,
    size: entry.size === null ? null : found.size,
    width: found.width,
    worst: found.worst,
    outline: found.outline,
    neutral: Boolean(found.harmless) || tooSmall || tooShort,
  };
}

/** A group of pixels as found: middle and width of its extent across, worst where it is strongest, no size. */
export const foundExtent = ({ start, end, low, high, strongest, outline }: MaskExtent): Found => ({
  start,
  end,
  across: (low + high) / 2,
  size: null,
  width: high - low,
  worst: strongest,
  outline,
});

/** The same for what is listed as a place: width = the larger of its extents along and across. */
export const foundPlace = (extent: MaskExtent): Found => ({
  ...foundExtent(extent),
  width: Math.max(extent.end - extent.start, extent.high - extent.low),
});

/** Outline of a round thing, 20 points. */
export const circleOutline = (x: number, y: number, radius: number): Point[] =>
  Array.from({ length: 20 }, (_, n) => [
    x + radius * Math.cos((n * Math.PI) / 10),
    y + radius * Math.sin((n * Math.PI) / 10),
  ]);

/** Outline of a box in mm. */
export const boxOutline = (box: { x0: number; x1: number; y0: number; y1: number }): Point[] => [
  [box.x0, box.y0],
  [box.x1, box.y0],
  [box.x1, box.y1],
  [box.x0, box.y1],
];
