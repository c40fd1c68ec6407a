import { CLUTTER, CLUTTER_WORDS, type ImperfectionType, imperfection, likeness, typesOn } from "../../imperfections";
import type { Truth } from "../../specimen";
import type { SurfaceFace } from "../../weld";
import type { Choice } from "../kind";
import { clutterName, faceWords, inside, looks, stretchWords } from "../words";
import { recordable } from "./items";

const isPlaced = (type: ImperfectionType): boolean => imperfection(type).family !== "misalignment";

/** Names that something on a face could wrongly be given: what lies elsewhere on the piece, look-alikes, and harmless things. */
export function otherNames(type: ImperfectionType | null, face: SurfaceFace, truth: Truth): Choice[] {
  const present = recordable(truth).filter((item) => item.type !== type);
  const alike = typesOn(face).filter(
    (other) =>
      type !== null && isPlaced(other) && likeness(type, other) === 0.5 && present.every((item) => item.type !== other),
  );
  return [
    ...[...new Map(present.map((item) => [item.type, item])).values()].map((item) => ({
      text: imperfection(item.type).name,
      why: `that lies ${stretchWords(item)} on ${faceWords(item.face)}`,
    })),
    ...alike.map((other) => ({ text: imperfection(other).name, why: `it looks otherwise: ${looks(other)}` })),
  ];
}

/** Harmless things as wrong names, with how to tell them. */
export const harmlessNames = (besides: string | null): Choice[] =>
  CLUTTER.filter((kind) => kind !== besides).map((kind) => ({
    text: clutterName(kind),
    why: `you would tell that like this: ${inside(CLUTTER_WORDS[kind].tell)}`,
  }));
