import type { AskedTask, ShownThing, ToldTask } from "@/lib/eye";
import {
  CLUTTER_WORDS,
  type Clutter,
  type ImperfectionType,
  imperfection,
  isImperfectionType,
  likeness,
} from "@/lib/imperfections";
import { inMm } from "../_drills/read-answer";
import { inSentence, numbered, sentence, sideOf } from "./eye-words";

/** What is told of an answer: what was there, what was answered, and how to tell the next time. */
export function toldWords(task: AskedTask, told: ToldTask): readonly string[] {
  const target = told.things.find(({ isTarget }) => isTarget);
  const type = target && target.what === "imperfection" ? (target.name as ImperfectionType) : null;
  switch (told.answer.kind) {
    case "spot":
      return type ? thereWords(type, told.isRight) : [...nothingWords(told)];
    case "name":
      return type ? namedWords(type, told.answer.type) : [];
    case "pair":
      return type && target ? pairWords(type, target.window, told) : [];
    case "ends":
      return endsWords(told);
    case "size":
      return sizeWords(task, told);
  }
}

const looksOf = (type: ImperfectionType): string => imperfection(type).looks;

const thereWords = (type: ImperfectionType, isRight: boolean): readonly string[] => [
  `${isRight ? "It is there" : "You passed over it"}: ${numbered(type)}.`,
  looksOf(type),
];

function nothingWords({ things, isRight }: ToldTask): readonly string[] {
  const clutter = things.find(({ what }) => what === "clutter");
  if (clutter) {
    const { there, tell } = CLUTTER_WORDS[clutter.name as Clutter];
    return isRight ? [there] : [there, tell];
  }
  const neutral = things.find(({ what }) => what === "neutral");
  if (neutral) {
    const like = inSentence(neutral.name as ImperfectionType);
    return [`What looks like ${like} is sound, or too small to be recorded. There is nothing to report.`];
  }
  return [
    isRight
      ? "There is nothing to report."
      : "There is nothing to report here: the weld is sound, and what is on the plate does no harm.",
  ];
}

function namedWords(right: ImperfectionType, named: ImperfectionType): readonly string[] {
  if (named === right) return [`${numbered(right)}.`, looksOf(right)];
  const isAlike = likeness(named, right) > 0;
  return [
    `It is ${inSentence(right)} (${imperfection(right).number}), not ${inSentence(named)}.`,
    `${imperfection(right).name}: ${looksOf(right)}`,
    `${imperfection(named).name}: ${looksOf(named)}`,
    ...(isAlike ? ["The two are easily mixed up; a report earns half for the name."] : []),
  ];
}

function pairWords(type: ImperfectionType, window: number, { things }: ToldTask): readonly string[] {
  const other = otherThing(things, window);
  return [`The ${sideOf(window)} one: ${numbered(type)}. ${looksOf(type)}`, ...(other ? [otherWords(other)] : [])];
}

/** What the other window shows: its imperfection, else its clutter. */
function otherThing(things: readonly ShownThing[], window: number): ShownThing | undefined {
  const others = things.filter((thing) => thing.window !== window);
  return others.find(({ what }) => what === "imperfection") ?? others.find(({ what }) => what === "clutter");
}

function otherWords({ name, window }: ShownThing): string {
  const side = sentence(`the ${sideOf(window)} one`);
  if (isImperfectionType(name)) return `${side}: ${numbered(name)}. ${looksOf(name)}`;
  return `${side}: ${CLUTTER_WORDS[name].name}. ${CLUTTER_WORDS[name].tell}`;
}

function endsWords({ answer, right, allowed, isRight }: ToldTask): readonly string[] {
  if (answer.kind !== "ends" || right.kind !== "ends") return [];
  return [
    `It runs from ${inMm(right.from, 1)} to ${inMm(right.to, 1)}.`,
    `Your start is ${besideWords(right.from - answer.from)}, your end ${besideWords(answer.to - right.to)}.`,
    `${isRight ? "Both are" : "Right is"} within ${inMm(allowed ?? 0, 1)}.`,
  ];
}

/** How far beyond the end of it a mark lies, mm. */
function besideWords(beyond: number): string {
  if (Math.abs(beyond) < 0.05) return "on it";
  return beyond > 0 ? `${inMm(beyond, 1)} beyond it` : `${inMm(-beyond, 1)} short of it`;
}

function sizeWords({ estimate }: AskedTask, { answer, right, error, allowed }: ToldTask): readonly string[] {
  if (answer.kind !== "size" || right.kind !== "size" || error === null) return [];
  const measures = estimate === "diameter" ? "across its largest mouth" : "long";
  const off =
    error === 0
      ? "as you said"
      : `you said ${inMm(answer.value, 1)}, ${inMm(Math.abs(error), 1)} too ${error > 0 ? "much" : "little"}`;
  return [`It is ${inMm(right.value, 1)} ${measures}: ${off}.`, `Right is within ${inMm(allowed ?? 0, 1)}.`];
}
