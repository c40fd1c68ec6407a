import { IMPERFECTION_TYPES, type ImperfectionType, imperfection, type SizeKind } from "../../imperfections";
import { PIECES } from "../../weld";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { looks, lowerName } from "../words";

const SIZES: Readonly<Record<SizeKind | "none", string>> = {
  depth: "Its depth",
  height: "Its height",
  diameter: "Its diameter",
  difference: "A difference",
  gap: "Its gap",
  none: "No size of it",
};

/** Types of which documents limit something else than is measured here, of which more could be measured, or which are dimensions. */
const DISPUTED: readonly ImperfectionType[] = [
  "crater-pipe",
  "poor-restart",
  "overlap",
  "incorrect-weld-toe",
  "irregular-width",
  "burn-through",
  "elongated-cavity",
  "worm-hole",
  "root-porosity",
  "linear-misalignment",
  "angular-misalignment",
  "excessive-throat",
  "insufficient-throat",
];

export const measuredHow: Kind = {
  name: "measured-how",
  source: "trade",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const { faces } = PIECES[truth.joint.kind];
    const here = IMPERFECTION_TYPES.filter(
      (type) => !DISPUTED.includes(type) && imperfection(type).faces.some((face) => faces.includes(face)),
    );
    const sizes = (["depth", "height", "diameter", "none"] as const).filter((size) =>
      here.some((type) => (imperfection(type).size ?? "none") === size),
    );
    const size = random.pick(sizes);
    const type = random.pick(here.filter((one) => (imperfection(one).size ?? "none") === size));
    return {
      stem: `Besides where it lies and how long it is: what do you measure of ${lowerName(type)} for the report here?`,
      right: {
        text: SIZES[size],
        why: `the report has this column for it (common practice, no source); ${looks(type)}`,
      },
      wrong: (Object.keys(SIZES) as (keyof typeof SIZES)[])
        .filter((other) => other !== size)
        .map((other) => ({
          text: SIZES[other],
          why:
            other === "none"
              ? "a gauge measures it, and a limit can go by it"
              : `that is measured of other types, such as ${example(other)}`,
        })),
      place: null,
    };
  },
};

const example = (size: SizeKind): string =>
  lowerName(IMPERFECTION_TYPES.find((type) => imperfection(type).size === size) as ImperfectionType);
