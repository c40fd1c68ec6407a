import type { ImperfectionType } from "../../imperfections";
import { requiredLeg } from "../../weld";
import { isFilletTruth, type Truth, type TruthItem } from "../truth";
import { difficultyAt, difficultyOf, type Place, placeByToe, placeOf } from "./difficulty";
import type { SectionTruth } from "./expected-mark";
import { measureOf } from "./size-band";
import { type Measure, VISIBILITY } from "./visibility";

/** An imperfection with how well it is seen. */
export type SeenItem = TruthItem & {
  /** What strikes the eye of it, and how much of that there is, mm. */
  readonly eye: { readonly measure: Measure; readonly value: number };
  /** Logits: whoever has this ability finds it every second time. */
  readonly difficulty: number;
};

/** Nothing is seen as smaller than this, mm. */
const LEAST = 0.05;

/** What of a type strikes the eye. */
export const eyeMeasureOf = (type: ImperfectionType): Measure => VISIBILITY[type].measure;

/** The imperfections of a finished piece with how well each is seen, by what was measured of it. */
export const seenItems = (truth: Truth): SeenItem[] =>
  truth.items.map((item) => {
    const measure = eyeMeasureOf(item.type);
    return {
      ...item,
      eye: { measure, value: Math.max(LEAST, measureOf(item, measure)) },
      difficulty: difficultyAt(item, placeIn(truth, item), truth.joint.process),
    };
  });

/** An imperfection that a piece will most likely have. */
export type ForeseenItem = Pick<SeenItem, "type" | "eye" | "difficulty">;

/** What a piece that is drawn and not made will most likely have, with how well each will be seen. */
export const foreseenItems = (faces: readonly SectionTruth[]): ForeseenItem[] =>
  faces.flatMap(({ face, joint, items }) =>
    items.map((item) => {
      const measure = eyeMeasureOf(item.type);
      return {
        type: item.type,
        eye: { measure, value: Math.max(LEAST, measureOf(item, measure)) },
        difficulty: difficultyOf(item, face, joint),
      };
    }),
  );

function placeIn(truth: Truth, item: TruthItem): Place {
  if (!isFilletTruth(truth)) return placeOf(item, item.face, truth.joint);
  // seen along the line between the plates, a fillet's toes lie a leg's share from the corner
  return placeByToe(requiredLeg(truth.joint.size) / Math.SQRT2 - Math.abs(item.across));
}
