import type { GaugeKind } from "./kinds";
import type { Seating } from "./seat";

/** Why a gauge cannot be read. */
export const REFUSALS = [
  "no-support",
  "rocks",
  "leans-too-far",
  "not-square",
  "off-plate",
  "cannot-reach",
  "out-of-range",
  "one-face",
] as const;
export type RefusalCode = (typeof REFUSALS)[number];

/** The reasons in words, for whoever holds the gauge. */
export const REFUSAL_REASONS: Readonly<Record<RefusalCode, string>> = {
  "no-support": "A foot hangs over nothing: set both feet on metal.",
  rocks: "It rocks on one lump under the hand: move it, or change its feet.",
  "leans-too-far": "It leans more than 15 degrees: a foot stands on the weld, on spatter or over an edge.",
  "not-square": "It is more than 15 degrees off square to the weld: turn it.",
  "off-plate": "Its moving part stands beyond the edge of the plate.",
  "cannot-reach": "Its moving part finds no metal in its way.",
  "one-face": "Its lower jaw needs the other face of the plate, which is not here.",
  "out-of-range": "What it touches lies beyond the ends of its scale.",
};

export interface Refusal {
  readonly ok: false;
  readonly kind: GaugeKind;
  readonly code: RefusalCode;
  /** How it stands all the same, to be drawn; null where it does not stand. */
  readonly seat: Seating | null;
}

export const refuse = (kind: GaugeKind, code: RefusalCode, seat: Seating | null = null): Refusal => ({
  ok: false,
  kind,
  code,
  seat,
});
