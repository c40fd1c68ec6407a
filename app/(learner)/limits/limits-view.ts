import { faultOf, readNumber } from "@/app/_bench/report/read-number";
import {
  type Asked,
  askedOf,
  type Comparison,
  compare,
  comparedCriteria,
  comparedTypes,
  STRESSES,
  type Stress,
} from "@/lib/criteria";
import { type ImperfectionType, imperfection, isImperfectionType } from "@/lib/imperfections";
import { SURFACE_FACES, type SurfaceFace } from "@/lib/weld";
import { FIELD_FACTS, FIELD_NAMES, type FieldName, unitOf } from "./field-facts";

/** What the page stands at. */
export interface LimitsView {
  readonly face: SurfaceFace;
  readonly type: ImperfectionType;
  readonly stress: Stress;
  /** Every number, also those that this type does not ask for, so that they are still there when another one does. */
  readonly numbers: Readonly<Record<FieldName, number>>;
}

/** Query of an address: one text a name, or several where a name stands in it more than once. */
export type Query = Readonly<Record<string, string | readonly string[] | undefined>>;

export const FACE_NAMES: Readonly<Record<SurfaceFace, string>> = {
  cap: "Butt weld, cap face",
  root: "Butt weld, root face",
  fillet: "Fillet weld",
};
export const STRESS_NAMES: Readonly<Record<Stress, string>> = {
  "across-tension": "across a tensile stress",
  other: "in any other way",
};

const START_NUMBERS = Object.fromEntries(FIELD_NAMES.map((name) => [name, FIELD_FACTS[name].start])) as Record<
  FieldName,
  number
>;
/** As on a mark sheet, AWS D1.1 is that of a weld which does not lie across a tensile stress. */
const START: LimitsView = {
  face: "cap",
  type: "continuous-undercut",
  stress: "other",
  numbers: START_NUMBERS,
};

/** Reads the query of an address. What cannot be read falls back to how the page starts, with a sentence that names it. */
export function readView(query: Query): { readonly view: LimitsView; readonly problems: readonly string[] } {
  const problems: string[] = [];
  const textOf = (name: string): string | undefined => {
    const value = query[name];
    if (value === undefined || typeof value === "string") return value;
    problems.push(`${name}: it stands in the address more than once; write it once.`);
    return undefined;
  };
  const oneOf = <T extends string>(name: string, choices: readonly T[], fallback: T): T => {
    const text = textOf(name);
    const choice = choices.find((one) => one === text);
    if (text === undefined || choice !== undefined) return choice ?? fallback;
    problems.push(`${name}: “${text}” is none of ${choices.join(", ")}. Shown instead: ${fallback}.`);
    return fallback;
  };

  const typeText = textOf("type");
  const named = typeText !== undefined && isImperfectionType(typeText) ? typeText : null;
  const face = oneOf("weld", SURFACE_FACES, named ? imperfection(named).faces[0] : START.face);
  const type = typeOn(face, named ?? START.type);
  if (typeText !== undefined && named !== type) {
    const wrong = named
      ? `${imperfection(named).name} is not compared on: ${FACE_NAMES[face].toLowerCase()}`
      : `“${typeText}” is no imperfection of the catalogue, like ${START.type}`;
    problems.push(`type: ${wrong}. Shown instead: ${imperfection(type).name.toLowerCase()}.`);
  }
  const stress = oneOf("aws", STRESSES, START.stress);
  const numbers = FIELD_NAMES.map((name): [FieldName, number] => {
    const { min, max, start } = FIELD_FACTS[name];
    const text = textOf(name);
    if (text === undefined) return [name, start];
    const read = readNumber(text);
    const fault = typeof read === "number" ? faultOf(read, min, max, unitOf(name)) : NO_NUMBER;
    if (fault === null) return [name, read as number];
    problems.push(`${name}: “${text}” was not taken. ${fault} It starts at ${start} ${unitOf(name)}.`);
    return [name, start];
  });
  return { view: { face, type, stress, numbers: Object.fromEntries(numbers) as LimitsView["numbers"] }, problems };
}

export const NO_NUMBER = "Write a number, for example 12.5.";

/** That type where it is compared on the face, else one of its family, else the first. */
export function typeOn(face: SurfaceFace, type: ImperfectionType): ImperfectionType {
  const offered = comparedTypes(face);
  const alike = offered.find((other) => imperfection(other).family === imperfection(type).family);
  return offered.includes(type) ? type : (alike ?? offered[0]);
}

const setsOf = ({ stress }: LimitsView) => comparedCriteria(stress);

export const askedBy = (view: LimitsView): Asked => askedOf(setsOf(view), view.type, view.face);

/** Fields of a view in the order in which they stand: thickness first, then what the limits are multiples of, then sizes. */
export function fieldsOf(view: LimitsView): readonly FieldName[] {
  const { symbols, quantities } = askedBy(view);
  // a butt weld is of full penetration here, so that s goes with t
  const others = symbols.filter((symbol) => symbol !== "t" && symbol !== "s");
  return ["t", ...others, ...quantities];
}

/** The query that leads to a view, with nothing in it that the type does not ask for. */
export function writeView(view: LimitsView): string {
  const { face, type, stress, numbers } = view;
  const query = new URLSearchParams({ weld: face, type, aws: stress });
  for (const name of fieldsOf(view)) query.set(name, String(numbers[name]));
  return query.toString();
}

export function compareView(view: LimitsView): Comparison {
  const { face, type, numbers } = view;
  const { quantities } = askedBy(view);
  const sized = quantities.filter((quantity) => quantity !== "length");
  const { t, a, aA, b, bRoot, z, hCap } = numbers;
  return compare(setsOf(view), {
    type,
    face,
    length: quantities.includes("length") ? numbers.length : null,
    measured: Object.fromEntries(sized.map((quantity) => [quantity, numbers[quantity]])),
    values: { t, s: t, a, aA, b, bRoot, z, hCap },
  });
}
