import type { FeatureBuilder } from "../work";
import { buildBranchingCracks } from "./branching-cracks";
import { burnThrough } from "./burn-through";
import { chippingMark } from "./chipping-mark";
import { clusteredPorosity } from "./clustered-porosity";
import { craterCrack } from "./crater-crack";
import { craterPipe } from "./crater-pipe";
import { buildDisconnectedCracks } from "./disconnected-cracks";
import { dressedStop } from "./dressed-stop";
import { buildElongatedCavity } from "./elongated-cavity";
import { grindingMark, lightGrinding } from "./grinding-mark";
import { buildLinearPorosity } from "./linear-porosity";
import { longitudinalCrack } from "./longitudinal-crack";
import { poorRestart } from "./poor-restart";
import { buildRadiatingCracks } from "./radiating-cracks";
import { rootPorosity } from "./root-porosity";
import { scaledSurface } from "./scaled-surface";
import { slagResidue } from "./slag-residue";
import { soundStop } from "./sound-stop";
import { spatter } from "./spatter";
import { strayArc } from "./stray-arc";
import { buildFinePore, surfacePore } from "./surface-pore";
import { buildSurfacePorosity } from "./surface-porosity";
import { temperColour } from "./temper-colour";
import { tornSurface } from "./torn-surface";
import { transverseCrack } from "./transverse-crack";
import { tungstenSpatter } from "./tungsten-spatter";
import { underflushing } from "./underflushing";
import { buildWormHole } from "./worm-hole";

/** Builders of what is cut, left behind or made by stops. */
export const CUT = {
  "surface-pore": surfacePore,
  "clustered-porosity": clusteredPorosity,
  "linear-porosity": buildLinearPorosity,
  "surface-porosity": buildSurfacePorosity,
  "elongated-cavity": buildElongatedCavity,
  "worm-hole": buildWormHole,
  "fine-pore": buildFinePore,
  "root-porosity": rootPorosity,
  "crater-pipe": craterPipe,
  "crater-crack": craterCrack,
  "longitudinal-crack": longitudinalCrack,
  "transverse-crack": transverseCrack,
  "radiating-cracks": buildRadiatingCracks,
  "disconnected-cracks": buildDisconnectedCracks,
  "branching-cracks": buildBranchingCracks,
  "slag-residue": slagResidue,
  "stray-arc": strayArc,
  spatter,
  "grinding-mark": grindingMark,
  "chipping-mark": chippingMark,
  "torn-surface": tornSurface,
  underflushing,
  "temper-colour": temperColour,
  "scaled-surface": scaledSurface,
  "tungsten-spatter": tungstenSpatter,
  "burn-through": burnThrough,
  "poor-restart": poorRestart,
  "sound-stop": soundStop,
  "dressed-stop": dressedStop,
  "light-grinding": lightGrinding,
} as const satisfies Record<string, FeatureBuilder>;
