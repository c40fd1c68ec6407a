import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { placeGlobule } from "../plate";
import { toeAt } from "../runs/edit";
import type { Feature, FeatureBuilder } from "../work";
import { FARTHEST } from "./beside-weld";
import { measuredBumps } from "./measured-bumps";

interface Globule {
  readonly x: number;
  /** Distance outside the toe. */
  readonly out: number;
  readonly radius: number;
}

const DENSITY = 3.3;

/** A swarm that thins out towards its ends and away from the weld, in bursts; a few reach far. */
function drawSwarm(random: RandomStream, length: number, coarse: number): Globule[] {
  const bursts = Array.from({ length: 2 + random.integer(3) }, () => ({
    at: random.uniform(0.2, 0.8),
    out: random.uniform(2, 7),
  }));
  const count = Math.round(DENSITY * length + 6);
  return Array.from({ length: count }, (_, n) => {
    const burst = random.pick(bursts);
    const gathered = random.chance(0.6);
    // Those between the bursts lie at about even steps, so that the patch hangs together over the length asked.
    const share = gathered ? clamp(burst.at + random.normal(0, 0.1), 0, 1) : (n + random.uniform(0, 1)) / count;
    const out = gathered ? Math.abs(burst.out + random.normal(0, 1.8)) : Math.abs(random.normal(0, 4.2));
    const radius = clamp(random.logNormal(0.25 * coarse, 0.5), 0.14, 0.8);
    return { x: (share - 0.5) * (length - 2 * radius), out: 0.5 + radius + out, radius };
  });
}

/** What stands this far above the plate is a globule; globules up to this far apart belong to one patch, mm. */
const BUMP_FROM = 0.1;
const PATCH_BRIDGE = 4;
const LOOKED_AT = 4;

/**
 * A patch of spatter beside the weld from `x` over `length` mm; `severity` is the largest usual globule's diameter, mm
 * (0.6 to 1.4). Truth: what stands 0.1 mm or more above the plate, see `measuredBumps`; width = extent across; no size.
 */
export const spatter: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("swarm");
  const swarm = drawSwarm(draw, request.length, clamp((request.severity || 0.9) / 0.9, 0.75, 1.6));
  const middle = request.x + request.length / 2;
  return {
    id: request.id,
    paint(work) {
      swarm.forEach(({ x, out, radius }, n) => {
        const y = toeAt(work, request.side, middle + x, 1) + request.side * out;
        if (Math.abs(y) + radius > FARTHEST) return;
        placeGlobule(work, { x: middle + x, y, radius }, random.child(`globule/${n}`));
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
