import type { RandomStream } from "../../random";
import type { JointPosition } from "../../weld";
import type { Side } from "../measure";

/** How molten metal ran in a welding position: places across as shares of the joint's half width, positive towards plate A. */
export interface SagShape {
  /** Middle of the hollow, and how far it reaches towards plate B and towards plate A. */
  readonly hollow: number;
  readonly reach: { readonly minus: number; readonly plus: number };
  /** Middle and half width of the bulge, and its height as a share of the depth of the hollow. */
  readonly bulge: number;
  readonly bulgeHalf: number;
  readonly bulgeHeight: number;
  /** How far the toe under the bulge is pushed out over the plate, mm at a depth of 1 mm; 0 leaves both toes. */
  readonly pushed: number;
  /** Which plate's prepared face shows at the edge of the hollow, and how deep as a share of the depth; null where none does. */
  readonly bare: { readonly side: Side; readonly depth: number } | null;
}

/** In PC the upper plate is A: its edge stays open or is only just covered. */
const drawSideways = (random: RandomStream): SagShape => ({
  hollow: random.uniform(0.34, 0.56),
  reach: { minus: random.uniform(0.9, 1.2), plus: random.uniform(0.6, 0.85) },
  bulge: random.uniform(-0.95, -0.72),
  bulgeHalf: random.uniform(0.45, 0.62),
  bulgeHeight: random.uniform(0.4, 0.75),
  pushed: random.uniform(0.7, 1.3),
  bare: random.chance(0.6) ? { side: 1, depth: random.uniform(0.35, 0.6) } : null,
});

/** Flat or upright: too much heat for one weave, and its middle sinks between the toes that froze first. */
const drawSunk = (random: RandomStream): SagShape => ({
  hollow: random.normal(0, 0.1),
  reach: { minus: random.uniform(0.85, 1.15), plus: random.uniform(0.85, 1.15) },
  bulge: 0,
  bulgeHalf: 1,
  bulgeHeight: 0,
  pushed: 0,
  bare: null,
});

/** Overhead: a belly hangs down beside the hollow that it came from. */
function drawHanging(random: RandomStream, side: Side): SagShape {
  const wide = random.uniform(0.7, 1);
  const narrow = random.uniform(0.55, 0.75);
  return {
    hollow: side * random.uniform(0.36, 0.52),
    reach: side > 0 ? { minus: narrow, plus: wide } : { minus: wide, plus: narrow },
    bulge: -side * random.uniform(0.3, 0.5),
    bulgeHalf: random.uniform(0.5, 0.7),
    bulgeHeight: random.uniform(0.6, 1.1),
    pushed: 0,
    bare: null,
  };
}

/** Draws where the metal ran: down to plate B in PC, hanging from either side in PE, sinking in the middle otherwise. */
export function drawSagShape(random: RandomStream, position: JointPosition, side: Side): SagShape {
  switch (position) {
    case "PB":
    case "PC":
      return drawSideways(random);
    case "PE":
      return random.chance(0.6) ? drawHanging(random, side) : drawSunk(random);
    case "PA":
    case "PF":
      return drawSunk(random);
  }
}
