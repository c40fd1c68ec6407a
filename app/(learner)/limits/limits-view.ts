import { faultOf, readNumber } from "@/app/_bench/report/read-number";
import {
  type Asked,
  askedOf,
  type Comparison,
  type Criteria,
  compare,
  comparedCriteria,
  comparedTypes,
  STRESSES,
  type Stress,
  type Subject,
} from "@/lib/criteria";
import { type ImperfectionType, imperfection, isImperfectionType } from "@/lib/imperfections";
import { SURFACE_FACES, type SurfaceFace } from "@/lib/weld";
import { FIELD_FACTS, FIELD_NAMES, type FieldName, unitOf } from "./field-facts";

/** What the page stands at. */
export interface LimitsView {
  readonly face: SurfaceFace;
  readonly type: ImperfectionType;
  readonly stress: Stress;
  /** Keys of the sets that stand side by side, at least one, in the order in which they are offered. */
  readonly sets: readonly string[];
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

/** Built-in sets that differ only by how the weld lies stand for one another. */
const keyOf = ({ id }: Criteria): string => id.replace(/-(across|other)$/, "");

export const START_NUMBERS: LimitsView["numbers"] = Object.fromEntries(
  FIELD_NAMES.map((name) => [name, FIELD_FACTS[name].start]),
) as Record<FieldName, number>;
/** As on a mark sheet, AWS D1.1 is that of a weld which does not lie across a tensile stress. */
const START: LimitsView = {
  face: "cap",
  type: "continuous-undercut",
  stress: "other",
  sets: comparedCriteria("other").map(keyOf),
  numbers: START_NUMBERS,
};

/** Reads the query of an address. What cannot be read falls back to how the page starts, with a sentence that names it. */
export function readView(
  query: Query,
  inHouse: readonly Criteria[] = [],
): { readonly view: LimitsView; readonly problems: readonly string[] } {
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
  const offered = offeredSets(stress, inHouse).map(({ key }) => key);
  const asked = textOf("sets")?.split(",");
  const unknown = asked?.filter((key) => !offered.includes(key)) ?? [];
  const known = asked ? offered.filter((key) => asked.includes(key)) : [];
  const sets = known.length > 0 ? known : START.sets;
  if (unknown.length > 0) {
    const instead = known.length > 0 ? "The others are shown." : "Shown instead: the built-in sets.";
    problems.push(`sets: “${unknown.join(", ")}” is none of ${offered.join(", ")}. ${instead}`);
  }
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
  return {
    view: { face, type, stress, sets, numbers: Object.fromEntries(numbers) as LimitsView["numbers"] },
    problems,
  };
}

export const NO_NUMBER = "Write a number, for example 12.5.";

/** That type where it is compared on the face, else one of its family, else the first. */
export function typeOn(face: SurfaceFace, type: ImperfectionType): ImperfectionType {
  const offered = comparedTypes(face);
  const alike = offered.find((other) => imperfection(other).family === imperfection(type).family);
  return offered.includes(type) ? type : (alike ?? offered[0]);
}

/** Every set that may stand side by side, by its key: the built-in ones, then the workshop's own. */
export const offeredSets = (
  stress: Stress,
  inHouse: readonly Criteria[],
): readonly { readonly key: string; readonly criteria: Criteria }[] =>
  [...comparedCriteria(stress), ...inHouse].map((criteria) => ({ key: keyOf(criteria), criteria }));

const setsOf = ({ stress, sets }: LimitsView, inHouse: readonly Criteria[]): readonly Criteria[] =>
  offeredSets(stress, inHouse).flatMap(({ key, criteria }) => (sets.includes(key) ? [criteria] : []));

export const askedBy = (view: LimitsView, inHouse: readonly Criteria[] = []): Asked =>
  askedOf(setsOf(view, inHouse), view.type, view.face);

/** Numbers to be asked for, in the order in which they stand: thickness first, then what limits are multiples of, then sizes. */
export function fieldsAsked({ symbols, quantities }: Asked): readonly FieldName[] {
  // a butt weld is of full penetration here, so that s goes with t
  const others = symbols.filter((symbol) => symbol !== "t" && symbol !== "s");
  return ["t", ...others, ...quantities];
}

/** Fields of a view. */
export const fieldsOf = (view: LimitsView, inHouse: readonly Criteria[] = []): readonly FieldName[] =>
  fieldsAsked(askedBy(view, inHouse));

/** The query that leads to a view, with nothing in it that the type does not ask for. */
export function writeView(view: LimitsView, inHouse: readonly Criteria[] = []): string {
  const { face, type, stress, sets, numbers } = view;
  const query = new URLSearchParams({ weld: face, type, aws: stress });
  if (sets.join() !== START.sets.join()) query.set("sets", sets.join());
  for (const name of fieldsOf(view, inHouse)) query.set(name, String(numbers[name]));
  return query.toString();
}

/** One imperfection with every number that is asked for. */
export function subjectOf(
  { face, type, numbers }: Pick<LimitsView, "face" | "type" | "numbers">,
  asked: Asked,
): Subject {
  const { quantities } = asked;
  const sized = quantities.filter((quantity) => quantity !== "length");
  const { t, a, aA, b, bRoot, z, hCap } = numbers;
  return {
    type,
    face,
    length: quantities.includes("length") ? numbers.length : null,
    measured: Object.fromEntries(sized.map((quantity) => [quantity, numbers[quantity]])),
    values: { t, s: t, a, aA, b, bRoot, z, hCap },
  };
}

export const compareView = (view: LimitsView, inHouse: readonly Criteria[] = []): Comparison =>
  compare(setsOf(view, inHouse), subjectOf(view, askedBy(view, inHouse)));
