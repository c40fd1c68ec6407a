import { type GaugePlacement, heightsOfFace } from "../../../lib/gauges";
import { type ImperfectionType, imperfection } from "../../../lib/imperfections";
import type { RandomStream } from "../../../lib/random";
import type { Measure, Report } from "../../../lib/report";
import type { ButtTruth, TruthItem } from "../../../lib/specimen";
import type { Surface } from "../../../lib/surface";
import type { Dimension, Face } from "../../../lib/weld";
import { callOf } from "./calls";
import { crestSeen, toeSeen, toesNear } from "./eye";
import { Hand, meanOf, middleOf, stepsFrom, tenth } from "./hand";
import { acrossWeld, bothSides, deepest, diameterOf, finelyRound, restartAt } from "./sizes";

type Heights = Pick<Surface, "strip" | "plate">;

/** Where a dimension was measured and what was read. */
interface Read {
  readonly value: number;
  readonly x: number;
}

/**
 * The report of a careful inspector on a butt plate: what there is to find is found and named, as the truth has it; every
 * place is read off a rule, every size and every dimension is measured with the gauges on the heights of both faces.
 */
export function inspectPlate(
  surfaces: Readonly<Record<Face, Heights>>,
  facesApart: number,
  truth: Pick<ButtTruth, "items">,
  random: RandomStream,
): Report {
  const handAt = (face: Face, other: Face) =>
    new Hand(heightsOfFace(surfaces[face], { surface: surfaces[other], facesApart }), random.child(face));
  const hands = { cap: handAt("cap", "root"), root: handAt("root", "cap") };
  const found = truth.items.filter(({ neutral }) => !neutral);
  // on the root bent plates fall away from the gauge, and its bead is narrow
  const standing = platesStand(hands.root);
  const read: readonly (readonly [Dimension, Read])[] = [
    ["plate-thickness", thicknessOf(hands.cap)],
    ["weld-width", widthOf(hands.cap, found)],
    ["cap-height", crownOf(hands.cap, 6, 294)],
    ["linear-misalignment", standing.step],
    ["angular-misalignment", standing.angle],
    ["root-height", crownOf(hands.root, 6, 294)],
  ];
  const measures = read.map(([dimension, { value, x }]): Measure => {
    return { dimension, station: null, value: tenth(Math.max(0, value)), at: tenth(x) };
  });
  const calls = found.map((item, n) => {
    const hand = hands[item.face as Face];
    return callOf(item, `call-${n + 1}`, sizeOf(hand, item, standing.step.value), hand);
  });
  return { version: 1, calls, measures, statements: [], pieceSentence: null, answers: {} };
}

/** By caliper at five places on either plate. */
function thicknessOf(hand: Hand): Read {
  const places = [1, -1].flatMap((side) =>
    [30, 90, 150, 210, 270].map(
      (x): GaugePlacement => ({ kind: "caliper", x, y: side * 52, turn: side > 0 ? 90 : 270 }),
    ),
  );
  return { value: middleOf(places.map((at) => hand.settled(at, 3)).filter((one) => !Number.isNaN(one))), x: 150 };
}

/** The highest of a crown: the gauge stands beside both toes, every 2 mm along the weld. */
function crownOf(hand: Hand, from: number, to: number): Read {
  const places = stepsFrom(from, to, 2).map((x) => {
    const toes = toesNear(hand.heights, x);
    return acrossWeld("height-gauge", { x, y: crestSeen(hand.heights, x, ...toes) }, toes);
  });
  const { value, at } = hand.furthest(places, "most", 8);
  return { value, x: at.x };
}

/** Marks on the plates that hide where the weld leaves them. */
const BESIDE_THE_WELD: readonly ImperfectionType[] = [
  "grinding-mark",
  "chipping-mark",
  "torn-surface",
  "underflushing",
  "stray-arc",
  "spatter",
  "tungsten-spatter",
];

/** Toe to toe by the rule at the five places that look widest, away from what lies beside the weld. */
function widthOf(hand: Hand, found: readonly TruthItem[]): Read {
  const marks = found.filter(({ face, type }) => face === "cap" && BESIDE_THE_WELD.includes(type));
  const isFree = (x: number) => marks.every(({ start, end }) => x < start - 4 || x > end + 4);
  const seen = stepsFrom(8, 292, 1)
    .filter(isFree)
    .map((x) => ({ x, low: toeSeen(hand.heights, x, -1), high: toeSeen(hand.heights, x, 1) }));
  const widest = seen.sort((a, b) => b.high - b.low - (a.high - a.low)).slice(0, 5);
  const read = widest.map(({ x, low, high }) => hand.rule({ x, y: low }, { x, y: high }));
  return { value: middleOf(read), x: widest[0].x };
}

/** The hook gauge reaches no further than this from its slide to its sole, mm. */
const FURTHEST_REACH = 45;
const BESIDE_TOE = { slide: 4, sole: 3 };

/**
 * Step and angle between the plates at x. On bent plates a hook gauge shows more or less the further its slide stands from the
 * weld: read near and far, its readings lie on a line that shows the step where the plates meet, and the angle by its slope.
 */
function standsAt(hand: Hand, x: number): { step: number; slope: number } {
  const [low, high] = toesNear(hand.heights, x);
  const ways = ([1, -1] as const).map((side) => {
    const [own, other] = side > 0 ? [high, -low] : [-low, high];
    const near = other + BESIDE_TOE.slide;
    const far = Math.min(near + 18, FURTHEST_REACH - own - BESIDE_TOE.sole);
    const [a, b] = [near, far].map((out) => {
      const reach = out + own + BESIDE_TOE.sole;
      return hand.settled({ kind: "hook-gauge", x, y: -side * out, turn: side > 0 ? 90 : 270, reach });
    });
    const slope = (b - a) / (far - near);
    return { step: side * (a - slope * near), slope };
  });
  // where the other plate stands higher than its scale goes, one way only can be read
  const read = ways.filter(({ step }) => !Number.isNaN(step));
  return { step: meanOf(read.map(({ step }) => step)), slope: meanOf(read.map(({ slope }) => slope)) };
}

function platesStand(hand: Hand): { readonly step: Read; readonly angle: Read } {
  const felt = stepsFrom(10, 290, 20)
    .map((x) => ({ x, ...standsAt(hand, x) }))
    .filter(({ step }) => !Number.isNaN(step));
  // plates are stiff: the straight line that most of it lies on, and its ends
  const pairs = felt.flatMap((a) => felt.filter((b) => b.x > a.x).map((b) => (b.step - a.step) / (b.x - a.x)));
  const slope = middleOf(pairs);
  const level = middleOf(felt.map(({ x, step }) => step - slope * x));
  const ends = [4, 296].map((x): Read => ({ x, value: Math.abs(level + slope * x) }));
  const angles = felt.map(({ x }): Read => {
    const near = felt.filter((one) => Math.abs(one.x - x) <= 60).map((one) => one.slope);
    return { x, value: Math.abs((Math.atan(middleOf(near)) * 180) / Math.PI) };
  });
  const larger = (a: Read, b: Read) => (b.value > a.value ? b : a);
  return { step: ends.reduce(larger), angle: angles.reduce(larger) };
}

/** The size of an imperfection by the gauge that suits; null where nobody measures one. */
function sizeOf(hand: Hand, item: TruthItem, step: number): number | null {
  const { size } = imperfection(item.type);
  if (size === null) return null;
  const [x, y] = item.worst;
  if (size === "diameter") return diameterOf(hand, item);
  const toes = toesNear(hand.heights, x);
  const point = (place: (at: { x: number; y: number }) => GaugePlacement) =>
    deepest(hand, finelyRound(x, y).map(place));
  switch (item.type) {
    case "linear-misalignment":
      return step;
    case "excess-weld-metal":
    case "excess-penetration":
      return crownOf(hand, Math.max(5, x - 4), Math.min(295, x + 4)).value;
    case "poor-restart":
      return restartAt(hand, x, item.across);
    case "continuous-undercut":
    case "intermittent-undercut":
    case "shrinkage-groove":
    case "sidewall-fusion":
    case "root-fusion": {
      // both feet on the plate beside it
      const turn = y > (toes[0] + toes[1]) / 2 ? 90 : 270;
      return point((at) => ({ kind: "depth-gauge", ...at, turn, stance: "one-side", near: 5, spacing: 14 }));
    }
    case "grinding-mark":
    case "chipping-mark":
    case "torn-surface":
    case "underflushing": {
      const isClear = Math.abs(y) - (item.width ?? 4) / 2 - 3 > Math.abs(toes[y > 0 ? 1 : 0]);
      const length = isClear ? (item.width ?? 4) : item.end - item.start;
      const half = Math.min(29, Math.max(5, length / 2 + 2));
      return point((at) => bothSides("depth-gauge", at, isClear ? 90 : 0, half));
    }
    case "inter-run-fusion":
    case "inter-run-undercut": {
      // the valley between two runs has a depth of its own, which is read before and behind
      const valley = (at: { x: number; y: number }) => bothSides("depth-gauge", at, 90, 5);
      const sound = [item.start - 8, item.end + 8].filter((at) => at > 6 && at < 294);
      const beside = sound.map((at) => deepest(hand, finelyRound(at, y).map(valley)));
      return point(valley) - meanOf(beside.filter((depth) => !Number.isNaN(depth)));
    }
    default:
      return point((at) => acrossWeld("depth-gauge", at, toes));
  }
}
