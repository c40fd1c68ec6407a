import type { Colour } from "../field";
import { linear } from "../imperfections/tones";

/** Colours of weld metal and of the joint under it; linear light. */
export const WELD_TONES = {
  steel: linear("#8f8d89"),
  bright: linear("#b6b2aa"),
  oxide: linear("#3b3937"),
  oxidePale: linear("#4a4744"),
  skin: linear("#4b4946"),
  skinPale: linear("#5d564e"),
  dull: linear("#3a3a3c"),
  dullPale: linear("#4a443e"),
  slag: linear("#1c1815"),
  slagPale: linear("#2c241c"),
  blue: linear("#434d62"),
  brown: linear("#584a3c"),
} as const satisfies Record<string, Colour>;
