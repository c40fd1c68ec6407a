import type { Section } from "@/lib/results";
import type { PaperPiece } from "@/lib/sittings";
import { checkBlueprint, type ForeseenItem, foreseeFillet, foreseenItems, predictPlate } from "@/lib/specimen";
import { filletAsked, plateAsked } from "../generation/asked-piece";

/** A piece that could be made. */
export interface PieceToDraw {
  readonly seed: string;
  readonly asked: PaperPiece;
}

export interface CandidateOrder {
  readonly section: Section;
  readonly pieces: readonly PieceToDraw[];
}

/** What each of the pieces will most likely have; null where such a piece is not to be had. */
export type Foreseen = readonly (readonly ForeseenItem[] | null)[];

/** Draws pieces and makes none of them. Some tenths of a second each, and so for a worker thread. */
export const foreseePieces = ({ section, pieces }: CandidateOrder): Foreseen =>
  pieces.map(section === "plate" ? foreseePlate : foreseeFilletWeld);

function foreseePlate({ seed, asked }: PieceToDraw): readonly ForeseenItem[] | null {
  const checked = checkBlueprint(plateAsked(asked));
  if (!checked.ok) return null;
  const plate = predictPlate(seed, checked.blueprint);
  return plate.ok ? foreseenItems(plate.faces) : null;
}

/** What shows of a fillet only once it is welded, such as a weld that came out too small, is not in it. */
function foreseeFilletWeld({ seed, asked }: PieceToDraw): readonly ForeseenItem[] | null {
  const fillet = foreseeFillet(seed, filletAsked(asked).blueprint);
  return fillet && foreseenItems([fillet]);
}
