import { courseRule, mayShowMarks, type PlacedAttempt } from "@/lib/sittings";
import { listPractices } from "@/prisma/stores/practices";
import { listSittingsFor, type StoredSitting } from "@/prisma/stores/sittings";
import { byClock } from "../sittings/change-sitting";
import { courseAsKnown } from "../sittings/courses-of-class";
import type { RecordAsked } from "./record-parts";

/** A piece that somebody had on the bench, and whether whoever asks may know what was on it. */
export interface OwnPiece {
  readonly practiceId: string;
  readonly startedAt: Date;
  readonly isHandedIn: boolean;
  readonly isKnown: boolean;
  /** Of a section that does not count. */
  readonly isVoid: boolean;
}

/** A sitting of somebody with their sections alone, as the clock has it. */
export interface OwnSitting extends Pick<ReturnType<typeof byClock>, "sitting"> {
  readonly className: string;
  readonly runs: readonly {
    readonly run: ReturnType<typeof byClock>["runs"][number];
    readonly practiceId: string;
    readonly isKnown: boolean;
    readonly placed: PlacedAttempt | null;
  }[];
}

export interface OwnPieces {
  /** The earliest planned first. */
  readonly sittings: readonly OwnSitting[];
  /** The earliest start first. */
  readonly pieces: readonly OwnPiece[];
}

/** What of a sitting a tutor may know: from closing on, and not while it is open again for somebody. */
const OVER: readonly string[] = ["closed", "released", "void"];

/** Every piece that somebody had, for practice and in sittings of the classes that may be read of. */
export async function piecesOf({ person, classIds, now }: RecordAsked): Promise<OwnPieces> {
  const [practices, stored] = await Promise.all([listPractices(person.id), listSittingsFor(person.id)]);
  const readable = stored.filter(
    ({ groupId, runs }) =>
      (classIds === null || classIds.includes(groupId)) && runs.some(({ run }) => run.userId === person.id),
  );
  const sittings: OwnSitting[] = [];
  for (const one of readable.toReversed()) {
    const sitting = ownSitting(one, person.id, now, classIds === null);
    sittings.push(sitting.runs.some(({ isKnown }) => isKnown) ? await placedIn(sitting, one, person.id, now) : sitting);
  }
  const ofPractice = practices.map(({ id, startedAt, state }): OwnPiece => {
    const isHandedIn = state === "handed-in";
    return { practiceId: id, startedAt, isHandedIn, isKnown: isHandedIn, isVoid: false };
  });
  const ofSittings = sittings.flatMap(({ sitting, runs }) =>
    runs.flatMap(({ run, practiceId, isKnown }): OwnPiece[] => {
      const { startedAt, closedAt } = run;
      const isVoid = run.voided !== null || sitting.voided !== null;
      return startedAt ? [{ practiceId, startedAt, isHandedIn: closedAt !== null, isKnown, isVoid }] : [];
    }),
  );
  const pieces = [...ofPractice, ...ofSittings].sort((a, b) => a.startedAt.getTime() - b.startedAt.getTime());
  return { sittings, pieces };
}

function ownSitting(stored: StoredSitting, userId: string, now: Date, isOwn: boolean): OwnSitting {
  const { sitting, runs } = byClock(stored, now);
  const order = sitting.paper.sections.map(({ section }) => section);
  const inOrder = stored.runs.toSorted(
    (a, b) =>
      order.indexOf(a.run.section) - order.indexOf(b.run.section) ||
      Number(a.run.isBorderline) - Number(b.run.isBorderline),
  );
  return {
    sitting,
    className: stored.groupName,
    runs: inOrder.flatMap(({ run: { id }, practiceId, isMarked }) => {
      const run = runs.find((one) => one.id === id && one.userId === userId);
      if (!run) return [];
      const mayKnow = isOwn ? mayShowMarks(run, sitting, now) : OVER.includes(sitting.state);
      return [{ run, practiceId, isKnown: isMarked && mayKnow, placed: null }];
    }),
  };
}

async function placedIn(own: OwnSitting, stored: StoredSitting, userId: string, now: Date): Promise<OwnSitting> {
  const rule = courseRule(own.sitting.paper);
  const { attempts } = await courseAsKnown(stored.groupId, stored.paperId, userId, rule, now);
  return {
    ...own,
    runs: own.runs.map((one) => ({
      ...one,
      placed: one.isKnown ? (attempts.find(({ attempt }) => attempt.id === one.run.id) ?? null) : null,
    })),
  };
}
