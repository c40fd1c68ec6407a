import { type Stance, takeFromTray, withinLimits } from "../gauges";
import { type Degrees, type Mm, roundTo } from "../math";
import type { Face } from "../weld";
import { firstTurn, isStanding, type Sliding, type TrayKind, type TrayPlacement } from "./gauge-tray";
import { ontoPlate, type Place } from "./viewport";

/** The gauge that is out of the tray, and how those that were out before had been set. */
export interface Measuring {
  readonly out: GaugeOut | null;
  /** As each gauge was last put down: its feet stay as they were set. */
  readonly shelf: readonly TrayPlacement[];
}

export interface GaugeOut {
  readonly face: Face;
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
  | { readonly kind: "take"; readonly gauge: TrayKind; readonly face: Face; readonly place: Place }
  | { readonly kind: "put-away" }
  | { readonly kind: "move"; readonly place: Place }
  | { readonly kind: "turn"; readonly to: Degrees }
  /** From its nought, or from its moving part, towards a place. */
  | { readonly kind: "lay"; readonly from: Place; readonly towards: Place }
  | { readonly kind: "set"; readonly setting: Sliding; readonly to: Mm }
  | { readonly kind: "stance"; readonly stance: Stance }
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
    return put(state, event.face, freshlyPut(event.gauge, event.place, old));
  }
  const { out } = state;
  if (!out) return state;
  const { face, placement } = out;
  switch (event.kind) {
    case "put-away":
      return { ...state, out: null };
    case "move":
      return put(state, face, { ...placement, ...onTenths(event.place) });
    case "turn":
      return put(state, face, { ...placement, turn: event.to });
    case "lay": {
      const { from, towards } = event;
      const turn = (Math.atan2(towards.y - from.y, towards.x - from.x) * 180) / Math.PI;
      const square = Math.round(turn / 90) * 90;
      const snapped = Math.abs(turn - square) <= SNAP ? square : turn;
      return put(state, face, { ...placement, ...onTenths(from), turn: snapped });
    }
    case "set":
      return event.setting in placement ? put(state, face, { ...placement, [event.setting]: event.to }) : state;
    case "stance":
      return "stance" in placement ? put(state, face, { ...placement, stance: event.stance }) : state;
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
function put(state: Measuring, face: Face, wanted: TrayPlacement): Measuring {
  const placement = tidy(wanted);
  return {
    out: { face, placement, slidTo: null, read: null, isExplained: false },
    shelf: [...state.shelf.filter(({ kind }) => kind !== placement.kind), placement],
  };
}

/** Settings within their limits, and the direction on a tenth of a degree: seating tells no finer placements apart. */
function tidy(placement: TrayPlacement): TrayPlacement {
  const turn = roundTo(((placement.turn % 360) + 360) % 360, 0.1) % 360;
  return { ...(isStanding(placement) ? withinLimits(placement) : placement), turn };
}

function freshlyPut(kind: TrayKind, place: Place, old: TrayPlacement | null): TrayPlacement {
  const spot = { ...onTenths(place), turn: firstTurn(kind, place) };
  if (old) return { ...old, ...spot };
  return kind === "steel-rule" || kind === "profile-comb" ? { kind, ...spot } : takeFromTray(kind, spot);
}

function onTenths(place: Place): Place {
  const { x, y } = ontoPlate(place);
  return { x: roundTo(x, 0.1), y: roundTo(y, 0.1) };
}
