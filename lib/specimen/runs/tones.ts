import type { Colour } from "../field";
import { linear } from "../imperfections/tones";

/** Colours of weld metal and of the joint under it; linear light. */
export const WELD_TONES = {
  steel: linear("#8f8d89"),
  bright: linear("#b6b2aa"),
  oxide: linear("#3b3937"),
  oxidePale: linear("#4a4744"),
  slag: linear("#1c1815"),
  blue: linear("#434d62"),
  rust: linear("#573b28"),
  brown: linear("#584a3c"),
} as const satisfies Record<string, Colour>;
