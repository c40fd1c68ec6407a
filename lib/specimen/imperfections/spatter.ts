import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import type { Process } from "../../weld";
import { type Landing, placeGlobule } from "../plate";
import { toeAt } from "../runs/edit";
import type { Feature, FeatureBuilder } from "../work";
import { FARTHEST } from "./beside-weld";
import { measuredBumps } from "./measured-bumps";

interface Globule {
  readonly x: number;
  /** Distance outside the toe. */
  readonly out: number;
  readonly radius: number;
  readonly landing: Landing;
}

/** How a process throws: grains per mm of length, their radius against what is asked and its spread, and how far they fly, mm. */
interface Throwing {
  readonly density: number;
  readonly fine: number;
  readonly spread: number;
  readonly reach: number;
}

/** Common practice, no source: coated electrodes throw coarse drops wide, solid wire a dense fine rain. */
const THROWING: Readonly<Record<Process, Throwing>> = {
  "111": { density: 2.3, fine: 1.1, spread: 0.62, reach: 5 },
  "135": { density: 4.4, fine: 0.84, spread: 0.42, reach: 3.6 },
  "136": { density: 2.8, fine: 0.9, spread: 0.5, reach: 4.2 },
  "141": { density: 2.2, fine: 0.7, spread: 0.5, reach: 3 },
};

const FLATTENED = { splash: [0.2, 0.42], bead: [0.36, 0.72] } as const;

/** A swarm thrown from one place on the weld: it fans out that way, in bursts, the heavy drops near, the fine ones far. */
function drawSwarm(random: RandomStream, length: number, coarse: number, process: Process): Globule[] {
  const { density, fine, spread, reach } = THROWING[process];
  const source = random.uniform(0.1, 0.9);
  const fan = random.uniform(0.5, 1.4);
  const splashed = random.uniform(0.05, 0.5);
  const broken = random.pick([0.05, 0.12, 0.45]);
  const bursts = Array.from({ length: 2 + random.integer(3) }, () => ({
    at: random.uniform(0.12, 0.88),
    out: random.uniform(0.25, 1.4) * reach,
    wide: random.uniform(0.05, 0.16),
  }));
  const count = Math.round(density * random.uniform(0.75, 1.2) * length + 6);
  return Array.from({ length: count }, (_, n) => {
    const burst = random.pick(bursts);
    const gathered = random.chance(0.6);
    // Those between the bursts lie at about even steps, so that the patch hangs together over the length asked.
    const share = gathered ? clamp(burst.at + random.normal(0, burst.wide), 0, 1) : (n + random.uniform(0, 1)) / count;
    const out = gathered
      ? Math.abs(burst.out + random.normal(0, 0.42 * reach))
      : Math.abs(random.normal(0, reach)) * random.uniform(0.5, 1.1);
    const heavy = random.chance(0.06) ? 1.5 : 1;
    // what holds the patch together is large enough to be felt
    const radius = clamp(random.logNormal(0.24 * coarse * fine * heavy, spread), gathered ? 0.1 : 0.19, 0.95);
    const x = (share - 0.5) * (length - 2 * radius);
    const isSplash = random.chance(splashed);
    return {
      x,
      out: 0.5 + radius + out,
      radius,
      landing: {
        rise: isSplash ? random.uniform(...FLATTENED.splash) : random.uniform(...FLATTENED.bead),
        // what comes in flat is drawn out along its way
        stretch: 1 + Math.abs(random.normal(0, isSplash ? 0.5 : 0.18)) * Math.min(1, out / reach),
        turn: Math.atan2(fan * (0.5 + out), x - (source - 0.5) * length) + random.normal(0, 0.25),
        broken,
      },
    };
  });
}

/** What stands this far above the plate is a globule; globules up to this far apart belong to one patch, mm. */
const BUMP_FROM = 0.1;
const PATCH_BRIDGE = 4;
const LOOKED_AT = 4;

/**
 * A patch of spatter beside the weld from `x` over `length` mm; `severity` is the largest usual globule's diameter, mm
 * (0.55 to 1.3). Truth: what stands 0.1 mm or more above the plate, see `measuredBumps`; width = extent across; no size.
 */
export const spatter: FeatureBuilder = (request, random): Feature => {
  const coarse = clamp((request.severity || 0.9) / 0.9, 0.75, 1.6);
  const middle = request.x + request.length / 2;
  return {
    id: request.id,
    paint(work) {
      const swarm = drawSwarm(random.child("swarm"), request.length, coarse, work.joint.process);
      swarm.forEach(({ x, out, radius, landing }, n) => {
        const y = toeAt(work, request.side, middle + x, 1) + request.side * out;
        if (Math.abs(y) + radius > FARTHEST) return;
        const turn = request.side * (landing.turn ?? 0);
        placeGlobule(work, { x: middle + x, y, radius }, random.child(`globule/${n}`), { ...landing, turn });
      });
    },
    measure: (work) =>
      measuredBumps(work, request.id, "spatter", {
        side: request.side,
        range: { from: request.x - LOOKED_AT, to: request.x + request.length + LOOKED_AT },
        rise: BUMP_FROM,
        bridge: PATCH_BRIDGE,
      }),
  };
};
