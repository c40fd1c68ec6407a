import { BOTH_SECTIONS, type Kind } from "../kind";

/** What becomes of a distance from the left end and of a side of the centre line; geometry. */
const TURNS = [
  { words: "turn the plate about its long axis to see its back", isKept: { distance: true, side: false } },
  { words: "turn the plate end over end to see its back", isKept: { distance: false, side: true } },
  { words: "spin the plate half round on the table, the same face up", isKept: { distance: false, side: false } },
] as const;

interface Kept {
  readonly distance: boolean;
  readonly side: boolean;
}

const told = ({ distance, side }: Kept): string =>
  `As far from the ${distance ? "left" : "right"} end, on the ${side ? "same" : "other"} side`;

export const turnedPlate: Kind = {
  name: "turned-plate",
  source: "trade",
  sections: BOTH_SECTIONS,
  draft: (_, random) => {
    const { words, isKept } = random.pick(TURNS);
    const ends = isKept.distance ? "each end stays where it was" : "the two ends change places";
    const sides = isKept.side ? "near and far side stay where they were" : "near and far side change places";
    const all = [true, false].flatMap((distance) => [true, false].map((side): Kept => ({ distance, side })));
    return {
      stem: `You note a hole that goes right through a plate by its distance from the left end and by its side of the centre line, then ${words}. Where do you find the hole, seen as the plate lies now?`,
      right: { text: told(isKept), why: `${ends}, and ${sides} (geometry)` },
      wrong: all
        .filter((kept) => told(kept) !== told(isKept))
        .map((kept) => {
          const errors = [
            ...(kept.distance === isKept.distance ? [] : [ends]),
            ...(kept.side === isKept.side ? [] : [sides]),
          ];
          return { text: told(kept), why: errors.join(", and ") };
        }),
      place: null,
    };
  },
};
