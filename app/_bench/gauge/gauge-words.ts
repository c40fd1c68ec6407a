import { type GaugeOut, isStanding, type TrayKind } from "@/lib/bench";
import { type BladeTrial, contactAt, REFUSAL_REASONS, type Refusal, type Standing } from "@/lib/gauges";

/** Tray names: one word each. */
export const TRAY_WORDS: Readonly<Record<TrayKind, string>> = {
  "steel-rule": "Rule",
  caliper: "Caliper",
  "height-gauge": "Height",
  "depth-gauge": "Depth",
  "hook-gauge": "Hook",
  "fillet-gauge": "Fillet",
  "fillet-blades": "Blades",
  "profile-comb": "Comb",
};

/** What to do with a gauge that lies or is pressed down. */
const LAID_WORDS = {
  "steel-rule":
    "Drag on the plate from one end of a length to the other: the rule lies there. Read it at the other end.",
  "fillet-blades":
    "Pushed home into the corner. Light under its nib: the weld is smaller. It stands off the corner: the weld is larger.",
  "profile-comb": "Its pins keep the shape of the section. Compare it with sound weld beside it; it has no scale.",
} as const;

/** How the gauge stands and what to do next, in a sentence or two. */
export function gaugeWords(
  { placement, read }: GaugeOut,
  standing: Standing | Refusal | null,
  trial: BladeTrial | Refusal | null,
  position: number,
): string {
  if (trial && !trial.ok) return REFUSAL_REASONS[trial.code];
  if (!isStanding(placement)) return LAID_WORDS[placement.kind];
  if (!standing) return "The plate is not here yet.";
  if (!standing.ok) return REFUSAL_REASONS[standing.code];
  const lean = leanWords(standing.seat.lean);
  if (contactAt(standing, position) === "clear")
    return `${lean}Drag down in the picture: its moving part slides until it stops at the metal.`;
  return `${lean}It touches the metal. ${read === null ? "Read the scale and write down what you read." : ""}`.trim();
}

/** What a blade says of the weld, for whoever asks. */
export function bladeWords({ fit, placement }: BladeTrial): string {
  const what = placement.use === "throat" ? "throat" : "leg";
  switch (fit) {
    case "fits":
      return `The nib touches and the blade stands home: the ${what} is ${placement.size} mm.`;
    case "too-small":
      return `There is light under the nib: the ${what} is less than ${placement.size} mm.`;
    case "too-large":
      return `The nib carries the blade, it does not go home: the ${what} is more than ${placement.size} mm.`;
  }
}

const leanWords = (lean: number): string => (Math.abs(lean) < 1 ? "" : `It leans ${Math.round(Math.abs(lean))}°. `);
