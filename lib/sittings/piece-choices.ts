import type { Section } from "../results";
import { FILLET_POSITIONS, FILLET_PROCESSES, type JointPosition, POSITIONS, PROCESSES, type Process } from "../weld";

/** What a tutor may fix of a section's piece. */
export interface PieceChoices {
  readonly processes: readonly Process[];
  readonly positions: readonly JointPosition[];
  /** Blueprints by name, each with the thickness that its plates may have, from least to most, whole mm; of a fillet, its base plate. */
  readonly blueprints: Readonly<Record<string, { readonly thickness: readonly [least: number, most: number] }>>;
}

/**
 * What can be chosen in each section. A blueprint is named only: what is in it is known where specimens are made, and
 * `tests/unit/sittings` holds the names and thicknesses against that.
 */
export const PIECE_CHOICES: Readonly<Record<Section, PieceChoices>> = {
  plate: {
    processes: PROCESSES,
    positions: POSITIONS,
    blueprints: {
      practice: { thickness: [6, 25] },
      assessment: { thickness: [6, 25] },
      "final-mock": { thickness: [12, 20] },
      clean: { thickness: [6, 25] },
    },
  },
  fillet: {
    processes: FILLET_PROCESSES,
    positions: FILLET_POSITIONS,
    blueprints: { practice: { thickness: [6, 15] }, clean: { thickness: [6, 15] } },
  },
};
