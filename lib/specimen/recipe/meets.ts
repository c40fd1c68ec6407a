import { type ImperfectionType, imperfection } from "../../imperfections";
import { bandOf, expectedMark, PASS_ABILITY, type SectionTruth, type SizeBand } from "../difficulty";
import type { TruthItem } from "../truth";
import { asksFor, type SectionBlueprint, type Slot, unitsOf, WELD_LENGTH, WITHIN_MARKS } from "./blueprint";
import type { Departure } from "./departure";
import { isNearLimit } from "./limits";
import type { Site } from "./rows";
import { siteOf } from "./site-of";
import { matchUnits } from "./slot-match";
import { APART } from "./zones";

export type Meets = { readonly ok: true } | ({ readonly ok: false } & Departure);

const isReportable = ({ neutral }: TruthItem): boolean => !neutral;
/** How the plates stand is seen along the whole weld and leaves nothing of it clean; it is left out of what concerns places. */
const isOfPlates = ({ type }: TruthItem): boolean => imperfection(type).family === "misalignment";

/**
 * Whether a face, as measured, is what its section asks for: every slot filled by an item of its own, no more extras than
 * allowed, sizes clear of limits, everything apart, enough clean weld, and the expected mark. What is neutral does not count.
 */
export function meetsBlueprint(made: SectionTruth, section: SectionBlueprint): Meets {
  const items = made.items.filter(isReportable);
  const departure =
    slotsDeparture(made, items, section) ??
    limitsDeparture(items, section) ??
    apartDeparture(items) ??
    cleanDeparture(items, section) ??
    markDeparture(made, section);
  return departure ? { ok: false, ...departure } : { ok: true };
}

interface Kind {
  readonly type: ImperfectionType;
  readonly band: SizeBand;
  readonly site: Site;
}

/** True where an imperfection of a kind fills a place of a slot. */
export function fillsSlot({ type, band, site }: Kind, slot: Slot): boolean {
  return (
    asksFor(slot, type) && (slot.band === "any" || slot.band === band) && (slot.place === "any" || slot.place === site)
  );
}

function slotsDeparture(
  { face, joint }: SectionTruth,
  items: readonly TruthItem[],
  section: SectionBlueprint,
): Departure | null {
  const kinds = items.map((item) => ({ type: item.type, band: bandOf(item), site: siteOf(item, face, joint) }));
  const units = unitsOf(section);
  const matching = matchUnits(units.length, items.length, (unit, item) =>
    fillsSlot(kinds[item], section.slots[units[unit]]),
  );
  if (matching.size < units.length) {
    const filled = new Set(matching.values());
    return { code: "slot-not-filled", slot: units.find((_, unit) => !filled.has(unit)) ?? 0 };
  }
  const extras = items.length - units.length;
  return extras > section.extras ? { code: "too-many", extras, most: section.extras } : null;
}

function limitsDeparture(items: readonly TruthItem[], section: SectionBlueprint): Departure | null {
  const near = section.nearLimits ? undefined : items.find(({ type, size }) => isNearLimit(type, size));
  return near ? { code: "near-limit", type: near.type, size: near.size ?? 0 } : null;
}

/** By the places that marking goes by: ends along the weld, middles across it. */
function apartDeparture(items: readonly TruthItem[]): Departure | null {
  const placed = items.filter((item) => !isOfPlates(item));
  for (const [n, a] of placed.entries()) {
    for (const b of placed.slice(n + 1)) {
      const along = Math.max(a.start - b.end, b.start - a.end);
      if (along < APART.along && Math.abs(a.across - b.across) < APART.across)
        return { code: "too-close", types: [a.type, b.type] };
    }
  }
  return null;
}

/** Length of weld beside or on which nothing lies, mm; ends of what is listed as a point are taken from its outline. */
function cleanLengthOf(items: readonly TruthItem[]): number {
  const taken = items
    .filter((item) => !item.neutral && !isOfPlates(item))
    .map(({ start, end, outline }): [number, number] => [
      Math.min(start, ...outline.map(([x]) => x)),
      Math.max(end, ...outline.map(([x]) => x)),
    ])
    .sort((a, b) => a[0] - b[0]);
  let clean = 0;
  let reached = 0;
  for (const [from, to] of taken) {
    clean += Math.max(0, from - reached);
    reached = Math.max(reached, to);
  }
  return clean + Math.max(0, WELD_LENGTH - reached);
}

function cleanDeparture(items: readonly TruthItem[], { cleanLength }: SectionBlueprint): Departure | null {
  const length = cleanLengthOf(items);
  return length < cleanLength ? { code: "clean-length", length, least: cleanLength } : null;
}

function markDeparture(made: SectionTruth, section: SectionBlueprint): Departure | null {
  if (section.expectedMark === null) return null;
  const mark = expectedMark(made, PASS_ABILITY);
  const isWithin = Math.abs(mark - section.expectedMark) <= WITHIN_MARKS;
  return isWithin ? null : { code: "expected-mark", mark, wanted: section.expectedMark };
}
