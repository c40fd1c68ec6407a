import { CATALOGUE } from "../../../../lib/imperfections";
import { byText, numberIn, type Opinion, typeNamed, typeWithin } from "./reading";

const rowOf = (name: string) => {
  const type = typeNamed(name) as keyof typeof CATALOGUE;
  return CATALOGUE[type];
};

/** The least or most that ISO 17637 asks for (two or more secondary sources for each). */
const bound =
  (value: number): Opinion =>
  (asked) =>
    byText(asked, (option) => numberIn(option) === value);

/** Which gauge is for which job, in the words of the trade (common practice, no source). */
const GAUGE: readonly (readonly [RegExp, string])[] = [
  [/undercut|crater/, "Depth gauge"],
  [/stands over the plates/, "Butt-weld height gauge"],
  [/step between/, "Hook gauge"],
  [/thickness of a plate/, "Vernier caliper"],
  [/throat of a fillet|leg of a fillet/, "Leg-and-throat fillet gauge"],
  [/slot under/, "Feeler set"],
  [/along the weld/, "Steel rule"],
];

/** Numbers of ISO 6520-1 seen in public sources that quote it. */
const NUMBERS: Readonly<Record<string, string>> = {
  "crater-crack": "104",
  "surface-pore": "2017",
  "clustered-porosity": "2013",
  "linear-porosity": "2014",
  "worm-hole": "2016",
  "crater-pipe": "2025",
  "root-porosity": "516",
  "slag-residue": "615",
  "sidewall-fusion": "4011",
  "inter-run-fusion": "4012",
  "root-fusion": "4013",
  "root-penetration": "4021",
  "continuous-undercut": "5011",
  "intermittent-undercut": "5012",
  "shrinkage-groove": "5013",
  "excess-weld-metal": "502",
  "excessive-convexity": "503",
  "excess-penetration": "504",
  "incorrect-weld-toe": "505",
  overlap: "506",
  "linear-misalignment": "5071",
  "angular-misalignment": "508",
  sagging: "509",
  "burn-through": "510",
  "incompletely-filled-groove": "511",
  "excessive-asymmetry": "512",
  "irregular-width": "513",
  "irregular-surface": "514",
  "root-concavity": "515",
  "poor-restart": "517",
  "insufficient-throat": "5213",
  "excessive-throat": "5214",
  "stray-arc": "601",
  spatter: "602",
  "tungsten-spatter": "6021",
  "torn-surface": "603",
  "grinding-mark": "604",
  "chipping-mark": "605",
  underflushing: "606",
  "tack-imperfection": "607",
  "temper-colour": "610",
  "scaled-surface": "613",
  "incorrect-root-gap": "617",
};

/** Groups of ISO 6520-1 in words that tell them apart. */
const GROUP: readonly RegExp[] = [/crack/i, /cavit/i, /inclusion/i, /fusion/i, /shape/i, /miscellaneous/i];

const SIZE: Readonly<Record<string, string | null>> = {
  "Its depth": "depth",
  "Its height": "height",
  "Its diameter": "diameter",
  "A difference": "difference",
  "Its gap": "gap",
  "No size of it": null,
};

export const TRADE: Readonly<Record<string, Opinion>> = {
  "least-light": bound(350),
  "recommended-light": bound(500),
  "eye-distance": bound(600),
  "eye-angle": bound(30),
  "feeler-step": bound(0.1),
  "lens-power": bound(5),
  "gauge-for": (asked) => {
    const [, gauge] =
      GAUGE.find(([job]) => job.test(asked.question.stem.replace("along the weld an", "along the weld"))) ?? [];
    return byText(asked, (option) => option === gauge);
  },
  "number-of-type": (asked) => {
    const number = NUMBERS[typeWithin(asked.question.stem)];
    return byText(asked, (option) => option === number);
  },
  "type-of-look": (asked) => byText(asked, (option) => asked.question.stem === `What is this? ${rowOf(option).looks}`),
  "group-of-number": (asked) => {
    const digit = Number(/begins with (\d)/.exec(asked.question.stem)?.[1]);
    return byText(asked, (option) => GROUP[digit - 1].test(option));
  },
  "measured-how": (asked) => {
    const type = typeWithin(asked.question.stem) as keyof typeof CATALOGUE;
    return byText(asked, (option) => SIZE[option] === CATALOGUE[type].size);
  },
  "where-to-look": (asked) => {
    const face = /look on a (cap|root) face/.exec(asked.question.stem)?.[1] as "cap" | "root";
    const other = face === "cap" ? "root" : "cap";
    return byText(asked, (option) => {
      const faces: readonly string[] = rowOf(option).faces;
      return faces.includes(face) && !faces.includes(other);
    });
  },
  // a plate 300 long and 150 wide with a hole at (60, 20), turned as a body in space and looked at from above
  "turned-plate": (asked) => {
    const { stem } = asked.question;
    const hole = { x: 60 - 150, y: 20 };
    const turned = {
      x: stem.includes("long axis") ? hole.x : -hole.x,
      y: stem.includes("end over end") ? hole.y : -hole.y,
    };
    const fromLeft = turned.x + 150;
    return byText(
      asked,
      (option) => option.includes("left") === (fromLeft === 60) && option.includes("same side") === turned.y > 0,
    );
  },
  tungsten: (asked) => byText(asked, (option) => option.startsWith("141")),
};
