import type { Clutter } from "../../imperfections";
import { chalkMark } from "../clutter/chalk-mark";
import { coarseRipple } from "../clutter/coarse-ripple";
import { glassSpots } from "../clutter/glass-spots";
import { millScaleEdge } from "../clutter/mill-scale-edge";
import { penMark } from "../clutter/pen-mark";
import { removedSpatter } from "../clutter/removed-spatter";
import { rustPatch } from "../clutter/rust-patch";
import { scratch } from "../clutter/scratch";
import { tightToe } from "../clutter/tight-toe";
import type { FeatureBuilder } from "../work";

/** Builders of what lies on plates and is no imperfection. */
export const CLUTTERING = {
  "chalk-mark": chalkMark,
  "pen-mark": penMark,
  scratch,
  "mill-scale-edge": millScaleEdge,
  "rust-patch": rustPatch,
  "tight-toe": tightToe,
  "coarse-ripple": coarseRipple,
  "removed-spatter": removedSpatter,
  "glass-spots": glassSpots,
} as const satisfies Record<Clutter, FeatureBuilder>;
