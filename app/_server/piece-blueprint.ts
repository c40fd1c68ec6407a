import { DRAWN, type PaperSection } from "@/lib/sittings";
import {
  BLUEPRINTS,
  type Blueprint,
  drawCleanFillet,
  FILLET_BLUEPRINTS,
  type FilletBlueprint,
  PRACTICE_BLUEPRINTS,
  PRACTICE_FILLETS,
  type Wished,
  withFilletTypes,
  withTypes,
} from "@/lib/specimen";
import type { Position } from "@/lib/weld";

type PieceOfPaper = PaperSection["piece"];

/** Those that papers name, and those that only practice does. */
const PLATES: Readonly<Record<string, Blueprint>> = { ...BLUEPRINTS, ...PRACTICE_BLUEPRINTS };
const FILLETS: Readonly<Record<string, FilletBlueprint>> = { ...FILLET_BLUEPRINTS, ...PRACTICE_FILLETS };

const whole = <B>(blueprint: B): Wished<B> => ({ blueprint, unmet: [], fewer: 0 });

/**
 * The blueprint of a plate with what a paper fixes of its joint and the types that it asks for, and what of those cannot be
 * had. Throws on a piece that is none of the section plate.
 */
export function plateWished({ blueprint, process, position, thickness, types }: PieceOfPaper): Wished<Blueprint> {
  const named = PLATES[blueprint];
  const asked: Blueprint = {
    ...named,
    joint: {
      processes: process === DRAWN ? named.joint.processes : [process],
      positions: position === DRAWN ? named.joint.positions : [position as Position],
      thickness: thickness === DRAWN ? named.joint.thickness : [thickness, thickness],
    },
  };
  return types ? withTypes(asked, types) : whole(asked);
}

export const plateBlueprint = (piece: PieceOfPaper): Blueprint => plateWished(piece).blueprint;

/** The same of a fillet, whose blueprint says nothing of its joint: see `isFilletOf`. */
export function filletWished({ blueprint, types }: PieceOfPaper): Wished<FilletBlueprint> {
  const named = FILLETS[blueprint];
  return types ? withFilletTypes(named, types) : whole(named);
}

export const filletBlueprint = (piece: PieceOfPaper): FilletBlueprint => filletWished(piece).blueprint;

/** Whether the fillet that a seed gives has the joint that a paper fixes; where all of it is fixed, one seed in a few hundred does. */
export function isFilletOf({ process, position, thickness }: PieceOfPaper, seed: string): boolean {
  const { joint } = drawCleanFillet(seed);
  return (
    (process === DRAWN || process === joint.process) &&
    (position === DRAWN || position === joint.position) &&
    (thickness === DRAWN || thickness === joint.baseThickness)
  );
}
