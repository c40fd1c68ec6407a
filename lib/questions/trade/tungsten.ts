import { BOTH_SECTIONS, type Kind } from "../kind";

/** Processes of ISO 4063 by their electrode (secondary sources agree). */
const PROCESSES = [
  { text: "111, manual metal arc", why: "its covered electrode melts away and holds no tungsten" },
  { text: "114, self-shielded cored wire", why: "its wire melts away and holds no tungsten" },
  { text: "121, submerged arc", why: "its wire melts under powder and holds no tungsten" },
  { text: "131, inert gas, solid wire", why: "its gas is inert, but the wire is the electrode and melts" },
  { text: "135, active gas, solid wire", why: "its wire melts away and holds no tungsten" },
  { text: "136, active gas, cored wire", why: "its wire melts away and holds no tungsten" },
];

export const tungsten: Kind = {
  name: "tungsten",
  source: "trade",
  sections: BOTH_SECTIONS,
  draft: () => ({
    stem: "Grains of tungsten stick to a plate beside a weld. Which of these processes left them?",
    right: {
      text: "141, inert gas, solid rod",
      why: "only its electrode is of tungsten, and it touched the pool (ISO 4063, secondary sources agree)",
    },
    wrong: PROCESSES,
    place: null,
  }),
};
