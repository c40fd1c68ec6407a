import type { ClutterItem, TruthItem } from "../truth";

/** One imperfection of a fillet: x mm from the datum, y mm across the line between the plates, positive towards the base plate. */
export type FilletTruthItem = TruthItem & { readonly face: "fillet" };
export type FilletClutterItem = ClutterItem & { readonly face: "fillet" };
