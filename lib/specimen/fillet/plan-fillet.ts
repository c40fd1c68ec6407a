import { hypot } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, type Grid, gradient1 } from "../../surface";
import type { FacePlan } from "../plan";
import { planFace } from "../runs";
import type { Look, WorkedJoint } from "../work";
import type { BeadSection, FilletRecipe } from "./fillet-recipe";

/** The weld's toes keep at least this far outside what is planned as the groove's edge, mm. */
export const COVERED = 1;
/** What the arc filled the corner with before the face froze shows where two lengths of weld part, mm below the line from toe to toe. */
const FILLED = { single: -1.3, several: -1.5 };

/** Half the straight line from toe to toe, mm. */
export const halfChord = ({ baseLeg, standingLeg }: BeadSection): number => hypot(baseLeg, standingLeg) / 2;

/** The joint laid out flat: the corner between the plates is a 90-degree groove, as deep as half the weld is wide. */
export function laidOutJoint(
  { joint, section }: Pick<FilletRecipe, "joint" | "section">,
  halfWidth: number,
): WorkedJoint {
  const foreshortened = (section.baseLeg + section.standingLeg) / 2 - halfChord(section);
  return {
    kind: "butt",
    process: joint.process,
    position: joint.position,
    length: joint.length,
    width: 2 * (halfWidth * Math.SQRT2 - foreshortened),
    thickness: halfChord(section) - COVERED,
    grooveAngle: joint.angle,
    rootGap: 0,
    rootFace: 0,
  };
}

/** How much less a run's height wavers than in a butt joint, where there is more of it; and its slow change, mm. */
const WAVER = 0.45;
const SLOW = { wavelength: 41, height: 0.16 };
/** Heights of a weld of several runs: ridges and valleys of each over the line from toe to toe. */
const SEVERAL = 0.3;
/** Of a low bead the deposit flattens the ripples: they are as high as on any other. */
const RIPPLE = 1.55;
/** How the hand favours now one plate, now the other, mm of half difference between the legs. */
const FAVOUR = { wavelength: 57, reach: 0.16 };

/** Plans the runs of a sound fillet, ordinary stops included. */
export function planFillet(
  recipe: FilletRecipe,
  joint: WorkedJoint,
  look: Look,
  grid: Grid,
  random: RandomStream,
): FacePlan {
  const { section, layout } = recipe;
  const plan = planFace("cap", joint, layout, look, grid, random);
  const seed = random.child("section").seed();
  const single = plan.runs.length === 1;
  const middle = (section.standingLeg - section.baseLeg) / 2;
  for (const run of plan.runs) {
    const mean = run.height.reduce((sum, height) => sum + height, 0) / run.height.length;
    for (let i = 0; i < grid.columns; i++) {
      const x = columnX(grid, i);
      const slow = SLOW.height * gradient1(x / (SLOW.wavelength * look.tempo), seed);
      const waver = WAVER * (run.height[i] - mean);
      run.height[i] = single
        ? section.convexity + waver + slow
        : SEVERAL * run.height[i] + 0.4 * section.convexity + slow;
      run.centre[i] += middle + FAVOUR.reach * gradient1(x / (FAVOUR.wavelength * look.tempo), seed + 1);
      run.ripple[i] *= single ? RIPPLE : 1.2;
    }
  }
  // a level is counted from the groove's edge, which lies inside the toes
  plan.fill.fill(COVERED + (single ? FILLED.single : FILLED.several));
  return plan;
}
