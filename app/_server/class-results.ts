import type { ClassResult } from "@/lib/printing";
import type { Person } from "@/lib/workshop";
import type { MarkedPractice } from "@/prisma/stores/practices";

/** A result with the practice that it comes from. */
export interface TracedResult extends ClassResult {
  readonly practiceId: string;
}

interface MemberWithMarks {
  readonly person: Pick<Person, "id">;
  readonly handedIn: readonly MarkedPractice[];
}

/**
 * Everything marked that the members of a class have, for its result list and its files. Whatever else is marked than practices
 * joins in here, under the name of its work.
 */
export const classResults = (members: readonly MemberWithMarks[]): readonly TracedResult[] =>
  members.flatMap(({ person, handedIn }) =>
    handedIn.flatMap(({ id, handedInAt, marks }) =>
      marks.map(({ section, markThousandths, passMark, isPassed }) => ({
        practiceId: id,
        learnerId: person.id,
        section,
        markThousandths,
        passMark,
        isPassed,
        handedInAt,
        work: "practice",
      })),
    ),
  );
