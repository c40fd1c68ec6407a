import { imperfection } from "../../imperfections";
import { DEFAULT_TOLERANCES, SIZE_UNCERTAINTY, type Tolerance } from "../../results";
import { isFilletTruth, type Truth, type TruthItem } from "../../specimen";
import { PIECES, type SurfaceFace } from "../../weld";
import type { Place } from "../question";

/** What of a truth has a place along the weld: misalignment runs along all of it and is asked for as a dimension. */
export const placedItems = ({ items }: Pick<Truth, "items">): TruthItem[] =>
  items.filter(({ type }) => imperfection(type).family !== "misalignment");

/** What has to be recorded, on all faces or on one. */
export const recordable = (truth: Pick<Truth, "items">, face?: SurfaceFace): TruthItem[] =>
  placedItems(truth).filter((item) => !item.neutral && (face === undefined || item.face === face));

/** What can be seen and is too small to record. */
export const tooSmall = (truth: Pick<Truth, "items">): TruthItem[] =>
  placedItems(truth).filter(({ neutral }) => neutral);

/**
 * True where careful hands may say that it is too small to record: so it is, or its size reaches what has to be recorded by less
 * than it can be misread.
 */
export function isDoubtful({ type, size, neutral }: TruthItem): boolean {
  const { recordedFrom } = imperfection(type);
  return neutral || (size !== null && recordedFrom > 0 && size - recordedFrom < SIZE_UNCERTAINTY);
}

export const facesOf = ({ joint }: Truth): readonly SurfaceFace[] => PIECES[joint.kind].faces;

export const lengthOf = ({ start, end }: Pick<TruthItem, "start" | "end">): number => end - start;

const within = ({ full, share }: Tolerance, reference: number): number => Math.max(full, share * reference);

/** How far a start or an end may be off in a report that earns in full, mm. */
export const placeTolerance = (item: Pick<TruthItem, "start" | "end">): number =>
  within(DEFAULT_TOLERANCES.start, lengthOf(item));

/** How far the length may then be off: both ends add up. */
export const lengthTolerance = (item: Pick<TruthItem, "start" | "end">): number =>
  placeTolerance(item) + within(DEFAULT_TOLERANCES.end, lengthOf(item));

/** So far across from each other two things are told apart beside each other, mm; common practice, no source. */
const APART_ACROSS = 12;
/** So far along, mm: both may be in the wrong place by a full tolerance, and places are written to the millimetre. */
const APART_ALONG = 2 * DEFAULT_TOLERANCES.start.full + 1;

interface Lying extends Pick<TruthItem, "face" | "start" | "end" | "across"> {}

/** True where nothing else on the face lies so near that it could be taken for what is meant. */
export function isAlone(one: Lying, truth: Truth): boolean {
  const others: readonly Lying[] = [...placedItems(truth), ...truth.clutter];
  return others.every(
    (other) =>
      other === one ||
      other.face !== one.face ||
      other.start - one.end > APART_ALONG ||
      one.start - other.end > APART_ALONG ||
      Math.abs(other.across - one.across) >= APART_ACROSS,
  );
}

export const placeOf = ({ face, start, end }: Lying): Place => ({ face, start, end });

/** How the two sides of a weld are called: plates A and B, or base and standing plate. */
export const sideWords = (truth: Truth): { readonly above: string; readonly below: string } =>
  isFilletTruth(truth)
    ? { above: "the base plate", below: "the standing plate" }
    : { above: "plate A", below: "plate B" };

/** "8 mm from the centre line towards plate A". */
export function acrossWords(across: number, truth: Truth): string {
  const { above, below } = sideWords(truth);
  const line = isFilletTruth(truth) ? "the line between the plates" : "the centre line";
  const distance = Math.abs(Math.round(across));
  return distance === 0 ? `on ${line}` : `${distance} mm from ${line} towards ${across > 0 ? above : below}`;
}
