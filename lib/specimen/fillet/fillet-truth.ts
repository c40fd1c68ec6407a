import type { FilletJoint } from "../../weld";
import type { ClutterItem, TruthItem } from "../truth";
import type { FilletDimensions } from "./dimensions";

/** One imperfection of a fillet: x mm from the datum, y mm across the line between the plates, positive towards the base plate. */
export type FilletTruthItem = Omit<TruthItem, "face"> & { readonly face: "fillet" };
export type FilletClutterItem = Omit<ClutterItem, "face"> & { readonly face: "fillet" };

/** Gap under the standing plate as a feeler finds it at both ends of the joint, mm. */
export interface MeasuredGap {
  readonly datum: number;
  readonly farEnd: number;
}

/** Everything there is to find and to measure on one fillet specimen. */
export interface FilletTruth {
  readonly version: 1;
  /** Generator version that made the surface. */
  readonly generator: string;
  readonly joint: FilletJoint;
  readonly items: readonly FilletTruthItem[];
  readonly clutter: readonly FilletClutterItem[];
  readonly dimensions: FilletDimensions;
  readonly gap: MeasuredGap;
}
