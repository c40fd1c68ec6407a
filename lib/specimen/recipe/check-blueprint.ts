import { FAMILIES, type ImperfectionType } from "../../imperfections";
import { FACES, type Face, POSITIONS, type Position, PROCESSES, type Process } from "../../weld";
import { SIZE_BANDS } from "../difficulty";
import {
  asksFor,
  type Blueprint,
  blueprintSchema,
  countOf,
  type SectionBlueprint,
  type Slot,
  unitsOf,
  WELD_LENGTH,
} from "./blueprint";
import { FEATURE_ROWS, weightOf } from "./feature-rows";
import { bandsToBeHad, PLATE_TYPES } from "./plate-items";
import type { Refusal } from "./refusal";
import type { FeatureRow, Site } from "./rows";
import { entryOf, sizingsOf } from "./sizing";
import { matchUnits } from "./slot-match";
import { APART, FROM_ENDS, UNSURE } from "./zones";

/** Most planted stops of a face: more would mean that electrodes had been thrown away half used. */
export const MOST_STOPS = 2;
/** Across a face at most this many indications lie side by side: one on either plate or toe, one between. */
const SIDE_BY_SIDE = 3;

export type Checked = { readonly ok: true; readonly blueprint: Blueprint } | Refusal;

/**
 * Reads a blueprint and refuses what no specimen can meet, naming the slot and what would be right. Every process and
 * position that the joint may be drawn with must be able to fill every slot. Whether everything has room on one specimen
 * shows only when that is drawn.
 */
export function checkBlueprint(input: unknown): Checked {
  const parsed = blueprintSchema.safeParse(input);
  if (!parsed.success) {
    const problems = parsed.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`);
    return { ok: false, code: "not-a-blueprint", problems };
  }
  const blueprint = parsed.data;
  for (const face of FACES) {
    const refusal = refuseSection(face, blueprint);
    if (refusal) return refusal;
  }
  return { ok: true, blueprint };
}

/** Why no specimen of a blueprint can have its one face as it asks; null where nothing is known against it. */
export function refuseSection(face: Face, blueprint: Blueprint): Refusal | null {
  const section = blueprint.sections[face];
  for (const n of section.slots.keys()) {
    const refusal = refuseSlot(face, n, blueprint);
    if (refusal) return refusal;
  }
  return refuseCounts(face, blueprint) ?? refuseLength(face, section);
}

/** Rows that can give what a slot asks for, whatever the process. How the plates stand is no row: see `plateItems`. */
export function rowsFor(face: Face, slot: Slot, section: Pick<SectionBlueprint, "nearLimits">): FeatureRow[] {
  return ofKind(face, slot).filter((row) => sizingsOf(row, slot.band, !section.nearLimits).length > 0);
}

const ofKind = (face: Face, slot: Slot): FeatureRow[] =>
  ofFamily(face, slot).filter((row) => slot.place === "any" || row.site === slot.place);

const ofFamily = (face: Face, slot: Slot): FeatureRow[] =>
  FEATURE_ROWS.filter((row) => {
    const entry = entryOf(row);
    return row.face === face && entry && asksFor(slot, row.type as ImperfectionType);
  });

/** True where how the plates stand can fill a slot: it says so itself. */
export const asksForPlates = (face: Face, slot: Slot): boolean =>
  face === "cap" &&
  (slot.families !== "any" || slot.types !== undefined) &&
  PLATE_TYPES.some((type) => asksFor(slot, type)) &&
  (slot.place === "any" || slot.place === "weld");

function refuseSlot(face: Face, n: number, { joint, sections }: Blueprint): Refusal | null {
  const section = sections[face];
  const slot = section.slots[n];
  const at = { ok: false, face, slot: n } as const;
  const kind = ofKind(face, slot);
  if (asksForPlates(face, slot)) {
    const { band } = slot;
    const bands = PLATE_TYPES.filter((type) => asksFor(slot, type)).flatMap((type) =>
      bandsToBeHad(type, !section.nearLimits),
    );
    if (kind.length > 0 || band === "any" || bands.includes(band)) return null;
    return { ...at, code: "no-such-size", bands: SIZE_BANDS.filter((one) => bands.includes(one)) };
  }
  if (kind.length === 0 && slot.types) {
    return { ...at, code: "type-never-there", types: slot.types, lies: slot.types.flatMap(liesAt) };
  }
  if (kind.length === 0) {
    const there = FEATURE_ROWS.filter((row) => row.face === face && (slot.place === "any" || row.site === slot.place));
    const families = FAMILIES.filter((family) => there.some((row) => entryOf(row)?.family === family));
    return {
      ...at,
      code: "nothing-gives-it",
      families,
      places: [...new Set(ofFamily(face, slot).map(({ site }) => site))],
    };
  }
  const sized = (band: Slot["band"], clear: boolean) => kind.some((row) => sizingsOf(row, band, clear).length > 0);
  if (!sized(slot.band, false))
    return { ...at, code: "no-such-size", bands: SIZE_BANDS.filter((band) => sized(band, false)) };
  if (!sized(slot.band, !section.nearLimits)) return { ...at, code: "limits-in-the-way" };
  const rows = rowsFor(face, slot, section);
  const canWith = (process: Process) => rows.some((row) => row.likelihood[process] !== "never");
  const process = joint.processes.find((one) => !canWith(one));
  if (process) return { ...at, code: "process-never", process, processes: PROCESSES.filter(canWith) };
  const canIn = (position: Position) =>
    joint.processes.every((one) => rows.some((row) => weightOf(row, one, position) > 0));
  const position = joint.positions.find((one) => !canIn(one));
  return position ? { ...at, code: "position-never", position, positions: POSITIONS.filter(canIn) } : null;
}

/** Every place on a plate where a type lies. */
function liesAt(type: ImperfectionType): { face: Face; place: Site }[] {
  const ofPlates = PLATE_TYPES.some((one) => one === type) ? [{ face: "cap", place: "weld" } as const] : [];
  return FACES.flatMap((face) => {
    const sites = new Set(FEATURE_ROWS.filter((row) => row.face === face && row.type === type).map(({ site }) => site));
    return [...sites].map((place) => ({ face, place }));
  }).concat(ofPlates);
}

/** One of every type per face at most, or as many as its rows say; two planted stops in all. */
function refuseCounts(face: Face, { joint, sections }: Blueprint): Refusal | null {
  const section = sections[face];
  const units = unitsOf(section);
  for (const process of joint.processes) {
    for (const position of joint.positions) {
      const rows = section.slots.map((slot) =>
        rowsFor(face, slot, section).filter((row) => weightOf(row, process, position) > 0),
      );
      const most = copiesOf(rows.flat());
      const plates = face === "cap" ? PLATE_TYPES : [];
      const supply: string[] = [...most, ...plates];
      const matching = matchUnits(units.length, supply.length, (unit, item) =>
        canGive(section.slots[units[unit]], rows[units[unit]], supply[item], face),
      );
      if (matching.size < units.length) {
        const filled = new Set(matching.values());
        const slot = units.find((_, unit) => !filled.has(unit)) ?? 0;
        return {
          ok: false,
          code: "too-many-of-a-kind",
          face,
          slot,
          wanted: section.slots[slot].count,
          most: [...matching.values()].filter((unit) => units[unit] === slot).length,
        };
      }
    }
  }
  return null;
}

function canGive(slot: Slot, rows: readonly FeatureRow[], type: string, face: Face): boolean {
  if (PLATE_TYPES.some((one) => one === type))
    return asksForPlates(face, slot) && asksFor(slot, type as ImperfectionType);
  return rows.some((row) => (row.site === "stop" ? type.startsWith("stop ") : row.type === type));
}

/** Every type as often as a face takes it; what lies at stops shares the stops. */
function copiesOf(rows: readonly FeatureRow[]): string[] {
  const most = new Map<string, number>();
  for (const row of rows) if (row.site !== "stop") most.set(row.type, Math.max(most.get(row.type) ?? 0, row.most));
  const stops = Array.from({ length: MOST_STOPS }, (_, n) => `stop ${n}`);
  return [...[...most].flatMap(([type, count]) => Array.from({ length: count }, () => type as string)), ...stops];
}

/** What surely cannot have room: the shortest of everything asked for, side by side as far as a face allows it. */
function refuseLength(face: Face, section: SectionBlueprint): Refusal | null {
  const planted = section.slots.filter((slot) => !asksForPlates(face, slot));
  const lengths = planted.flatMap((slot) => {
    const rows = rowsFor(face, slot, section);
    const sizings = rows.flatMap((row) => sizingsOf(row, slot.band, !section.nearLimits));
    const onPlate = rows.some(({ site }) => site === "plate");
    const shortest = Math.min(...sizings.map(({ length }) => length[0]));
    return Array.from({ length: slot.count }, () => ({ shortest, onPlate }));
  });
  const least = lengths.reduce((sum, { shortest }) => sum + shortest, 0);
  const mostClean = Math.floor(WELD_LENGTH - least / SIDE_BY_SIDE);
  if (section.cleanLength > mostClean) {
    return { ok: false, code: "clean-length", face, wanted: section.cleanLength, most: mostClean };
  }
  // everything on the root bead lies in one line
  const bead = face === "root" ? lengths.filter(({ onPlate }) => !onPlate) : [];
  const overfull =
    bead.length > fitting(bead, 1) ? bead.length - fitting(bead, 1) : lengths.length - fitting(lengths, SIDE_BY_SIDE);
  if (overfull <= 0) return null;
  const wanted = countOf(section);
  return { ok: false, code: "more-than-fits", face, wanted, most: wanted - overfull };
}

/** How many of the shortest fit into so many lines. */
function fitting(lengths: readonly { shortest: number }[], lines: number): number {
  let room = lines * (WELD_LENGTH - 2 * FROM_ENDS + APART.along);
  const sorted = lengths.map(({ shortest }) => shortest).sort((a, b) => a - b);
  const all = sorted.findIndex((shortest) => {
    room -= shortest + 2 * UNSURE + APART.along;
    return room < 0;
  });
  return all < 0 ? sorted.length : all;
}
