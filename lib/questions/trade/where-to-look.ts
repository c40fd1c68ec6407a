import { IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../../imperfections";
import type { Face } from "../../weld";
import type { Choice, Kind } from "../kind";
import { looks } from "../words";

const onlyOn = (face: Face): ImperfectionType[] =>
  IMPERFECTION_TYPES.filter((type) => imperfection(type).faces.length === 1 && imperfection(type).faces[0] === face);

/** Names that give the place away. */
const TELLS = /root|penetration|cap/i;

/** Types that can show on the other face of a plate as well, though rarely. */
const ON_EITHER: readonly ImperfectionType[] = [
  "burn-through",
  "irregular-surface",
  "sagging",
  "surface-porosity",
  "worm-hole",
];

const isSure = (type: ImperfectionType): boolean =>
  isPlaced(type) && !ON_EITHER.includes(type) && !TELLS.test(imperfection(type).name);

const isPlaced = (type: ImperfectionType): boolean => imperfection(type).family !== "misalignment";

const choice = (type: ImperfectionType, why: string): Choice => ({ text: imperfection(type).name, why });

export const whereToLook: Kind = {
  name: "where-to-look",
  source: "trade",
  sections: ["plate"],
  draft: (_, random) => {
    const face = random.pick(["cap", "root"] as const);
    const other = face === "cap" ? "root" : "cap";
    const type = random.pick(onlyOn(face).filter(isSure));
    return {
      stem: `For which of these do you look on a ${face} face and not on a ${other} face?`,
      right: choice(type, `${looks(type)} (common practice, no source)`),
      wrong: onlyOn(other)
        .filter(isPlaced)
        .map((one) => choice(one, `for that you look on the ${other} face`)),
      place: null,
    };
  },
};
