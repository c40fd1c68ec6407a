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
  return {
    heatTint: random.uniform(...hand.heatTint),
    // who brushes hard leaves little soot
    brushed: random.uniform(...hand.brushed) * (1 - 0.45 * sooty),
    sooty,
    spatter: random.uniform(...hand.spatter),
    slag: random.uniform(...hand.slag),
    rust: isRusty ? random.uniform(...RUSTY.much) : random.uniform(...RUSTY.little),
    bandWidth: random.uniform(...preparation.cleaned),
    ripplePitch: random.uniform(...ripple.pitch),
    rippleHeight: random.uniform(...ripple.height),
    steadiness: random.uniform(...hand.steadiness),
    tempo: random.uniform(...TEMPO),
  };
}
