import { BOTH_SECTIONS, type Kind } from "../kind";

/** The groups of ISO 6520-1 by the first digit of a number (secondary sources agree). */
const GROUPS = [
  { digit: 1, name: "Cracks" },
  { digit: 2, name: "Cavities" },
  { digit: 3, name: "Solid inclusions" },
  { digit: 4, name: "Lack of fusion and penetration" },
  { digit: 5, name: "Imperfect shape and dimensions" },
  { digit: 6, name: "Miscellaneous" },
];

export const groupOfNumber: Kind = {
  name: "group-of-number",
  source: "trade",
  sections: BOTH_SECTIONS,
  draft: (_, random) => {
    const { digit, name } = random.pick(GROUPS);
    return {
      stem: `In a report you read a reference number of ISO 6520-1 that begins with ${digit}. To which group does it belong?`,
      right: { text: name, why: `the numbers of this group begin with ${digit} (ISO 6520-1, secondary sources agree)` },
      wrong: GROUPS.filter((group) => group.digit !== digit).map((group) => ({
        text: group.name,
        why: `the numbers of that group begin with ${group.digit}`,
      })),
      place: null,
    };
  },
};
