import { DRAWN, type PaperSection } from "@/lib/sittings";
import { BLUEPRINTS, type Blueprint, drawCleanFillet, FILLET_BLUEPRINTS, type FilletBlueprint } from "@/lib/specimen";
import type { Position } from "@/lib/weld";

type PieceOfPaper = PaperSection["piece"];

/** The blueprint of a plate with what a paper fixes of its joint. Throws on a piece that is none of the section plate. */
export function plateBlueprint({ blueprint, process, position, thickness }: PieceOfPaper): Blueprint {
  const whole = BLUEPRINTS[blueprint as keyof typeof BLUEPRINTS];
  return {
    ...whole,
    joint: {
      processes: process === DRAWN ? whole.joint.processes : [process],
      positions: position === DRAWN ? whole.joint.positions : [position as Position],
      thickness: thickness === DRAWN ? whole.joint.thickness : [thickness, thickness],
    },
  };
}

/** The blueprint of a fillet, which says nothing of its joint: see `isFilletOf`. */
export const filletBlueprint = ({ blueprint }: PieceOfPaper): FilletBlueprint =>
  FILLET_BLUEPRINTS[blueprint as keyof typeof FILLET_BLUEPRINTS];

/** Whether the fillet that a seed gives has the joint that a paper fixes; where all of it is fixed, one seed in a few hundred does. */
export function isFilletOf({ process, position, thickness }: PieceOfPaper, seed: string): boolean {
  const { joint } = drawCleanFillet(seed);
  return (
    (process === DRAWN || process === joint.process) &&
    (position === DRAWN || position === joint.position) &&
    (thickness === DRAWN || thickness === joint.baseThickness)
  );
}
