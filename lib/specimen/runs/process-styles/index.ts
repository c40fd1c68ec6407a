import type { Process } from "../../../weld";
import type { ProcessStyle } from "../process-style";
import { FLUX_CORED } from "./flux-cored";
import { MANUAL_METAL_ARC } from "./manual-metal-arc";
import { METAL_ACTIVE_GAS } from "./metal-active-gas";
import { TUNGSTEN_INERT_GAS } from "./tungsten-inert-gas";

/**
 * How the welding processes differ on a butt plate, but for the colours of the weld metal. Common practice in a workshop, no
 * source: what a welder or an inspector would expect of each.
 */
export const PROCESS_STYLES: Readonly<Record<Process, ProcessStyle>> = {
  "111": MANUAL_METAL_ARC,
  "135": METAL_ACTIVE_GAS,
  "136": FLUX_CORED,
  "141": TUNGSTEN_INERT_GAS,
};
