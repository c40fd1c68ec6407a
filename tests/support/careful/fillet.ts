import { FEELER_LEAVES, type FilletUse, type GaugePlacement, heightsOfFace, tryLeaf } from "../../../lib/gauges";
import { imperfection } from "../../../lib/imperfections";
import type { RandomStream } from "../../../lib/random";
import type { Measure, Report } from "../../../lib/report";
import type { FilletTruth, TruthItem } from "../../../lib/specimen";
import { type Surface, turnedFillet } from "../../../lib/surface";
import { FILLET_ENDS, requiredThroat, STATEMENT_LIMITS, type Stated } from "../../../lib/weld";
import { callOf } from "./calls";
import { Hand, middleOf, stepsFrom, tenth } from "./hand";
import { deepest, diameterOf, finelyRound, restartAt } from "./sizes";

type Size = "base-leg" | "standing-leg" | "throat";
const SIZES: readonly Size[] = ["base-leg", "standing-leg", "throat"];
const HELD: Readonly<Record<Size, { readonly use: FilletUse; readonly turn: number }>> = {
  "base-leg": { use: "leg", turn: 90 },
  "standing-leg": { use: "leg", turn: 270 },
  throat: { use: "throat", turn: 90 },
};
const gaugeFor = (size: Size, x: number): GaugePlacement => ({ kind: "fillet-gauge", x, y: 0, ...HELD[size] });

/** The report of a careful inspector on a fillet, as `inspectPlate` has it; `gap` is what a feeler finds at either end. */
export function inspectFillet(
  surface: Surface,
  truth: Pick<FilletTruth, "items" | "stations" | "joint" | "gap">,
  random: RandomStream,
): Report {
  const hand = new Hand({ ...heightsOfFace(surface), corner: truth.joint.angle }, random);
  // square on the plate that something lies on
  const onPlate = (y: number) => hand.on(heightsOfFace(turnedFillet(surface, y > 0 ? "base" : "standing")));
  const atStations = truth.stations.flatMap((x, n) =>
    SIZES.map((dimension): Measure => ({ dimension, station: n + 1, value: tenth(sizeAt(hand, dimension, x)), at: x })),
  );
  const survey = surveyOf(hand);
  const smallest = {
    leg: Math.min(leastOf(hand, survey, "base-leg"), leastOf(hand, survey, "standing-leg")),
    throat: leastOf(hand, survey, "throat"),
  };
  const measures: Measure[] = [
    ...atStations,
    { dimension: "smallest-leg", station: null, value: tenth(smallest.leg), at: null },
    { dimension: "smallest-throat", station: null, value: tenth(smallest.throat), at: null },
  ];
  const found = truth.items.filter(({ neutral }) => !neutral);
  const calls = found.map((item, n) => callOf(item, `call-${n + 1}`, sizeOf(hand, onPlate, item, truth), hand));
  const { symbol, value } = truth.joint.size;
  const isMet = (symbol === "a" ? smallest.throat : smallest.leg) >= value;
  return {
    version: 1,
    calls,
    measures,
    statements: statementsOf(hand, clearOf(found, survey), isMet),
    pieceSentence: null,
    answers: {},
  };
}

/** At a place: seated there and a millimetre to either side, since a grain before the toe stops the slide. */
function sizeAt(hand: Hand, size: Size, x: number): number {
  const read = [-1, 0, 1].flatMap((dx) => Array.from({ length: 3 }, () => hand.once(gaugeFor(size, x + dx))));
  return middleOf(read.filter((one) => !Number.isNaN(one)));
}

/** One reading of each size every 2 mm along the weld, without its start and finish. */
type Survey = readonly ({ readonly x: number } & Readonly<Record<Size, number>>)[];

function surveyOf(hand: Hand): Survey {
  // where there is weld in the corner
  const all = stepsFrom(1, 199, 1).filter((x) => hand.heights.heightAt(x, 0) > 1);
  const [from, to] = [all[0] + FILLET_ENDS, all[all.length - 1] - FILLET_ENDS];
  return stepsFrom(from, to, 2).map((x) => {
    const read = (size: Size) => hand.once(gaugeFor(size, x));
    return { x, "base-leg": read("base-leg"), "standing-leg": read("standing-leg"), throat: read("throat") };
  });
}

/** The least along the weld: where the survey shows least it is read several times, and a millimetre to either side. */
function leastOf(hand: Hand, survey: Survey, size: Size): number {
  const read = survey.filter((at) => !Number.isNaN(at[size]));
  const least = [...read].sort((a, b) => a[size] - b[size]).slice(0, 6);
  return Math.min(...least.map(({ x }) => hand.settled(gaugeFor(size, x), 7)).filter((one) => !Number.isNaN(one)));
}

/** Throat of a flat face between two legs along the bisector. */
const flatFace = (leg: number, other: number): number => (Math.SQRT2 * leg * other) / (leg + other);

/** Places of a survey where nothing lies in a gauge's way that an inspector has seen there. */
const clearOf = (found: readonly TruthItem[], survey: Survey): Survey =>
  survey.filter(({ x }) => found.filter(lies).every(({ start, end }) => x < start - 3 || x > end + 3));
const lies = ({ type }: TruthItem): boolean => ["spatter", "slag-residue", "stray-arc"].includes(type);

function statementsOf(hand: Hand, survey: Survey, isMet: boolean): Stated[] {
  const whole = survey.filter((at) => SIZES.every((size) => !Number.isNaN(at[size])));
  const bulge = middleOf(whole.map((at) => at.throat - flatFace(at["base-leg"], at["standing-leg"])));
  const profile = bulge > STATEMENT_LIMITS.mitre ? "convex" : bulge < -STATEMENT_LIMITS.mitre ? "concave" : "mitre";
  const { recordedFrom } = imperfection("excessive-asymmetry");
  const difference = heldDifference(hand, whole);
  return [
    { statement: "profile", answer: profile },
    { statement: "asymmetry", answer: difference >= recordedFrom ? "unequal" : "equal" },
    { statement: "size", answer: isMet ? "met" : "not-met" },
  ];
}

/** So many places 2 mm apart are 8 mm. */
const IN_A_ROW = 5;

/** What the legs differ by over 8 mm: where the survey shows most they are read several times, and the least there counts. */
function heldDifference(hand: Hand, survey: Survey): number {
  const rows = survey.slice(0, 1 - IN_A_ROW).map((_, n) => survey.slice(n, n + IN_A_ROW));
  const rough = (row: Survey) => middleOf(row.map((at) => Math.abs(at["base-leg"] - at["standing-leg"])));
  const most = rows.sort((a, b) => rough(b) - rough(a)).slice(0, 4);
  const read = (size: Size, x: number) => hand.settled(gaugeFor(size, x));
  const held = most.map((row) =>
    Math.min(...row.map(({ x }) => Math.abs(read("base-leg", x) - read("standing-leg", x)))),
  );
  return Math.max(...held.filter((one) => !Number.isNaN(one)));
}

function sizeOf(
  hand: Hand,
  onPlate: (y: number) => Hand,
  item: TruthItem,
  { joint, gap }: Pick<FilletTruth, "joint" | "gap">,
): number | null {
  const { size } = imperfection(item.type);
  if (size === null) return null;
  const [x, y] = item.worst;
  const read = (one: Size) => sizeAt(hand, one, x);
  const legs = () => [read("base-leg"), read("standing-leg")] as const;
  switch (item.type) {
    case "incorrect-root-gap":
      return feeled(x < joint.length / 2 ? gap.datum : gap.farEnd);
    case "excessive-asymmetry": {
      const [base, standing] = legs();
      return Math.abs(base - standing);
    }
    case "excessive-convexity":
      return read("throat") - flatFace(...legs());
    case "excessive-throat":
    case "insufficient-throat": {
      // the largest isosceles triangle: as the shorter leg allows, and no higher than the weld
      const throat = Math.min(Math.min(...legs()) / Math.SQRT2, read("throat"));
      return Math.abs(throat - requiredThroat(joint.size));
    }
    case "poor-restart":
      return restartAt(hand.on({ ...hand.heights, corner: null }), x, item.across);
    default:
      if (size === "diameter") return diameterOf(hand, item);
  }
  const feet = { turn: y > 0 ? 90 : 270, stance: "one-side", near: 5, spacing: 14 } as const;
  return deepest(
    onPlate(y),
    finelyRound(x, Math.SQRT2 * y).map((at) => ({ kind: "depth-gauge", ...at, ...feet })),
  );
}

/** The thickest leaf that goes in. */
const feeled = (gap: number): number => FEELER_LEAVES.filter((leaf) => tryLeaf(gap, leaf) !== "does-not-go").pop() ?? 0;
