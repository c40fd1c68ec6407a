import { type Clutter, type ImperfectionType, imperfection } from "../imperfections";
import type { Mm } from "../math";
import { type ClutterItem, isFilletTruth, type Truth, type TruthItem } from "../specimen";
import { FACES, type Face } from "../weld";
import type { Box } from "./frame";

/** A piece that windows may be cut from, with everything that is on it. */
export interface Piece {
  readonly specimenId: string;
  readonly truth: Truth;
}

/** Something on a face, with the place that it takes up. */
export type PlacedThing = { readonly box: Box } & (
  | { readonly what: "imperfection" | "neutral"; readonly name: ImperfectionType; readonly item: TruthItem }
  | { readonly what: "clutter"; readonly name: Clutter; readonly item: ClutterItem }
);

/** One face of a piece. */
export interface MaterialFace {
  readonly specimenId: string;
  readonly face: Face;
  readonly things: readonly PlacedThing[];
  /** The plates of the piece lie out of line: that is everywhere on both faces, so no window of it has nothing. */
  readonly isMisaligned: boolean;
}

/** The faces of plates; fillets have no window that is seen square on. */
export function materialOf(pieces: readonly Piece[]): readonly MaterialFace[] {
  return pieces
    .filter(({ truth }) => !isFilletTruth(truth))
    .flatMap(({ specimenId, truth }) => {
      // measured on the cap and listed there alone, and seen on the root as well
      const isMisaligned = truth.items.some(({ type, neutral }) => isOfJoint(type) && !neutral);
      return FACES.map((face) => {
        const items = truth.items.filter((item) => item.face === face);
        const things = items.filter(({ type }) => !isOfJoint(type)).map(placedItem);
        const clutter = truth.clutter.filter((item) => item.face === face).map(placedClutter);
        return {
          specimenId,
          face,
          things: [...things, ...clutter],
          isMisaligned,
        };
      });
    });
}

/** What runs along the whole joint is in no window more than in another, and is measured and not seen. */
export const isOfJoint = (type: ImperfectionType): boolean => imperfection(type).family === "misalignment";

/** There has to be a face on which some windows have nothing, or the answer to "is there something?" would always be yes. */
export const isEnough = (material: readonly MaterialFace[]): boolean =>
  material.some(({ isMisaligned, things }) => !isMisaligned && things.some(({ what }) => what === "imperfection"));

function placedItem(item: TruthItem): PlacedThing {
  return { what: item.neutral ? "neutral" : "imperfection", name: item.type, item, box: boxAround(item) };
}

const placedClutter = (item: ClutterItem): PlacedThing => ({
  what: "clutter",
  name: item.kind,
  item,
  box: boxAround(item),
});

function boxAround({ outline, start, end }: Pick<TruthItem, "outline" | "start" | "end">): Box {
  const along: Mm[] = [start, end, ...outline.map(([x]) => x)];
  const across = outline.map(([, y]) => y);
  return { x0: Math.min(...along), x1: Math.max(...along), y0: Math.min(...across), y1: Math.max(...across) };
}

/** What each kind of clutter is easily taken for, by its words in the catalogue. Common practice, no source. */
export const TAKEN_FOR: Readonly<Record<Clutter, readonly ImperfectionType[]>> = {
  "chalk-mark": [],
  "pen-mark": [],
  scratch: ["longitudinal-crack", "transverse-crack", "branching-cracks"],
  "mill-scale-edge": ["continuous-undercut", "intermittent-undercut", "underflushing"],
  "rust-patch": ["temper-colour", "scaled-surface"],
  "tight-toe": ["continuous-undercut", "intermittent-undercut", "overlap", "sidewall-fusion"],
  "coarse-ripple": ["poor-restart", "irregular-surface"],
  "removed-spatter": ["spatter", "surface-pore", "clustered-porosity"],
  "glass-spots": ["slag-residue", "surface-pore", "surface-porosity"],
};
