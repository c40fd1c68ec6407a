import type { ImperfectionType } from "../../imperfections";
import { MOST_STOPS } from "../recipe/check-blueprint";
import type { FeatureRow } from "../recipe/rows";
import type { TypeWish, Unmet, Wished } from "../recipe/type-wish";
import type { FilletBlueprint } from "./fillet-blueprint";
import { FILLET_ROWS } from "./rows";

/** What a gap between the plates is; it is no row, since it comes of the joint. */
const GAP: ImperfectionType = "incorrect-root-gap";
/** What types need of a fillet's length: what changes the weld keeps both toes free, where electrodes ended little else lies near. */
const NEED: Readonly<Partial<Record<FeatureRow["site"], number>>> = { weld: 4, stop: 4, toe: 3 };
/** So much of it a fillet has that most draws place everything: two of the weld or three of its toes. Measured on draws. */
const ROOM = 10;

/**
 * A fillet blueprint that asks for types: each of `includes` comes, as many as there may be indications and have room along
 * one weld, two at most where electrodes ended; whatever comes besides is `among`, so far as it is planted. What shows only once the joint is welded,
 * such as a weld that came out too small, comes all the same.
 */
export function withFilletTypes(blueprint: FilletBlueprint, { includes, among }: TypeWish): Wished<FilletBlueprint> {
  const [least, most] = blueprint.indications;
  const taken: ImperfectionType[] = [];
  const unmet: Unmet[] = [];
  for (const type of new Set(includes)) {
    const why = whyNot(type, taken, most);
    if (why) unmet.push({ type, why });
    else taken.push(type);
  }
  const gapped = taken.includes(GAP) ? 1 : among === "any" || among.includes(GAP) ? blueprint.gapped : 0;
  const room = among === "any" ? most : mostOf([...new Set([...taken, ...among])]);
  const there = Math.min(least, room);
  return {
    blueprint: {
      ...blueprint,
      indications: [Math.max(there, taken.length), Math.max(taken.length, Math.min(most, room))],
      gapped,
      ...(taken.length > 0 && { includes: taken }),
      ...(among !== "any" && { among }),
    },
    unmet,
    fewer: least - Math.max(there, Math.min(least, taken.length)),
  };
}

const isAtStop = (type: ImperfectionType): boolean =>
  FILLET_ROWS.some((row) => row.type === type && row.site === "stop");

/** What comes at more than one place needs no more than the least of them. */
const needOf = (type: ImperfectionType): number =>
  type === GAP ? 0 : Math.min(...FILLET_ROWS.filter((row) => row.type === type).map(({ site }) => NEED[site] ?? 0));

/** How many indications types can give together on one fillet. */
function mostOf(types: readonly ImperfectionType[]): number {
  const most = (type: ImperfectionType): number => {
    if (type === GAP) return 1;
    return Math.max(0, ...FILLET_ROWS.filter((row) => row.type === type).map((row) => row.most));
  };
  const sum = (of: readonly ImperfectionType[]) => of.reduce((all, type) => all + most(type), 0);
  return sum(types.filter((type) => !isAtStop(type))) + Math.min(MOST_STOPS, sum(types.filter(isAtStop)));
}

function whyNot(type: ImperfectionType, taken: readonly ImperfectionType[], most: number): Unmet["why"] | null {
  if (type !== GAP && !FILLET_ROWS.some((row) => row.type === type)) return "never";
  const needed = [...taken, type].reduce((sum, one) => sum + needOf(one), 0);
  if (taken.length >= most || needed > ROOM) return "no-room";
  return isAtStop(type) && taken.filter(isAtStop).length >= MOST_STOPS ? "no-room" : null;
}
