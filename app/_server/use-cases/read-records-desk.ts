import { type Overview, overviewOf, sumOverviews } from "@/lib/progress";
import {
  countErasures,
  countPooledQuestions,
  listErasureRequests,
  listErasures,
  readErasedTally,
} from "@/prisma/stores/erasure";
import { readDirtySince } from "@/prisma/stores/file-care";
import { listLearnersOf, listPeople, listPeopleNames } from "@/prisma/stores/people";
import { readOverviews } from "@/prisma/stores/progress";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";

/** The latest so many erasures are listed. */
const AT_MOST = 20;

/** Some figures of a workshop: sections that count, imperfections in them, and how many of those were found. */
export interface Figures {
  readonly sections: number;
  readonly passed: number;
  readonly imperfections: number;
  readonly found: number;
}

/**
 * What a tutor has to know of records: who asked to be erased, who was erased when and by whom without their names, and what the
 * whole workshop did, those included of whom nothing else is kept.
 */
export async function readRecordsDesk(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const [learners, everybody] = await Promise.all([listLearnersOf(tutor.actor.id), listPeople("learner")]);
  const [requests, erasures, erasedCount, overviews, erasedTally, questionCount, dirtySince] = await Promise.all([
    listErasureRequests(learners.map(({ id }) => id)),
    listErasures(AT_MOST),
    countErasures(),
    readOverviews(everybody.map(({ id }) => id)),
    readErasedTally(),
    countPooledQuestions(),
    readDirtySince(),
  ]);
  const names = await listPeopleNames([...new Set(erasures.map(({ actorId }) => actorId))]);
  const erased = overviewOf(erasedTally);
  const all = [...overviews.values()].map(({ overview }) => overview);
  return {
    ok: true,
    requests,
    erasures: erasures.map(({ at, actorId }) => ({ at, by: names.get(actorId) ?? "a tutor whose account is gone" })),
    erasedCount,
    learnerCount: everybody.length,
    whole: figuresOf(sumOverviews([...all, erased])),
    ofErased: figuresOf(erased),
    /** Questions of which answers of erased learners are kept. */
    questionCount,
    isFileDirty: dirtySince !== null,
  } as const;
}

function figuresOf({ sections, types }: Overview): Figures {
  const sum = <T>(values: readonly T[], of: (value: T) => number) =>
    values.reduce((total, value) => total + of(value), 0);
  return {
    sections: sum(Object.values(sections), ({ pieces }) => pieces),
    passed: sum(Object.values(sections), ({ passed }) => passed),
    imperfections: sum(Object.values(types), ({ total }) => total),
    found: sum(Object.values(types), ({ found }) => found),
  };
}
