import type { FeatureBuilder } from "../work";
import { buildBrokenTack } from "./broken-tack";
import { buildTackWeldedOver } from "./tack-welded-over";

/**
 * Tack weld imperfection in the root, at a tack of the joint. Variant "broken": the tack broke or never penetrated (6071);
 * otherwise a faulty tack was welded over (6072). `severity` = depth of the gap, or height of the lump and depth of the
 * notches, mm; the truth has no size.
 */
export const buildTackImperfection: FeatureBuilder = (request, random) =>
  request.variant === "broken" ? buildBrokenTack(request, random) : buildTackWeldedOver(request, random);
