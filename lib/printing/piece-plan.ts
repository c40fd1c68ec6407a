import { type Aspect, FACES, type JointKind, PIECES } from "../weld";
import { type Strip, stripsOf } from "./strips";

/** A strip of a piece as it is seen from one aspect. */
export interface PieceStrip extends Strip {
  readonly aspect: Aspect;
}

/** Longest picture beside which a page across has room to write, mm, and what neighbours share. */
const MOST = 200;
const MOST_BESIDE_LINES = 165;
const OVERLAP = 10;

/**
 * What each page of a piece's sheet shows at true scale: a butt plate face by face in strips, a fillet along the line between
 * its plates and then square on both of them.
 */
export function piecePages(kind: JointKind): readonly (readonly PieceStrip[])[] {
  const { length } = PIECES[kind];
  if (kind === "butt") {
    return FACES.flatMap((aspect) =>
      stripsOf(length, MOST_BESIDE_LINES, OVERLAP).map((strip) => [{ aspect, ...strip }]),
    );
  }
  const whole = stripsOf(length, MOST, OVERLAP);
  return [
    ...whole.map((strip) => [{ aspect: "fillet" as const, ...strip }]),
    ...whole.map((strip) => [
      { aspect: "standing" as const, ...strip },
      { aspect: "base" as const, ...strip },
    ]),
  ];
}
