import { type FilletUse, type Stance, takeFromTray, withinLimits } from "../gauges";
import { type Degrees, type Mm, roundTo } from "../math";
import type { Aspect } from "../weld";
import {
  type CornerUse,
  firstTurn,
  isInCorner,
  isStanding,
  type Sliding,
  type TrayKind,
  type TrayPlacement,
} from "./gauge-tray";
import { ontoPlate, type Place } from "./viewport";

/** The gauge that is out of the tray, and how those that were out before had been set. */
export interface Measuring {
  readonly out: GaugeOut | null;
  /** As each gauge was last put down: its feet stay as they were set. */
  readonly shelf: readonly TrayPlacement[];
}

export interface GaugeOut {
  /** From where it was set down: the frame of its placement. */
  readonly aspect: Aspect;
  readonly placement: TrayPlacement;
  /** Where on its scale the hand has left the moving part, mm; null while it is drawn back. */
  readonly slidTo: Mm | null;
  /** What the learner has read and typed, mm. */
  readonly read: number | null;
  /** Whether what it reads has been asked for. */
  readonly isExplained: boolean;
}

export type MeasuringEvent =
  /** Takes a gauge to a place, or the one that is out to another. */
  | { readonly kind: "take"; readonly gauge: TrayKind; readonly aspect: Aspect; readonly place: Place }
  | { readonly kind: "put-away" }
  | { readonly kind: "move"; readonly place: Place }
  | { readonly kind: "turn"; readonly to: Degrees }
  /** From its nought, or from its moving part, towards a place. */
  | { readonly kind: "lay"; readonly from: Place; readonly towards: Place }
  | { readonly kind: "set"; readonly setting: Sliding; readonly to: Mm }
  | { readonly kind: "stance"; readonly stance: Stance }
  /** Sets a tool in a corner to a leg, and turns it to that plate, or to the throat. */
  | { readonly kind: "use"; readonly use: CornerUse }
  | { readonly kind: "slide"; readonly to: Mm }
  | { readonly kind: "draw-back" }
  | { readonly kind: "read"; readonly value: number | null }
  | { readonly kind: "explain"; readonly isExplained: boolean };

export const NOTHING_OUT: Measuring = { out: null, shelf: [] };

/** A rule laid nearly along or across the weld lies along or across it, degrees. */
const SNAP: Degrees = 1.5;

/** The bench after an event. Without a gauge out, only taking one does anything. */
export function measure(state: Measuring, event: MeasuringEvent): Measuring {
  if (event.kind === "take") {
    const old = state.shelf.find(({ kind }) => kind === event.gauge) ?? null;
    return put(state, event.aspect, freshlyPut(event.gauge, event.aspect, event.place, old));
  }
  const { out } = state;
  if (!out) return state;
  const { aspect, placement } = out;
  switch (event.kind) {
    case "put-away":
      return { ...state, out: null };
    case "move":
      return put(state, aspect, { ...placement, ...onTenths(aspect, event.place) });
    case "turn":
      return put(state, aspect, { ...placement, turn: event.to });
    case "lay": {
      const { from, towards } = event;
      const turn = (Math.atan2(towards.y - from.y, towards.x - from.x) * 180) / Math.PI;
      const square = Math.round(turn / 90) * 90;
      const snapped = Math.abs(turn - square) <= SNAP ? square : turn;
      return put(state, aspect, { ...placement, ...onTenths(aspect, from), turn: snapped });
    }
    case "set":
      return event.setting in placement ? put(state, aspect, { ...placement, [event.setting]: event.to }) : state;
    case "stance":
      return "stance" in placement ? put(state, aspect, { ...placement, stance: event.stance }) : state;
    case "use":
      return "use" in placement ? put(state, aspect, { ...placement, ...setTo(event.use, placement.turn) }) : state;
    case "slide":
      return { ...state, out: { ...out, slidTo: event.to } };
    case "draw-back":
      return { ...state, out: { ...out, slidTo: null } };
    case "read":
      return { ...state, out: { ...out, read: event.value } };
    case "explain":
      return { ...state, out: { ...out, isExplained: event.isExplained } };
  }
}

/** Puts a gauge down: its moving part is drawn back, and what was read elsewhere is no reading of this place. */
function put(state: Measuring, aspect: Aspect, wanted: TrayPlacement): Measuring {
  const placement = tidy(wanted);
  return {
    out: { aspect, placement, slidTo: null, read: null, isExplained: false },
    shelf: [...state.shelf.filter(({ kind }) => kind !== placement.kind), placement],
  };
}

/** Turned over to the other plate where that is meant: as far off square as before. */
function setTo(use: CornerUse, turn: Degrees): { readonly use: FilletUse; readonly turn: Degrees } {
  if (use === "throat") return { use, turn };
  const isOverBase = Math.sin((turn * Math.PI) / 180) > 0;
  return { use: "leg", turn: isOverBase === (use === "base-leg") ? turn : turn + 180 };
}

/** Settings within their limits, and the direction on a tenth of a degree: seating tells no finer placements apart. */
function tidy(placement: TrayPlacement): TrayPlacement {
  const held = isStanding(placement) ? withinLimits(placement) : placement;
  const y = isInCorner(placement) ? 0 : held.y;
  return { ...held, y, turn: roundTo(((held.turn % 360) + 360) % 360, 0.1) % 360 };
}

/** The blade of the set that a hand tries first, mm. */
const FIRST_BLADE: Mm = 5;

function freshlyPut(kind: TrayKind, aspect: Aspect, place: Place, old: TrayPlacement | null): TrayPlacement {
  const spot = { ...onTenths(aspect, place), turn: firstTurn(kind, place) };
  if (old) return { ...old, ...spot, ...(isInCorner(old) ? { turn: old.turn } : {}) };
  if (kind === "fillet-blades") return { kind, ...spot, use: "throat", size: FIRST_BLADE };
  return kind === "steel-rule" || kind === "profile-comb" ? { kind, ...spot } : takeFromTray(kind, spot);
}

function onTenths(aspect: Aspect, place: Place): Place {
  const { x, y } = ontoPlate(aspect, place);
  return { x: roundTo(x, 0.1), y: roundTo(y, 0.1) };
}
