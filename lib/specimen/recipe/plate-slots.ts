import type { PlateSetting } from "../parent";
import { type SectionBlueprint, unitsOf } from "./blueprint";
import { asksForPlates, rowsFor } from "./check-blueprint";
import { isNearLimit } from "./limits";
import { fillsSlot } from "./meets";
import { bandsOfPlates, type PlateItem, plateItems } from "./plate-items";
import { matchUnits } from "./slot-match";

/** What is to be found of how the plates stand, and which of the section's indications that makes up for. */
export interface PlatesFit {
  readonly items: readonly PlateItem[];
  /** Numbers of the units, as `unitsOf` lists them, that are filled by it. */
  readonly units: readonly number[];
}

/** For a face on which the plates' standing is not reported. */
export const NO_PLATES: PlatesFit = { items: [], units: [] };

/** How the plates' standing fits into the cap's section; null where these plates are not for this blueprint. */
export function fitPlates(plates: PlateSetting, section: SectionBlueprint): PlatesFit | null {
  const items = plateItems(plates);
  if (!items) return null;
  if (!section.nearLimits && items.some(({ type, size }) => isNearLimit(type, size))) return null;
  const units = unitsOf(section);
  const matching = matchUnits(units.length, items.length, (unit, n) => {
    const slot = section.slots[units[unit]];
    return (
      asksForPlates("cap", slot) &&
      bandsOfPlates(items[n]).every((band) => fillsSlot({ type: items[n].type, band, site: "weld" }, slot))
    );
  });
  const filled = [...matching.values()];
  const isMissing = units.some((slot, unit) => !filled.includes(unit) && onlyPlates(section, slot));
  return isMissing || items.length - matching.size > section.extras ? null : { items, units: filled };
}

const onlyPlates = (section: SectionBlueprint, n: number): boolean =>
  asksForPlates("cap", section.slots[n]) && rowsFor("cap", section.slots[n], section).length === 0;
