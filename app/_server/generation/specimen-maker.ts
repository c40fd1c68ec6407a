import { randomBytes } from "node:crypto";
import type { PaperPiece } from "@/lib/sittings";
import { assembleTruth, GENERATOR_VERSION } from "@/lib/specimen";
import { JOINT_KINDS, type JointKind, PIECES } from "@/lib/weld";
import { freeForgotten } from "@/prisma/stores/next-pieces";
import {
  countStock,
  failSpecimen,
  findSpecimenBySeed,
  finishSpecimen,
  hurrySpecimen,
  type MadeSpecimen,
  type OrderedFor,
  orderSpecimen,
  putBackInterruptedOrders,
  readSpecimenProgress,
  type SpecimenOrder,
  type Turn,
  takeOrder,
  takeReadySpecimen,
  wantedStock,
  writeStage,
} from "@/prisma/stores/specimens";
import { randomId } from "../random-id";
import type { MadeFace } from "./make-face";
import { openPool, type Pool } from "./pool";
import type { SpecimenSource } from "./specimen-source";

/** Restocking waits until the browser of whoever took the last one has unpacked it. */
const RESTOCK_AFTER_MS = 5000;
/** More learners want a larger stock. */
const RESTOCK_EVERY_MS = 600_000;
const THREADS = 2;
/** So many plates are drawn for one that has what is wanted for drills. */
const SEEDS = 24;

const newSeed = (): string => randomBytes(16).toString("hex");

export interface SpecimenMaker extends SpecimenSource {
  /** Takes up what was left when the server stopped, and fills the shelf. */
  open(): Promise<void>;
  /** Orders one ahead from a seed that is given, as a paper asks for it or for practice; the same one if it was ordered before. */
  orderNamed(kind: JointKind, asked: PaperPiece | null, seed: string): Promise<{ readonly specimenId: string }>;
}

function createMaker(workerFile: string): SpecimenMaker {
  const pool = openPool(workerFile, THREADS);
  let opened: Promise<void> | null = null;
  const inHand = { awaited: 0, ahead: 0 };
  let isTaking = false;
  let isMoreToTake = false;
  let lastTurn: Turn | null = null;
  /** Pieces that somebody came to wait for after they were ordered ahead. */
  const hurried = new Set<string>();
  let isSeeking = false;
  let restocked = Promise.resolve();

  async function order(
    kind: JointKind,
    orderedFor: OrderedFor,
    asked: PaperPiece | null = null,
    seed = newSeed(),
  ): Promise<{ specimenId: string }> {
    const specimenId = randomId();
    await orderSpecimen({ id: specimenId, kind, seed, asked }, orderedFor, new Date());
    void work();
    return { specimenId };
  }

  /** One after the other: two that count together would both order what is missing. */
  function restock(): Promise<void> {
    restocked = restocked.catch(() => undefined).then(fillShelf);
    return restocked;
  }

  async function fillShelf(): Promise<void> {
    for (const kind of JOINT_KINDS) {
      const missing = (await wantedStock(kind)) - (await countStock(kind));
      for (let n = 0; n < missing; n++) await order(kind, "stock");
    }
  }

  /**
   * Starts what has been ordered: one specimen at a time that is made ahead, and two that are waited for, so that when one is done
   * the next one stands in the pool already and nothing made ahead slips in between.
   */
  async function work(): Promise<void> {
    isMoreToTake = true;
    if (isTaking) return;
    isTaking = true;
    try {
      while (isMoreToTake && inHand.awaited < 2) {
        // whatever is ordered while this one is looked for is looked for once more
        isMoreToTake = false;
        const next = await takeOrder({ isAwaitedOnly: inHand.ahead > 0, after: lastTurn });
        if (!next) continue;
        isMoreToTake = true;
        if (next.turn) lastTurn = next.turn;
        const held = next.isAwaited ? "awaited" : "ahead";
        inHand[held]++;
        void make(pool, next, next.isAwaited || hurried.has(next.id)).finally(() => {
          inHand[held]--;
          hurried.delete(next.id);
          void work();
        });
      }
    } finally {
      isTaking = false;
    }
  }

  return {
    open() {
      opened ??= putBackInterruptedOrders().then(async () => {
        await freeForgotten();
        await work();
        await restock();
        setInterval(() => void restock().catch(report), RESTOCK_EVERY_MS).unref();
      });
      return opened;
    },
    async takeReady(kind) {
      const specimenId = await takeReadySpecimen(kind);
      setTimeout(() => void restock().catch(report), RESTOCK_AFTER_MS).unref();
      return specimenId ? { specimenId } : null;
    },
    requestOne: (kind, asked) => order(kind, "awaited", asked),
    orderAhead: (kind, asked, seed) => order(kind, "ahead", asked, seed),
    async orderForDrills(wanted) {
      if (isSeeking) return;
      if (wanted.length === 0) return void (await order("butt", "drills"));
      isSeeking = true;
      // it takes seconds, and whoever asked does not wait for it
      void pool
        .seek({ types: wanted, seeds: Array.from({ length: SEEDS }, newSeed) })
        .then((seed) => order("butt", "drills", null, seed))
        .catch(report)
        .finally(() => {
          isSeeking = false;
        });
    },
    async orderNamed(kind, asked, seed) {
      const specimenId = await findSpecimenBySeed(seed);
      return specimenId === null ? order(kind, "ahead", asked, seed) : { specimenId };
    },
    async hurry(specimenId) {
      if (!(await hurrySpecimen(specimenId))) return;
      hurried.add(specimenId);
      pool.hurry(specimenId);
      void work();
    },
    foresee: (order, look) => pool.foresee(order, look),
    drawAhead: (order) => pool.drawAhead(order),
    async stageOf(specimenId) {
      return (await readSpecimenProgress(specimenId)) ?? { state: "failed", stage: "" };
    },
  };
}

async function make(pool: Pool, { id, kind, seed, asked }: SpecimenOrder, isUrgent: boolean): Promise<void> {
  let shown = "";
  const onStage = (stage: string) => {
    if (stage === shown) return;
    shown = stage;
    void writeStage(id, stage).catch(report);
  };
  try {
    const faces = PIECES[kind].faces.map((face) =>
      pool.make({ seed, asked, face }, { urgent: isUrgent, name: id, onStage }),
    );
    await finishSpecimen(id, pieceOf(await Promise.all(faces)));
  } catch (error) {
    report(error);
    await failSpecimen(id).catch(report);
  }
}

/** The whole piece from its faces. */
function pieceOf(faces: readonly MadeFace[]): MadeSpecimen {
  const surfaces = Object.fromEntries(faces.map(({ face, packed }) => [face, packed]));
  const common = { generatorVersion: GENERATOR_VERSION, surfaces };
  const [first] = faces;
  if (first.face === "fillet") return { ...common, truth: first.truth, ends: first.ends };
  const plateFaces = faces.filter((made) => made.face !== "fillet");
  return { ...common, truth: assembleTruth(first.joint, plateFaces), ends: null };
}

/** The server's log is where whoever runs the workshop looks; nothing about a specimen's seed is written there. */
function report(error: unknown): void {
  console.error("specimen could not be made:", error instanceof Error ? error.message : error);
}

const shared = globalThis as typeof globalThis & { toelineSpecimenMaker?: SpecimenMaker };

/** The one maker of this process; Next may load this module once for every route. */
export function specimenMaker(): SpecimenMaker {
  const workerFile = process.env.TOELINE_WORKER;
  if (!workerFile) throw new Error("TOELINE_WORKER is not set: start the server with npm start or npm run dev");
  shared.toelineSpecimenMaker ??= createMaker(workerFile);
  return shared.toelineSpecimenMaker;
}
