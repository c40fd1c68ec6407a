import type { Colour } from "../field";
import { linear } from "../imperfections/tones";

/** Colours of plate before and after the workshop has touched it; linear light. */
export const PLATE_TONES = {
  scaleDark: linear("#464747"),
  scalePale: linear("#63625f"),
  scaleBrown: linear("#5a5048"),
  scaleThin: linear("#6a645d"),
  scaleBurnt: linear("#3c3835"),
  bareSteel: linear("#8f8d89"),
  groundSteel: linear("#a7a8a7"),
  rust: linear("#66462f"),
  rustPale: linear("#7f6249"),
  hot: linear("#483f36"),
  smoke: linear("#5f5346"),
  warm: linear("#887b68"),
  purple: linear("#6d6070"),
  blue: linear("#54607a"),
  soot: linear("#2e2822"),
  fluxDust: linear("#8a8178"),
  oxide: linear("#3b3937"),
  beadSteel: linear("#97948d"),
  slag: linear("#1c1815"),
  beyond: linear("#1a1b1c"),
} as const satisfies Record<string, Colour>;
