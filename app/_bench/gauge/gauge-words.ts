import type { GaugeOut, TrayKind } from "@/lib/bench";
import { contactAt, REFUSAL_REASONS, type Refusal, type Standing } from "@/lib/gauges";

/** Tray names: one word each. */
export const TRAY_WORDS: Readonly<Record<TrayKind, string>> = {
  "steel-rule": "Rule",
  "height-gauge": "Height",
  "depth-gauge": "Depth",
  "hook-gauge": "Hook",
  "fillet-gauge": "Fillet",
  "profile-comb": "Comb",
};

/** What to do with a gauge that lies or is pressed down. */
const LAID_WORDS = {
  "steel-rule":
    "Drag on the plate from one end of a length to the other: the rule lies there. Read it at the other end.",
  "profile-comb": "Its pins keep the shape of the section. Compare it with sound weld beside it; it has no scale.",
} as const;

/** How the gauge stands and what to do next, in a sentence or two. */
export function gaugeWords(out: GaugeOut, standing: Standing | Refusal | null, position: number): string {
  const { kind } = out.placement;
  if (kind === "steel-rule" || kind === "profile-comb") return LAID_WORDS[kind];
  if (!standing) return "The plate is not here yet.";
  if (!standing.ok) return REFUSAL_REASONS[standing.code];
  const lean = leanWords(standing.seat.lean);
  if (contactAt(standing, position) === "clear")
    return `${lean}Drag it down in the picture until it stops at the metal.`;
  return `${lean}It touches the metal. ${out.read === null ? "Read the scale and write down what you read." : ""}`.trim();
}

const leanWords = (lean: number): string => (Math.abs(lean) < 1 ? "" : `It leans ${Math.round(Math.abs(lean))}°. `);
