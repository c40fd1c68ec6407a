import { csvWriter, jsonWriter, type RecordPart } from "@/lib/record";
import { listClassesOf } from "@/prisma/stores/classes";
import { readPerson } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { requireOpenBook, requireOwnLearner } from "../permissions";
import { recordParts } from "../record/record-parts";
import { statementsText } from "../record/statements-text";
import { refuse } from "../refusal";

/** How somebody's record can be had: whole as JSON, one row a value as CSV, or as statements of the Experience API. */
export const RECORD_FORMS = ["json", "csv", "xapi"] as const;
export type RecordForm = (typeof RECORD_FORMS)[number];

/**
 * The whole record of one person: their own for anybody, and for a tutor that of their learners, as far as either may know it. It
 * comes in pieces, as they are made.
 */
export async function writeRecord(caller: Caller, personId: string, form: string) {
  // what is told of sentences names limits and clauses
  const signedIn = await requireOpenBook(caller);
  if (!signedIn.ok) return signedIn;
  const { actor } = signedIn;
  const isOwn = personId === actor.id;
  const found = isOwn ? await ownOf(personId) : await requireOwnLearner(caller, personId);
  if (!found.ok) return found;
  const known = RECORD_FORMS.find((one) => one === form);
  if (!known) return refuse("no-such-file");
  const { learner } = found;
  // archived ones included
  const classIds = isOwn ? null : (await listClassesOf(actor.id)).map(({ id }) => id);
  const asked = { person: learner, classIds, now: caller.clock() };
  return {
    ok: true,
    form: known,
    name: `record-of-${learner.signInName}`,
    chunks: known === "xapi" ? statementsText([{ userId: learner.id, classIds }]) : WRITERS[known](recordParts(asked)),
  } as const;
}

async function ownOf(id: string) {
  const learner = await readPerson(id);
  return learner ? ({ ok: true, learner } as const) : refuse("no-such-learner");
}

const WRITERS = {
  async *json(parts: AsyncIterable<RecordPart>): AsyncGenerator<string> {
    const writer = jsonWriter();
    for await (const part of parts) yield writer.of(part);
    yield writer.end();
  },
  async *csv(parts: AsyncIterable<RecordPart>): AsyncGenerator<string> {
    const writer = csvWriter();
    yield writer.head();
    for await (const part of parts) yield writer.of(part);
  },
};
