import { countingMark } from "@/lib/practice";
import { type ClassResult, PRACTICE } from "@/lib/printing";
import type { Person } from "@/lib/workshop";
import type { MarkedPractice } from "@/prisma/stores/marks";
import { type SatByLearner, workOf } from "./sittings/sat-sections";

/** A result with the practice that holds its mark sheet. */
export interface TracedResult extends ClassResult {
  readonly practiceId: string;
}

interface MemberWithMarks {
  readonly person: Pick<Person, "id">;
  readonly handedIn: readonly MarkedPractice[];
}

/** Everything marked that the members of a class have, for its result list and its files: practice, and what they sat. */
export const classResults = (
  members: readonly MemberWithMarks[],
  sat: readonly SatByLearner[],
): readonly TracedResult[] =>
  members.flatMap(({ person, handedIn }) => [
    ...handedIn.flatMap(({ id, handedInAt, marks }) =>
      marks.map(({ section, markThousandths, passMark, isPassed }) => ({
        practiceId: id,
        learnerId: person.id,
        section,
        markThousandths,
        passMark,
        isPassed,
        handedInAt,
        work: PRACTICE,
      })),
    ),
    ...sat
      .filter(({ userId }) => userId === person.id)
      .map((one) => {
        const { section, passMark } = one.mark;
        return {
          practiceId: one.practiceId,
          learnerId: person.id,
          section,
          passMark,
          ...countingMark(one.mark),
          handedInAt: one.closedAt,
          work: workOf(one),
        };
      }),
  ]);
