import type { RandomStream } from "../random";
import { DEFAULT_TOLERANCES } from "../results";
import { shuffled } from "./choose";
import { composeQuestion } from "./compose";
import type { Kind, Material } from "./kind";
import { KINDS } from "./kinds";
import { type Place, type Question, SOURCES, type Source } from "./question";

/**
 * Questions of as many different kinds on one piece, the four sources in equal parts as far as they go, those about the piece
 * first. Kinds that have nothing clear to ask about on it step aside for others; no two questions are about the same place, and none names what another one asks for.
 * Where more are asked for than there are kinds left, all of these and no more.
 */
export function drawQuestions(material: Material, count: number, random: RandomStream): Question[] {
  const kinds = KINDS.filter(({ sections }) => sections.includes(material.section));
  const waiting = new Map(
    SOURCES.map((source) => [
      source,
      shuffled(
        kinds.filter((kind) => kind.source === source),
        random.child(source),
      ),
    ]),
  );
  const drawn: Question[] = [];
  const next = (source: Source): Question | null => {
    const row = waiting.get(source) as Kind[];
    for (let kind = row.shift(); kind; kind = row.shift()) {
      const question = composeQuestion(kind, "q1", material, random.child(kind.name));
      if (question && drawn.every((other) => !helpsWith(question, other))) return question;
    }
    return null;
  };
  while (drawn.length < count) {
    const before = drawn.length;
    for (const source of SOURCES) {
      const question = drawn.length < count ? next(source) : null;
      if (question) drawn.push(question);
    }
    if (drawn.length === before) break;
  }
  const ordered = SOURCES.flatMap((source) => drawn.filter((question) => question.source === source));
  return ordered.map((question, n) => ({ ...question, id: `q${n + 1}` }));
}

/** True where one question answers another one about the piece, or helps to: both are about one place, or one names what the other asks for. */
function helpsWith(one: Question, other: Question): boolean {
  if (one.source !== "piece" || other.source !== "piece") return false;
  return areOnePlace(one.place, other.place) || names(one, other) || names(other, one);
}

function areOnePlace(one: Place | null, other: Place | null): boolean {
  if (!one || !other || one.face !== other.face) return false;
  const near = DEFAULT_TOLERANCES.start.full;
  return one.start <= other.end + near && other.start <= one.end + near;
}

const names = ({ stem }: Question, { options, key }: Question): boolean =>
  stem.toLowerCase().includes(options[key].toLowerCase());
