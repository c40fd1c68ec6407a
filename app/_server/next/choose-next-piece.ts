import { randomBytes, randomInt } from "node:crypto";
import { type Candidate, type Correction, chooseNext, type Learner, shiftFor, wishesFor } from "@/lib/progress";
import { JOINT_OF, type Section } from "@/lib/results";
import type { ForeseenItem } from "@/lib/specimen";
import { giveToStock, readNextPiece, storeNextPiece, type WaitingPiece } from "@/prisma/stores/next-pieces";
import { hasUnfinished } from "@/prisma/stores/practices";
import { countCounted, readLearnerModel } from "@/prisma/stores/progress";
import type { SpecimenSource } from "../generation/specimen-source";
import { buildTallies } from "../progress/build";
import type { PieceToDraw } from "./foresee-pieces";
import { typesIn, wishedPiece } from "./wished-piece";

/** So many pieces are drawn for one to be chosen. */
const CANDIDATES = 24;
/** As many at once, so that whoever waits for a piece never waits long for these. */
const AT_ONCE = 4;
/** After so many further sections of its kind what was chosen before is chosen anew. */
const OUTDATED_AFTER = 3;

/** Where chance comes from. */
export interface Chance {
  /** A number from 0 up to 1. */
  readonly draw: () => number;
  /** A name that nobody can guess and no other piece has. */
  readonly seed: () => string;
}

const CHANCE: Chance = { draw: () => randomInt(2 ** 32) / 2 ** 32, seed: () => randomBytes(16).toString("hex") };

/** What the choice is made with. */
export interface NextSetting {
  readonly source: Pick<SpecimenSource, "drawAhead" | "orderAhead">;
  readonly clock: () => Date;
  /** What practice has shown of how hard types and sizes are, beside the model. */
  readonly corrections?: readonly Correction[];
  readonly chance?: Chance;
}

/**
 * Sees to it that a piece of a section waits for a learner: draws some, chooses one by what is known of the learner, and orders
 * that very one ahead. One that waits already stays unless it could not be made or the learner has moved on since with others of its
 * kind; what is made of such a one goes to the stock. While one of that section lies unfinished on the learner's bench nothing is chosen: what comes of it
 * is to have its say.
 */
export async function chooseNextPiece(userId: string, section: Section, setting: NextSetting): Promise<void> {
  const { source, clock, corrections = [], chance = CHANCE } = setting;
  await buildTallies(userId);
  // in this order: what comes to count in between is in the learner and makes the piece outdated sooner, not later
  const sections = await countCounted(userId, section);
  const learner = await readLearnerModel(userId);
  if (!learner) return;
  const waiting = await readNextPiece(userId, section);
  if (waiting && isStillRight(waiting, sections)) return;
  if (await hasUnfinished(userId, section)) return;
  const chosen = await draw(section, learner, { source, clock, corrections, chance });
  // drawing takes seconds, in which they may have begun one
  if (!chosen || (await hasUnfinished(userId, section))) return;
  const { specimenId } = await source.orderAhead(JOINT_OF[section], chosen.piece.asked, chosen.piece.seed);
  const piece = { specimenId, userId, section, chosenAt: chosen.at, sections, learner };
  // false where another choice for the same learner came first, or they have taken the one that waited; thrown where they are erased
  const isKept = await storeNextPiece(piece, waiting).catch(async (error: unknown) => {
    await giveToStock(specimenId);
    throw error;
  });
  if (!isKept) await giveToStock(specimenId);
}

const isStillRight = ({ state, sections }: WaitingPiece, now: number): boolean =>
  state !== "failed" && now - sections < OUTDATED_AFTER;

async function draw(section: Section, learner: Learner, setting: Required<NextSetting>) {
  const { source, clock, corrections, chance } = setting;
  const at = clock();
  const wishes = wishesFor(learner, typesIn(section), CANDIDATES, chance.draw, at.getTime());
  const name = chance.seed();
  const pieces = wishes.map((wish, n): PieceToDraw => ({ seed: `${name}${n}`, asked: wishedPiece(section, wish) }));
  const candidates: Candidate[] = [];
  for (let from = 0; from < pieces.length; from += AT_ONCE) {
    const foreseen = await source.drawAhead({ section, pieces: pieces.slice(from, from + AT_ONCE) });
    candidates.push(
      ...foreseen.flatMap((items, n) => (items ? [candidateOf(`${from + n}`, items, corrections, learner)] : [])),
    );
  }
  if (candidates.length === 0) return null;
  const { candidate } = chooseNext(learner, candidates, chance.draw(), at.getTime());
  return { piece: pieces[Number(candidate.id)], at };
}

const candidateOf = (
  id: string,
  items: readonly ForeseenItem[],
  corrections: readonly Correction[],
  learner: Learner,
): Candidate => ({
  id,
  indications: items.map(({ type, eye, difficulty }) => ({
    type,
    difficulty: difficulty + shiftFor(corrections, learner, type, eye.value),
  })),
});
