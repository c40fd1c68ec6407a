import { byNumber, byText, numbersIn, type Opinion } from "./reading";

/** Half a hundredth: options are written to hundredths. */
const WRITTEN = 0.0051;

/** Distance of the corner from the line between two toes, by trying points on it; plates at an angle in degrees. */
function shortestToFace(one: number, other: number, degrees: number): number {
  const angle = (degrees * Math.PI) / 180;
  let least = Number.POSITIVE_INFINITY;
  for (let n = 0; n <= 200_000; n++) {
    const share = n / 200_000;
    const x = one * (1 - share) + other * Math.cos(angle) * share;
    const y = other * Math.sin(angle) * share;
    least = Math.min(least, Math.sqrt(x * x + y * y));
  }
  return least;
}

const cache = new Map<string, number>();
function toFace(one: number, other: number, degrees: number): number {
  const key = `${one} ${other} ${degrees}`;
  const known = cache.get(key) ?? shortestToFace(one, other, degrees);
  cache.set(key, known);
  return known;
}

/*
 * Positions of ISO 6947 and processes of ISO 4063, in other words than the program's where there are any: written down from two
 * public lists of each.
 */
const POSITION: Readonly<Record<string, string>> = {
  PA: "flat",
  PB: "horizontal vertical",
  PC: "horizontal",
  PD: "horizontal overhead",
  PE: "overhead",
  PF: "vertical up",
  PG: "vertical down",
};
const PROCESS: Readonly<Record<string, RegExp>> = {
  "111": /^manual metal arc$/i,
  "114": /^self-shielded cored/i,
  "121": /^submerged arc/i,
  "131": /^inert gas, solid/i,
  "135": /^active gas, solid/i,
  "136": /^active gas, flux-cored/i,
  "141": /^TIG$/i,
  "15": /^plasma/i,
};

export const DRAWING: Readonly<Record<string, Opinion>> = {
  // an isosceles right triangle: the throat is half the long side, which is the leg times the square root of two
  "throat-of-leg": (asked) => {
    const [z] = numbersIn(asked.question.stem);
    return byNumber(asked, Math.sqrt(2 * z * z) / 2, WRITTEN, 0.05);
  },
  "leg-of-throat": (asked) => {
    const [a] = numbersIn(asked.question.stem);
    return byNumber(asked, Math.sqrt(2 * a * a), WRITTEN, 0.05);
  },
  "unequal-legs": (asked) => {
    const [, one, other] = numbersIn(asked.question.stem);
    return byNumber(asked, toFace(one, other, 90), WRITTEN, 0.05);
  },
  "hollow-face": (asked) => {
    const [, z, hollow] = numbersIn(asked.question.stem);
    return byNumber(asked, toFace(z, z, 90) - hollow, WRITTEN, 0.05);
  },
  "slanted-plates": (asked) => {
    const [angle, z] = numbersIn(asked.question.stem);
    return byNumber(asked, toFace(z, z, angle), WRITTEN, 0.05);
  },
  "size-letter": (asked) => {
    const [, letter, size] = /stands ([az])([\d.]+)\./.exec(asked.question.stem) ?? [];
    return byText(
      asked,
      (option) => option === (letter === "a" ? `The throat is ${size} mm` : `Each leg is ${size} mm long`),
    );
  },
  "symbol-side": (asked) => {
    const { stem } = asked.question;
    const right = /each of the lines/.test(stem) ? "both" : /on the solid line/.test(stem) ? "arrow" : "other";
    const words = {
      both: "On both sides of the joint",
      arrow: "On the arrow's side only",
      other: "On the other side only",
    };
    return byText(asked, (option) => option === words[right]);
  },
  "position-letters": (asked) => {
    const letters = /position (P[A-G])\./.exec(asked.question.stem)?.[1] ?? "";
    return byText(asked, (option) => option.toLowerCase() === POSITION[letters]);
  },
  "process-number": (asked) => {
    const number = String(numbersIn(asked.question.stem)[0]);
    return byText(asked, (option) => PROCESS[number].test(option));
  },
};
