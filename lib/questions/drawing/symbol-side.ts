import { BOTH_SECTIONS, type Choice, type Kind } from "../kind";

export const symbolSide: Kind = {
  name: "symbol-side",
  source: "drawing",
  sections: BOTH_SECTIONS,
  draft: (_, random) => {
    const line = random.pick(["solid", "dashed", "both"] as const);
    const choices: Readonly<Record<typeof line | "none", Choice>> = {
      solid: { text: "On the arrow's side only", why: "that is a triangle on the solid line alone" },
      dashed: { text: "On the other side only", why: "that is a triangle on the dashed line alone" },
      both: { text: "On both sides of the joint", why: "that is a triangle on each side" },
      none: { text: "On the side of your choice", why: "a symbol never leaves the side open" },
    };
    const where = { solid: "on the solid line", dashed: "on the dashed line", both: "on either line" }[line];
    return {
      stem: `The symbol on a drawing has a solid and a dashed reference line (ISO 2553, system A). ${
        line === "both" ? "There is one triangle on each of the lines" : `Its one triangle stands ${where}`
      }. Where is the fillet to be?`,
      right: {
        ...choices[line],
        why: "the solid line speaks for the side that the arrow points at, the dashed line for the other one (ISO 2553, secondary sources agree)",
      },
      wrong: (["solid", "dashed", "both", "none"] as const).filter((one) => one !== line).map((one) => choices[one]),
      place: null,
    };
  },
};
