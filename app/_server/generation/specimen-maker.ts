import { randomBytes } from "node:crypto";
import { assembleTruth, GENERATOR_VERSION } from "@/lib/specimen";
import { FACES } from "@/lib/weld";
import {
  countStock,
  failSpecimen,
  finishSpecimen,
  orderSpecimen,
  putBackInterruptedOrders,
  readSpecimenProgress,
  takeOrder,
  takeReadySpecimen,
  writeStage,
} from "@/prisma/stores/specimens";
import { randomId } from "../random-id";
import { openPool, type Pool } from "./pool";
import type { SpecimenSource } from "./specimen-source";

/** Specimens kept ready ahead, so that a learner need not wait for one. */
const STOCK = 1;
/** Restocking waits until the browser of whoever took the last one has unpacked it. */
const RESTOCK_AFTER_MS = 5000;
const THREADS = 2;

export interface SpecimenMaker extends SpecimenSource {
  /** Takes up what was left when the server stopped, and fills the shelf. */
  open(): Promise<void>;
}

function createMaker(workerFile: string): SpecimenMaker {
  const pool = openPool(workerFile, THREADS);
  let opened: Promise<void> | null = null;
  let inHand = 0;
  let isTaking = false;

  async function order(isReserved: boolean): Promise<{ specimenId: string }> {
    const specimenId = randomId();
    await orderSpecimen({ id: specimenId, seed: randomBytes(16).toString("hex") }, isReserved, new Date());
    void work();
    return { specimenId };
  }

  async function restock(): Promise<void> {
    for (let missing = STOCK - (await countStock()); missing > 0; missing--) await order(false);
  }

  /** Starts what has been ordered, at most two specimens at a time; the pool lets the one that is waited for go first. */
  async function work(): Promise<void> {
    if (isTaking) return;
    isTaking = true;
    try {
      while (inHand < 2) {
        const next = await takeOrder();
        if (!next) return;
        inHand++;
        void make(pool, next.id, next.seed, next.isReserved).finally(() => {
          inHand--;
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
        await work();
        await restock();
      });
      return opened;
    },
    async takeReady() {
      const specimenId = await takeReadySpecimen();
      setTimeout(() => void restock().catch(report), RESTOCK_AFTER_MS).unref();
      return specimenId ? { specimenId } : null;
    },
    requestOne: () => order(true),
    async stageOf(specimenId) {
      return (await readSpecimenProgress(specimenId)) ?? { state: "failed", stage: "" };
    },
  };
}

async function make(pool: Pool, id: string, seed: string, isUrgent: boolean): Promise<void> {
  let shown = "";
  const onStage = (stage: string) => {
    if (stage === shown) return;
    shown = stage;
    void writeStage(id, stage).catch(report);
  };
  try {
    const faces = await Promise.all(FACES.map((face) => pool.make(seed, face, { urgent: isUrgent, onStage })));
    const [cap, root] = faces;
    await finishSpecimen(id, {
      truth: assembleTruth(faces[0].joint, faces),
      generatorVersion: GENERATOR_VERSION,
      surfaces: { cap: cap.packed, root: root.packed },
    });
  } catch (error) {
    report(error);
    await failSpecimen(id).catch(report);
  }
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
