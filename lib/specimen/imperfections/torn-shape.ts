import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { fractal2, gradient1, gradient2 } from "../../surface";
import type { FeatureRequest } from "../work";

/** One piece of plate that came away with the fillet: shares of the scar's half length and half width. */
interface Tongue {
  readonly at: number;
  readonly half: number;
  /** How far out it runs, and its depth against the deepest. */
  readonly out: number;
  readonly deep: number;
}

/** A fillet that held the attachment: from where to where, its middle across and its half width. */
interface Bead {
  readonly from: number;
  readonly to: number;
  readonly middle: number;
  readonly half: number;
}

/** How an attachment came off: lengths in mm, angles in radians, the rest shares of the scar. */
export interface Tear {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly turn: number;
  /** Towards which side it was knocked over: the plate tore on the other one. */
  readonly edge: 1 | -1;
  /** The fillet under which the plate tore first; a tack has no other. */
  readonly beads: readonly Bead[];
  readonly tongues: readonly Tongue[];
  /** Height of the fillet left standing, mm, and pitch of its ripples. */
  readonly stub: number;
  readonly pitch: number;
  /** Half width of the plate between the fillets, on which the attachment stood; 0 for a tack. */
  readonly under: number;
  /** Which part was dressed with a disc: from where along the scar, towards which end; null if none. */
  readonly dressed: { readonly from: number; readonly towards: 1 | -1; readonly turn: number } | null;
  readonly tint: number;
  readonly seed: number;
}

const WIDTH = { least: 4, most: 11.5 };
/** Scars narrower than this were held by one tack, mm. */
const ONE_TACK = 6;

function drawBeads(random: RandomStream, edge: 1 | -1, isTack: boolean): Bead[] {
  if (isTack) return [{ from: -0.86, to: 0.86, middle: 0, half: 0.85 }];
  const first: Bead = { from: -0.96, to: 0.96, middle: 0.56 * edge, half: random.uniform(0.38, 0.46) };
  const from = random.uniform(-1, -0.35);
  const other: Bead = {
    from,
    to: Math.min(1, from + random.uniform(0.9, 1.9)),
    middle: -0.56 * edge,
    half: random.uniform(0.3, 0.44),
  };
  return [first, other];
}

/** Draws how it came off, at most `room` mm wide; what is narrow was held by a tack, what is wide by a fillet on either side. */
export function drawTear(random: RandomStream, request: FeatureRequest, room: number): Tear {
  const length = Math.max(8, request.length);
  const wanted = clamp(length * random.uniform(0.24, 0.42), WIDTH.least, WIDTH.most);
  const width = Math.max(WIDTH.least, Math.min(wanted, room));
  const isTack = width < ONE_TACK;
  const edge = random.pick([1, -1] as const);
  const count = 2 + Math.round(length / random.uniform(6, 11));
  const first = random.integer(count);
  const tongues = Array.from({ length: count }, (_, n) => ({
    at: -0.72 + (1.44 * (n + random.uniform(0.2, 0.8))) / count,
    half: random.uniform(0.7, 1.5) / count,
    out: random.uniform(0.55, 1.05),
    deep: n === first ? 1 : random.uniform(0.05, 0.7),
  }));
  return {
    length,
    width,
    depth: request.severity,
    turn: random.normal(0, 0.04),
    edge,
    beads: drawBeads(random, edge, isTack),
    tongues,
    stub: random.uniform(0.12, 0.5) * clamp(request.severity + 0.2, 0.35, 1.1),
    pitch: random.uniform(0.9, 1.7),
    under: isTack ? 0 : random.uniform(0.12, 0.2),
    dressed: random.chance(0.65)
      ? { from: random.uniform(-0.2, 0.5), towards: random.pick([1, -1]), turn: random.normal(0, 0.3) }
      : null,
    tint: random.uniform(0.35, 0.9),
    seed: random.seed(),
  };
}

/** What a place of the scar is made of; mm, and shares 0..1. */
export interface TornPlace {
  /** Torn out of the plate, against the deepest before it is scaled. */
  readonly low: number;
  /** Weld metal that stands above the plate, mm. */
  readonly high: number;
  /** Within a fillet's toes. */
  readonly bead: number;
  readonly fracture: number;
  readonly fibre: number;
  /** Plate on which the attachment stood. */
  readonly under: number;
  /** 1 at the nearest fillet's toe, more outside. */
  readonly distance: number;
}

/** Fibres drawn out the way the piece was bent, long across the scar and fine along it, about -1..1. */
function fibreAt(x: number, y: number, seed: number): number {
  const bent = x + 0.9 * gradient2(x / 3.2, y / 2.4, seed + 20);
  return (
    0.55 * gradient2(bent / 0.34, y / 1.7, seed + 21) +
    0.5 * gradient2(bent / 0.9, y / 2.6, seed + 22) +
    0.25 * gradient2(x / 0.26, y / 0.5, seed + 23)
  );
}

/** Distance from the middle of a bead, 1 at its toes, uneven as toes are. */
function beadDistance({ from, to, middle, half }: Bead, tear: Tear, v: number, x: number, y: number): number {
  const { seed, length, width } = tear;
  const u = (2 * x) / length;
  const toe = v > middle ? 40 : 41;
  const swell = 1 + 0.16 * gradient1(x / 3.3, seed + toe) + 0.06 * gradient1(x / 1.1, seed + toe + 2);
  const beyond = (Math.max(0, from - u, u - to) * length) / width;
  const round = Math.hypot(beyond, (v - middle) / swell) / half;
  return round + 0.09 * gradient2(x / 1.3, y / 1.3, seed + 1) + 0.12 * gradient2(x / 4.2, y / 4.2, seed);
}

/** Depth to which the plate tore, against the deepest: tongues that overlap, each steep where the crack began. */
function tornOut(tear: Tear, [bead]: readonly Bead[], v: number, x: number, y: number, fibre: number): number {
  const { seed, edge } = tear;
  const u = (2 * x) / tear.length;
  const inner = bead.middle * edge - 0.9 * bead.half;
  const q0 =
    (v * edge - inner) / (1.9 * bead.half) + 0.2 * gradient1(x / 4.6, seed + 6) + 0.05 * gradient1(x / 1.5, seed + 7);
  let low = 0;
  for (const tongue of tear.tongues) {
    const p = (u - tongue.at) / tongue.half + 0.3 * gradient2(x / 2.6, y / 2.6, seed + 5);
    if (Math.abs(p) >= 1) continue;
    const q = q0 / tongue.out + 0.04 * fibre;
    low = Math.max(low, tongue.deep * ease(-0.04, 0.36, q) * Math.max(0, 1 - q) ** 0.85 * (1 - p * p) ** 1.1);
  }
  return low * (1 + 0.16 * fibre + 0.22 * fractal2(x / 2.4, y / 2.4, seed + 8, 2, 0.5));
}

/** The scar at (x, y) mm about its middle. */
export function tornPlace(tear: Tear, x: number, y: number): TornPlace {
  const { seed, edge, under, beads } = tear;
  const v = (2 * y) / tear.width;
  const distances = beads.map((bead) => beadDistance(bead, tear, v, x, y));
  const distance = Math.min(...distances);
  const nearest = distances.indexOf(distance);
  const bead = ease(1.04, 0.94, distance);
  const fibre = fibreAt(x, y, seed);
  const low = bead * tornOut(tear, beads, v, x, y, fibre);
  // what is left of the beads: whole at the toes, broken off along their throat, in places down to the plate
  const dome = Math.max(0, 1 - distance * distance);
  const own = seed + 50 * nearest;
  const gone = 0.5 + 0.5 * gradient1(x / 7, own + 9) + 0.45 * gradient2(x / 2.4, y / 1.6, own + 11);
  const ripple = 1 + 0.22 * Math.cos((6.28 * (x + 1.2 * dome * edge + 0.5 * gradient1(x / 4, seed))) / tear.pitch);
  const crown = ease(0.2, 0.85, dome * clamp(gone, 0, 1.2)) * (nearest === 0 ? 0.4 : 1);
  const broken = Math.max(ease(0.03, 0.14, low), ease(0.45, 0.62, dome + 0.14 * fibre + 0.3 * (gone - 0.5)));
  const standing = 0.34 * ripple * dome ** 0.85 + 0.6 * crown * (1 + 0.22 * fibre);
  const strip = Math.abs(v) + 0.09 * gradient1(x / 3.8, seed + 12) + 0.05 * gradient2(x / 0.9, y / 0.9, seed + 13);
  const reach = Math.abs((2 * x) / tear.length) + 0.05 * gradient2(x / 2, y / 2, seed + 14);
  return {
    low,
    high: bead * (1 - ease(0.02, 0.16, low)) * tear.stub * standing,
    bead,
    fracture: bead * broken,
    fibre,
    under: under > 0 ? ease(under + 0.1, under - 0.06, strip) * ease(1, 0.8, reach) * (1 - bead) : 0,
    distance,
  };
}
