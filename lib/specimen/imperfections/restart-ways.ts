import { ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import type { Face } from "../../weld";
import type { Segment } from "../plan";

/**
 * How a restart was spoilt. Metal heaped up: an electrode begun on the crater ("heaped"), a drop that fell and did not wet in
 * ("lump"), one begun far behind so that a low second layer lies on the first ("doubled"), one that starts thin and then
 * swells ("swelling"). A hollow left: begun too far ahead ("ahead"), aslant so that one side of the hollow is open further
 * ("aslant"), or in the crater, which it half fills ("half-filled").
 */
type HumpWay = "heaped" | "lump" | "doubled" | "swelling";
type GapWay = "ahead" | "aslant" | "half-filled";

/** A restart as the hand makes it, mm; lengths along the direction of welding. */
export interface Spoilt {
  /** Where the earlier electrode ended and the later one began, before (-) or beyond (+) the place asked for. */
  readonly front: number;
  readonly start: number;
  readonly crater: number;
  readonly later: Partial<Segment>;
  /** 0 wetted in .. 1 frozen as it fell. */
  readonly cold: number;
  /** Height of a lump on top of it all; of metal that swells further on, how high and how far on. */
  readonly lump: number;
  readonly swelling: { readonly height: number; readonly at: number; readonly reach: number } | null;
}

/** What a way is drawn for. */
export interface Spoiling {
  readonly face: Face;
  readonly halfWidth: number;
  readonly isWeave: boolean;
  /** Height of the hump or depth of the gap asked for, mm. */
  readonly severity: number;
}

const ROOT_SCALE = 0.6;
/** Heights between which a hump turns from little more than an ordinary restart into a cold lump, mm. */
const COLD: Readonly<Record<Face, readonly [from: number, to: number]>> = { cap: [0.7, 2], root: [0.7, 2.2] };
/** The rounded front of a bead reaches about this many half widths beyond its electrode's end. */
const FRONT_REACH = 0.85;
/** Open length between the crater's front and the rear edge of the restart, mm. */
const OPEN = { cap: [-0.6, 1.4], root: [0.2, 2.2] } as const;
/** The crest of a hump lies about this far into the new electrode length, mm. */
const CREST_BEHIND = 1.5;
/** A higher second layer would not be laid without being seen, mm. */
const DOUBLED_UP_TO = 1.55;
/** A hump on the root is so much shorter. */
const ROOT_HUMP = 0.75;
/** A weave heaps up less. */
const WEAVE_HUMP = 0.8;

/** Spoils a restart by heaping metal up. */
export function spoilByHump(asked: Spoiling, random: RandomStream): Spoilt {
  const ways: HumpWay[] = ["heaped", "lump", "lump", "swelling", "swelling"];
  if (asked.severity < DOUBLED_UP_TO) ways.push("doubled", "doubled");
  const way = random.pick(ways);
  const { face, halfWidth, severity } = asked;
  const scale = face === "root" ? ROOT_SCALE : 1;
  const cold = ease(...COLD[face], severity);
  const hump = severity * (asked.isWeave ? WEAVE_HUMP : 1);
  const short = face === "root" ? ROOT_HUMP : 1;
  const crater = random.uniform(0.25, 0.9) * mix(0.65, 1, cold) * scale;
  const later = hand(random, asked, cold);
  const begins = (start: number, overlap: number) => ({ start, front: start + overlap });
  switch (way) {
    case "lump":
      return {
        ...begins(-random.uniform(0.5, 2), random.uniform(0.25, 0.55) * halfWidth),
        crater,
        later: {
          ...later,
          hump: 0.12 * severity,
          humpLength: random.uniform(4, 7) * short,
          wetting: random.uniform(1.4, 2.6),
        },
        cold: 0.35 * cold,
        lump: (face === "root" ? 1.1 : 1.03) * severity,
        swelling: null,
      };
    case "doubled": {
      const length = random.uniform(7, 11) * short;
      return {
        ...begins(-0.55 * length, random.uniform(7, 13) * short),
        crater: 0.5 * crater,
        later: {
          ...later,
          hump: 1.04 * hump,
          humpLength: length,
          widen: random.uniform(-0.1, 0.12) * halfWidth,
          wetting: random.uniform(0.7, 1.6),
          rearRadius: Math.min(5.5, halfWidth * random.uniform(0.7, 1.25)),
          lapRagged: random.uniform(1.2, 2.4),
        },
        cold: 0.5 + 0.3 * cold,
        lump: 0,
        swelling: null,
      };
    }
    case "swelling": {
      const at = random.uniform(4, 7) * short;
      return {
        ...begins(-at, random.uniform(0.3, 0.8) * halfWidth),
        crater: 0.7 * crater,
        later: {
          ...later,
          hump: 0.1 * severity,
          humpLength: 4,
          widen: 0,
          narrow: random.uniform(0.1, 0.28),
          swell: random.uniform(2.5, 4.5) * short,
          wetting: random.uniform(0.9, 2),
          rearRadius: halfWidth * random.uniform(0.4, 0.8),
        },
        cold: 0.6 * cold,
        lump: 0,
        swelling: { height: (face === "root" ? 0.97 : 0.87) * severity, at, reach: random.uniform(3, 4.6) * short },
      };
    }
    default:
      return {
        ...begins(-CREST_BEHIND, Math.min(5, halfWidth * random.uniform(0.3, 0.9))),
        crater,
        later: { ...later, hump, humpLength: random.uniform(4.5, 8) * short },
        cold,
        lump: 0,
        swelling: null,
      };
  }
}

/** Spoils a restart by leaving a hollow before it. */
export function spoilByGap(asked: Spoiling, random: RandomStream): Spoilt {
  const { face, halfWidth } = asked;
  const ways: readonly GapWay[] = face === "root" ? ["ahead", "aslant"] : ["ahead", "aslant", "half-filled"];
  const way = random.pick(ways);
  const scale = face === "root" ? ROOT_SCALE : 1;
  const cold = random.uniform(0.3, 0.8);
  const usual = hand(random, asked, cold);
  const later = {
    ...usual,
    hump: random.uniform(0, 0.6) * scale,
    // begun in the open it has no bead to spread over: wider or aside, it would end in tongues on the plate
    shift: 0.4 * usual.shift,
    widen: Math.min(0, usual.widen),
  };
  const rear = Math.min(4.2, halfWidth * random.uniform(0.35, 0.8));
  const open =
    way === "half-filled" ? -random.uniform(0.7, 1) * halfWidth : random.uniform(OPEN[face][0], OPEN[face][1]);
  const slant = way === "aslant" ? random.pick([-1, 1]) * halfWidth * random.uniform(0.35, 0.6) : later.lapSlant;
  const front = -FRONT_REACH * halfWidth - open / 2;
  return {
    front,
    start: front + FRONT_REACH * halfWidth + open + rear,
    crater: (way === "half-filled" ? random.uniform(1.2, 1.6) : random.uniform(0.5, 1.2)) * scale,
    later: { ...later, rearRadius: rear, lapSlant: slant, lapRagged: random.uniform(0.5, 1.4) },
    cold,
    lump: 0,
    swelling: null,
  };
}

/** What a hand that has not yet found its place does at any start. */
function hand(random: RandomStream, { face, halfWidth }: Spoiling, cold: number) {
  const scale = face === "root" ? ROOT_SCALE : 1;
  const aside = random.pick([-1, 1]);
  return {
    shift: aside * random.uniform(0.3, 1.1) * scale * mix(0.5, 1, cold),
    widen: random.uniform(-0.25, 0.7) * scale * mix(0.45, 1, cold),
    wetting: random.uniform(mix(1.3, 0.5, cold), mix(2.2, 0.9, cold)),
    pitchFactor: mix(1, random.chance(0.5) ? random.uniform(1.3, 1.6) : random.uniform(0.62, 0.78), mix(0.45, 1, cold)),
    rippleFactor: mix(1, random.uniform(1.1, 1.5), mix(0.3, 1, cold)),
    rearRadius: Math.min(4.2, halfWidth * random.uniform(0.35, 0.85)),
    lapSeed: random.seed(),
    lapSlant: random.normal(0, 0.28) * halfWidth,
    lapRagged: random.uniform(0.9, 2.1),
    cant: random.normal(0, 0.3),
  };
}
