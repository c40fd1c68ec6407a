import type { Learner } from "@/lib/progress";
import type { Section } from "@/lib/results";
import { database, isDuplicate, PATIENCE } from "../client";
import type { Prisma } from "../generated/client/client";
import { chosenForColumn } from "../progress-columns";
import { type PracticeToCreate, practiceRow } from "./practices";
import { inStock, type SpecimenState, wantedStock } from "./specimens";

/** A piece that was chosen for a learner and waits for them. */
export interface WaitingPiece {
  readonly specimenId: string;
  readonly state: SpecimenState;
  /** How many sections of its kind counted for the learner when it was chosen. */
  readonly sections: number;
}

export interface NextPiece {
  readonly specimenId: string;
  readonly userId: string;
  readonly section: Section;
  readonly chosenAt: Date;
  /** How many of that section counted for them then. */
  readonly sections: number;
  /** As they were known then. */
  readonly learner: Learner;
}

const whose = (userId: string, section: Section) => ({ userId_section_waits: { userId, section, waits: true } });

export async function readNextPiece(userId: string, section: Section): Promise<WaitingPiece | null> {
  const row = await database().nextPiece.findUnique({
    where: whose(userId, section),
    select: { specimenId: true, sections: true, specimen: { select: { state: true } } },
  });
  return row && { specimenId: row.specimenId, sections: row.sections, state: row.specimen.state };
}

/** Of which sections a piece waits for a learner, made or still to be made. */
export async function listNextSections(userId: string): Promise<readonly Section[]> {
  const rows = await database().nextPiece.findMany({
    where: { userId, waits: true, specimen: { state: { not: "failed" } } },
    select: { section: true },
  });
  return rows.flatMap(({ section }) => (section === "plate" || section === "fillet" ? [section] : []));
}

/**
 * Keeps a piece for a learner, in place of one that waits, which goes to the stock where it can be made; false where that was taken
 * meanwhile or another one of that section waits for them already.
 */
export async function storeNextPiece(
  { learner, ...piece }: NextPiece,
  old: Pick<WaitingPiece, "specimenId"> | null,
): Promise<boolean> {
  try {
    return await database().$transaction(async (transaction) => {
      if (old) {
        const { specimenId } = old;
        const { count } = await transaction.nextPiece.deleteMany({ where: { specimenId, waits: true } });
        if (count === 0) return false;
      }
      await transaction.nextPiece.create({
        data: { ...piece, waits: true, learner: chosenForColumn.write(learner) },
      });
      if (old) await freeForAnybody(transaction, old.specimenId);
      return true;
    }, PATIENCE);
  } catch (error) {
    if (isDuplicate(error)) return false;
    throw error;
  }
}

/** Begins a practice on the piece that waits for its learner, which is theirs from then on; its id, or null where none waits. */
export async function startOnNextPiece(practice: Omit<PracticeToCreate, "specimenId">): Promise<string | null> {
  const { userId, section } = practice;
  return database().$transaction(async (transaction) => {
    const row = await transaction.nextPiece.findFirst({
      where: { userId, section, waits: true, specimen: { state: { not: "failed" } } },
      select: { specimenId: true },
    });
    if (!row) return null;
    const { specimenId } = row;
    const { count } = await transaction.nextPiece.updateMany({
      where: { specimenId, waits: true },
      data: { waits: null },
    });
    if (count === 0) return null;
    await transaction.practice.create({ data: practiceRow({ ...practice, specimenId }) });
    return specimenId;
  }, PATIENCE);
}

/** Makes a piece that was kept for somebody one for whoever comes first, also where it is still to be made. */
export const giveToStock = (specimenId: string): Promise<void> =>
  database().$transaction((transaction) => freeForAnybody(transaction, specimenId), PATIENCE);

/**
 * The same as a part of something else. Where as many as are kept ahead are there or coming already it is deleted instead, or the
 * stock would grow with every choice that is outdated; but for one that is just being made.
 */
export async function freeForAnybody(transaction: Prisma.TransactionClient, specimenId: string): Promise<void> {
  const piece = await transaction.specimen.findUnique({ where: { id: specimenId }, select: { kind: true } });
  if (!piece) return;
  const stock = await transaction.specimen.count({ where: inStock(piece.kind) });
  if (stock >= (await wantedStock(piece.kind, transaction))) {
    await transaction.specimen.deleteMany({
      where: { id: specimenId, state: { in: ["waiting", "taken"] }, practices: { none: {} }, chosenFor: null },
    });
  }
  await transaction.specimen.updateMany({
    where: { id: specimenId, state: { in: ["waiting", "making"] } },
    data: { isReserved: false },
  });
  await transaction.specimen.updateMany({
    where: { id: specimenId, state: "taken", practices: { none: {} } },
    data: { isReserved: false, state: "ready" },
  });
}

/**
 * Frees what was ordered ahead for somebody with whom it never came to be kept, since the server stopped in between. Not what has
 * a named seed, by which whoever ordered it finds it again.
 */
export async function freeForgotten(): Promise<void> {
  const forgotten = await database().specimen.findMany({
    where: {
      isReserved: true,
      isForDrills: false,
      state: { in: ["waiting", "taken"] },
      practices: { none: {} },
      chosenFor: null,
      NOT: { seed: { contains: "/" } },
    },
    select: { id: true },
  });
  for (const { id } of forgotten) await giveToStock(id);
}

/** How a learner was known when a piece that they have taken was chosen for them; null where none was. */
export async function readChoice(
  specimenId: string,
  userId: string,
): Promise<Pick<NextPiece, "learner" | "chosenAt"> | null> {
  const row = await database().nextPiece.findFirst({ where: { specimenId, userId, waits: null } });
  return row && { learner: chosenForColumn.read(row.learner), chosenAt: row.chosenAt };
}
