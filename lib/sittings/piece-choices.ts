import type { Section } from "../results";
import {
  FILLET_POSITIONS,
  FILLET_PROCESSES,
  type JointPosition,
  POSITIONS,
  PROCESSES,
  type Process,
  type SurfaceFace,
} from "../weld";

/** The faces of a section's piece. */
export const FACES_OF: Readonly<Record<Section, readonly SurfaceFace[]>> = {
  plate: ["cap", "root"],
  fillet: ["fillet"],
};

/** What is known of a blueprint where papers are written. */
export interface BlueprintChoice {
  /** Its plates, from least to most, whole mm; of a fillet, its base plate. */
  readonly thickness: readonly [least: number, most: number];
  /** So many indications it asks for at most: no more types can be asked of it. */
  readonly indications: number;
}

/** What a tutor may fix of a section's piece. */
export interface PieceChoices {
  readonly processes: readonly Process[];
  readonly positions: readonly JointPosition[];
  readonly blueprints: Readonly<Record<string, BlueprintChoice>>;
}

/**
 * What can be chosen in each section. A blueprint is named only: what is in it is known where specimens are made, and
 * `tests/unit/sittings` holds names and figures against that.
 */
export const PIECE_CHOICES: Readonly<Record<Section, PieceChoices>> = {
  plate: {
    processes: PROCESSES,
    positions: POSITIONS,
    blueprints: {
      practice: { thickness: [6, 25], indications: 12 },
      assessment: { thickness: [6, 25], indications: 12 },
      "final-mock": { thickness: [12, 20], indications: 22 },
      clean: { thickness: [6, 25], indications: 0 },
    },
  },
  fillet: {
    processes: FILLET_PROCESSES,
    positions: FILLET_POSITIONS,
    blueprints: {
      practice: { thickness: [6, 15], indications: 6 },
      clean: { thickness: [6, 15], indications: 0 },
    },
  },
};
