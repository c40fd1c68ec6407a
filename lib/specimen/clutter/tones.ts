import type { Colour } from "../field";
import { linear } from "../imperfections/tones";

/** Colours of what people and weather leave on plates; linear light. */
export const CLUTTER_TONES = {
  chalkWhite: linear("#dedbd2"),
  chalkYellow: linear("#cfbf78"),
  paintWhite: linear("#e2e1dc"),
  paintYellow: linear("#d9b21f"),
  paintRed: linear("#a32a20"),
  inkBlack: linear("#17171a"),
  inkBlue: linear("#1d2a55"),
  bareSteel: linear("#b4b2ae"),
  scale: linear("#55585b"),
  scaleBrown: linear("#655a50"),
  scaleBed: linear("#827a70"),
  rustDeep: linear("#3b2b21"),
  rust: linear("#5f4634"),
  rustPale: linear("#7d684f"),
  toeLine: linear("#181512"),
  toeOxide: linear("#3a3632"),
  scorch: linear("#35302b"),
  scorchBlue: linear("#4e5666"),
  glassDark: linear("#231b12"),
  glassBrown: linear("#493822"),
  glassAmber: linear("#7d6438"),
} as const satisfies Record<string, Colour>;
