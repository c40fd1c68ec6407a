import type { RandomStream } from "../../random";
import { randomStream } from "../../random";
import {
  FILLET_LENGTH,
  FILLET_POSITIONS,
  FILLET_PROCESSES,
  type FilletJoint,
  type FilletPosition,
  type FilletProcess,
  requiredLeg,
} from "../../weld";
import { drawRuns } from "../recipe/layout";
import { drawLook } from "../recipe/look";
import { type FaceLayout, POSITION_STYLES, PROCESS_STYLES, type Range } from "../runs";
import type { FeatureRequest, Look } from "../work";
import { COVERED, halfChord } from "./plan-fillet";

/** Mean section of a fillet's bead, mm. */
export interface BeadSection {
  readonly baseLeg: number;
  readonly standingLeg: number;
  /** Bulge over the line from toe to toe, negative where the face is hollow. */
  readonly convexity: number;
}

/** Gap between the standing plate's foot and the base plate, mm at either end of the joint. */
export interface RootGap {
  readonly datum: number;
  readonly farEnd: number;
}

/** A fillet specimen before it is made. */
export interface FilletRecipe {
  readonly seed: string;
  readonly joint: FilletJoint;
  readonly look: Look;
  /** Stamped on the plates. */
  readonly number: string;
  readonly layout: FaceLayout;
  readonly section: BeadSection;
  readonly gap: RootGap;
  /** Where legs and throat are to be measured, mm from the datum, in order. */
  readonly stations: readonly number[];
  readonly requests: readonly FeatureRequest[];
}

/** Usual sizes on drawings, mm. */
const THROATS = [3, 3.5, 4, 5, 6, 7];
const LEGS = [5, 6, 7, 8, 10];
/** A throat is no more than this share of the thinner plate; common practice, no source. */
const MOST_THROAT = 0.7;
/** Largest leg, mm: the weld with its surroundings must lie within the fine strip. */
const LARGEST_LEG = 11;

/** What is fixed of a fillet's joint; everything else is drawn. */
export interface FilletChoice {
  readonly process?: FilletProcess;
  readonly position?: FilletPosition;
  /** Whole mm, 6 to 15. */
  readonly baseThickness?: number;
}

function drawFilletJoint(random: RandomStream, choice: FilletChoice): FilletJoint {
  // drawn in any case, so that what is fixed moves nothing else
  const drawnProcess = random.pick(FILLET_PROCESSES);
  const drawnPosition = random.pick(["PB", "PB", "PB", ...FILLET_POSITIONS] as const);
  const drawnThickness = 6 + random.integer(10);
  const { process = drawnProcess, position = drawnPosition, baseThickness = drawnThickness } = choice;
  const standingThickness = 6 + random.integer(Math.min(10, baseThickness - 3));
  const thinner = Math.min(baseThickness, standingThickness);
  const symbol = random.chance(0.6) ? "a" : "z";
  const sizes = (symbol === "a" ? THROATS : LEGS).filter(
    (value) => requiredLeg({ symbol, value }) <= Math.min(LARGEST_LEG - 1.2, MOST_THROAT * Math.SQRT2 * thinner),
  );
  return {
    kind: "fillet",
    process,
    position,
    length: FILLET_LENGTH,
    baseThickness,
    standingThickness,
    size: { symbol, value: random.pick(sizes) },
    angle: 90,
  };
}

/** Bulge of a sound bead by position, mm. Common practice, no source. */
const CONVEXITY: Readonly<Record<FilletJoint["position"], Range>> = {
  PA: [-0.45, 0.35],
  PB: [0, 0.75],
  PF: [0.25, 0.9],
};
/** What a welder lays beyond what the drawing asks for: a share of the leg, and mm. */
const CARE = 1.03;
const OVERSIZE: Range = [0.7, 1.5];
/** How much longer the leg on a level base plate gets, mm. */
const SAGGED: Range = [0, 0.7];

function drawSection(joint: FilletJoint, random: RandomStream): BeadSection {
  const convexity = random.uniform(...CONVEXITY[joint.position]);
  const leg = requiredLeg(joint.size) * CARE + random.uniform(...OVERSIZE) + Math.SQRT2 * Math.max(0, -convexity);
  const longer = joint.position === "PB" ? random.uniform(...SAGGED) : random.normal(0, 0.35);
  return { baseLeg: leg + longer / 2, standingLeg: leg - longer / 2, convexity };
}

/** How far from the plates' ends the weld begins and finishes, mm. */
const ENDS: readonly [number, number] = [1.5, 6];
/** Widest single run, mm of half width, laid straight and woven. */
const WIDEST = { straight: 5.9, woven: 8.6 };

function drawLayout(joint: FilletJoint, section: BeadSection, random: RandomStream): FaceLayout {
  const style = POSITION_STYLES[joint.position];
  const { stops } = PROCESS_STYLES[joint.process];
  const direction = style.climbs || random.chance(0.75) ? 1 : -1;
  const widest = joint.position === "PF" ? WIDEST.woven : WIDEST.straight;
  const count = halfChord(section) <= widest ? 1 : 2;
  const lengths = count === 1 ? stops.weave : stops.stringer;
  const runs = drawRuns(joint, count, ENDS, lengths, direction, random.child("stops"));
  return { direction, overlap: COVERED, runs };
}

/** Most gap that a sound joint shows, mm. */
const SOUND_GAP = 0.6;

/** Clean fillet of a seed, without anything wrong. */
export function drawCleanFillet(seed: string, choice: FilletChoice = {}): FilletRecipe {
  const random = randomStream(`fillet ${seed}`);
  const drawn = drawFilletJoint(random.child("joint"), choice);
  const section = drawSection(drawn, random.child("section"));
  const gaps = random.child("gap");
  const stations = random.child("stations");
  return {
    seed,
    joint: drawn,
    look: drawLook(random.child("look"), drawn.process),
    number: `T${100 + random.child("number").integer(900)}`,
    layout: drawLayout(drawn, section, random.child("layout")),
    section,
    gap: { datum: gaps.uniform(0, SOUND_GAP), farEnd: gaps.uniform(0, SOUND_GAP) },
    stations: [0.2, 0.5, 0.8].map((share) => Math.round(share * drawn.length + stations.uniform(-14, 14))),
    requests: [],
  };
}
