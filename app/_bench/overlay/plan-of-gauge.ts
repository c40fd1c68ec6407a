import { isInCorner, isStanding, type ScreenPoint, type TrayPlacement, toScreen, type Viewport } from "@/lib/bench";
import { feetOf, GAUGES, placeOn } from "@/lib/gauges";

/** A gauge seen from above, in screen pixels: along its blade from its spot, and beside it. */
export interface Plan {
  readonly spot: ScreenPoint;
  /** Of the blade on the screen, degrees clockwise from the right. */
  readonly angle: number;
  readonly from: number;
  readonly to: number;
  /** How far it covers the plate to the left and to the right of the line through its spot. */
  readonly left: number;
  readonly right: number;
  readonly feet: readonly { readonly from: number; readonly to: number }[];
  /** Distance of the knob by which it is turned. */
  readonly knob: number;
}

/** Metal of the blade beyond the outermost foot, mm. */
const OVERHANG = 4;
const COMB_HALF = 47;
/** What is pushed into a corner stands on both plates, mm along the blade. */
const CORNER_HALF = 24;
export const RULE = { length: GAUGES["steel-rule"].feet.length + 10, width: 22 } as const;

const KNOB_BEYOND = 26;
const NEAREST_KNOB = 64;

export function planOf(view: Viewport, placement: TrayPlacement): Plan {
  const spot = toScreen(view, placement);
  const ahead = toScreen(view, placeOn(placement, 1));
  const { scale } = view;
  const ends = endsOf(placement);
  const half = (GAUGES[placement.kind].thickness / 2) * scale;
  const to = ends.to * scale;
  // close to, the far end lies off the screen: the knob slides inwards along the blade
  const reach = 0.4 * Math.min(view.width, view.height);
  return {
    spot,
    angle: (Math.atan2(ahead.top - spot.top, ahead.left - spot.left) * 180) / Math.PI,
    from: ends.from * scale,
    to,
    left: placement.kind === "steel-rule" ? 0 : half,
    right: placement.kind === "steel-rule" ? RULE.width * scale : half,
    feet: ends.feet.map((foot) => ({ from: foot.from * scale, to: foot.to * scale })),
    knob: Math.max(NEAREST_KNOB, Math.min(to + KNOB_BEYOND, reach)),
  };
}

function endsOf(placement: TrayPlacement) {
  if (placement.kind === "steel-rule") return { from: 0, to: RULE.length, feet: [] };
  if (isInCorner(placement)) return { from: -CORNER_HALF, to: CORNER_HALF, feet: [] };
  if (!isStanding(placement)) return { from: -COMB_HALF, to: COMB_HALF, feet: [] };
  const feet = feetOf(placement);
  const places = [-OVERHANG, OVERHANG, ...feet.flatMap(({ from, to }) => [from - OVERHANG, to + OVERHANG])];
  return { from: Math.min(...places), to: Math.max(...places), feet };
}

/** A finger finds a part within this, px. */
const FINGER = 22;

/** What of a gauge lies under a pointer. */
export function partAt(plan: Plan, at: ScreenPoint): "knob" | "blade" | null {
  const angle = (plan.angle * Math.PI) / 180;
  const dx = at.left - plan.spot.left;
  const dy = at.top - plan.spot.top;
  const along = dx * Math.cos(angle) + dy * Math.sin(angle);
  const aside = dy * Math.cos(angle) - dx * Math.sin(angle);
  if (Math.hypot(along - plan.knob, aside) <= FINGER) return "knob";
  const isBeside = aside >= -Math.max(plan.left, FINGER) && aside <= Math.max(plan.right, FINGER);
  return isBeside && along >= plan.from - FINGER && along <= plan.to + FINGER ? "blade" : null;
}
