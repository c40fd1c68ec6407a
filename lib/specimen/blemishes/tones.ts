import type { Colour } from "../field";
import { linear } from "../imperfections/tones";

/** Colours of the small harmless marks; linear light. */
export const BLEMISH_TONES = {
  oxide: linear("#211e1b"),
  oxideGrey: linear("#34322f"),
  glassDark: linear("#20180f"),
  glassAmber: linear("#6d5531"),
  slag: linear("#1d1915"),
  slagPale: linear("#3d3429"),
  pit: linear("#2c2925"),
  bright: linear("#c9c6bf"),
  toeLine: linear("#191613"),
  toeBreath: linear("#3c3833"),
  soot: linear("#24201c"),
  stain: linear("#3f3a36"),
  bareSteel: linear("#a09e99"),
} as const satisfies Record<string, Colour>;
