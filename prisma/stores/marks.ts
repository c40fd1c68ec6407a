import type { Practice, SectionMark } from "@/lib/practice";
import type { MarkedSection, Section, SectionResult } from "@/lib/results";
import type { ReviewAct } from "@/lib/review";
import { database } from "../client";
import { resultColumn } from "../columns";
import { forPractice, markOf, marksOf, reviewActOf, withAttempts } from "./practices";

/** One marked section with its account and what tutors said to it, and without piece and report. */
export interface SectionAccount {
  readonly practiceId: string;
  readonly mark: SectionMark;
  readonly result: SectionResult;
  readonly acts: readonly ReviewAct[];
}

/** The accounts of one kind of section in these practices, in the order of their hand-in. */
export async function listAccounts(
  practiceIds: readonly string[],
  section: MarkedSection,
): Promise<readonly SectionAccount[]> {
  const rows = await database().attempt.findMany({
    where: { practiceId: { in: [...practiceIds] }, section },
    orderBy: [{ handedInAt: "asc" }, { id: "asc" }],
    include: { reviewActs: { orderBy: { id: "asc" } } },
  });
  return rows.map((row) => ({
    practiceId: row.practiceId,
    mark: markOf(row),
    result: resultColumn.read(row.result),
    acts: row.reviewActs.map(reviewActOf),
  }));
}

/** The latest handed-in practices of these people outside sittings, of one section. */
export async function listLatestPractices(
  userIds: readonly string[],
  section: Section,
  atMost: number,
): Promise<readonly string[]> {
  const rows = await database().practice.findMany({
    where: { userId: { in: [...userIds] }, section, state: "handedIn", ...forPractice },
    orderBy: [{ handedInAt: "desc" }, { id: "asc" }],
    take: atMost,
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}

/** A handed-in practice without its report. */
export type MarkedPractice = Pick<Practice, "id" | "userId" | "marks"> & { readonly handedInAt: Date };

export interface LearnerRecord {
  readonly openCount: number;
  /** The latest first. */
  readonly handedIn: readonly MarkedPractice[];
}

/** Everybody's marks and how much they have unfinished outside sittings, by person. */
export async function listMarksByLearner(): Promise<ReadonlyMap<string, LearnerRecord>> {
  const db = database();
  const [openCounts, rows] = await Promise.all([
    db.practice.groupBy({ by: ["userId"], where: { state: "open", ...forPractice }, _count: true }),
    db.practice.findMany({
      where: { state: "handedIn", ...forPractice },
      orderBy: { handedInAt: "desc" },
      select: { id: true, userId: true, handedInAt: true, ...withAttempts },
    }),
  ]);
  const people = new Set([...openCounts, ...rows].map(({ userId }) => userId));
  return new Map(
    Array.from(people, (person) => [
      person,
      {
        openCount: openCounts.find(({ userId }) => userId === person)?._count ?? 0,
        handedIn: rows.flatMap(({ id, userId, handedInAt, attempts }) =>
          userId === person && handedInAt ? [{ id, userId, handedInAt, marks: marksOf(attempts) }] : [],
        ),
      },
    ]),
  );
}
