import { mix } from "../../math";
import type { RandomStream } from "../../random";
import type { Process } from "../../weld";
import { PROCESS_STYLES, type Range } from "../runs";
import type { Look } from "../work";

/** A weld that stood outside for a while: share of specimens, and how rusty these and all others are. */
const RUSTY = { share: 0.16, much: [0.6, 1], little: [0.05, 0.4] } as const;
/** A hand's rhythm against the mean. */
const TEMPO: Range = [0.72, 1.45];

/** The hand that welded a specimen with a process, and how its weld was cleaned and kept since. */
export function drawLook(random: RandomStream, process: Process): Look {
  const { hand, preparation, ripple } = PROCESS_STYLES[process];
  const sooty = mix(hand.sooty[0], hand.sooty[1], random.uniform(0, 1) ** 1.6);
  const isRusty = random.chance(RUSTY.share);
  const plate = drawPlate(random.child("plate"), process);
  return {
    heatTint: random.uniform(...hand.heatTint),
    // who brushes hard leaves little soot
    brushed: random.uniform(...hand.brushed) * (1 - 0.45 * sooty),
    sooty,
    spatter: random.uniform(...hand.spatter),
    slag: random.uniform(...hand.slag),
    rust: isRusty ? random.uniform(...RUSTY.much) : random.uniform(...RUSTY.little),
    bandWidth: random.uniform(...preparation.cleaned) * plate.width,
    ...plate.look,
    ripplePitch: random.uniform(...ripple.pitch),
    rippleHeight: random.uniform(...ripple.height),
    steadiness: random.uniform(...hand.steadiness),
    tempo: random.uniform(...TEMPO),
  };
}

type PlateLook = Pick<Look, "plate" | "plateLight" | "plateBlue" | "cleaning">;

/** Share of joints that were only wire-brushed; TIG needs bare metal. How wide a ground band is against the usual. */
const BRUSHED = { "111": 0.28, "135": 0.2, "136": 0.2, "141": 0 } as const satisfies Record<Process, number>;
const BAND: Range = [0.45, 1.05];
const PLATE_LIGHT: Range = [0.8, 1.2];

/** The plates as they came from the store, and how they were cleaned beside the joint. Shares are common practice, no source. */
function drawPlate(random: RandomStream, process: Process): { look: PlateLook; width: number } {
  const plate = random.pick(["mill-scale", "mill-scale", "mill-scale", "mill-scale", "blasted", "pickled"] as const);
  return {
    look: {
      plate,
      plateLight: random.uniform(...PLATE_LIGHT),
      plateBlue: random.uniform(-1, 1),
      cleaning: random.chance(BRUSHED[process]) ? "brushed" : "ground",
    },
    width: process === "141" ? 1 : random.uniform(...BAND),
  };
}
