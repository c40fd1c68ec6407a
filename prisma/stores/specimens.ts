import type { PaperPiece } from "@/lib/sittings";
import type { Truth } from "@/lib/specimen";
import type { EndViews, JointKind, SurfaceFace } from "@/lib/weld";
import { database, PATIENCE } from "../client";
import { askedPieceColumn, endsColumn, truthColumn } from "../columns";
import type { Prisma } from "../generated/client/client";

/**
 * waiting: to be made; making: at work; ready: nobody's yet; taken: somebody inspects it; failed: could not be made.
 */
export type SpecimenState = "waiting" | "making" | "ready" | "taken" | "failed";

export interface SpecimenProgress {
  readonly state: SpecimenState;
  /** What is being done to it, for the person who waits. */
  readonly stage: string;
}

/** What the generator needs to make one. Knows the seed, so it never leaves the server. */
export interface SpecimenOrder {
  readonly id: string;
  readonly kind: JointKind;
  readonly seed: string;
  /** What a paper fixes of it; null for practice. */
  readonly asked: PaperPiece | null;
}

/**
 * stock: for whoever comes first; ahead: kept for somebody, who comes later; awaited: somebody stands and waits for it; drills:
 * one that windows are cut from, after all others.
 */
export type OrderedFor = "stock" | "ahead" | "awaited" | "drills";

export interface MadeSpecimen {
  readonly truth: Truth;
  readonly generatorVersion: string;
  /** Every face of the piece, packed and compressed with gzip. */
  readonly surfaces: Readonly<Partial<Record<SurfaceFace, Uint8Array>>>;
  /** Both ends of a fillet joint; null on a plate. */
  readonly ends: EndViews | null;
}

/** Orders a specimen. */
export async function orderSpecimen(
  { asked, ...order }: SpecimenOrder,
  orderedFor: OrderedFor,
  now: Date,
): Promise<void> {
  await database().specimen.create({
    data: {
      ...order,
      ...(asked && { asked: askedPieceColumn.write(asked) }),
      isReserved: orderedFor !== "stock",
      isAwaited: orderedFor === "awaited",
      isForDrills: orderedFor === "drills",
      state: "waiting",
      createdAt: now,
    },
  });
}

/** Notes that somebody stands and waits for a specimen; false where it is made, or cannot be. */
export async function hurrySpecimen(id: string): Promise<boolean> {
  const where = { id, state: { in: ["waiting", "making"] as SpecimenState[] } };
  return (await database().specimen.updateMany({ where, data: { isAwaited: true } })).count === 1;
}

/**
 * Those for whom pieces are made ahead, and who take turns, so that none of them waits for all that the others have ordered: sittings
 * and whatever else keeps a piece for somebody, learners for whom one was chosen, and the stock.
 */
export const TURNS = ["kept", "chosen", "stock"] as const;
export type Turn = (typeof TURNS)[number];

const OF_TURN = {
  kept: { isReserved: true, chosenFor: null },
  chosen: { isReserved: true, chosenFor: { isNot: null } },
  stock: { isReserved: false },
} as const;

export interface TakenOrder extends SpecimenOrder {
  readonly isAwaited: boolean;
  /** Whose turn it was; null of what is waited for, and of what is for drills. */
  readonly turn: Turn | null;
}

/**
 * The order to make next, marked as being made: what is waited for, then what is made ahead, whose turn it is after the one who had
 * the last, then what is for drills; of each the oldest first.
 */
export async function takeOrder({
  isAwaitedOnly = false,
  after = null,
}: {
  readonly isAwaitedOnly?: boolean;
  readonly after?: Turn | null;
} = {}): Promise<TakenOrder | null> {
  const first = after === null ? 0 : TURNS.indexOf(after) + 1;
  const turns = TURNS.map((_, n) => TURNS[(first + n) % TURNS.length]);
  const waiting = { isAwaited: false, isForDrills: false };
  const ranks: readonly { readonly turn: Turn | null; readonly where: Prisma.SpecimenWhereInput }[] = [
    { turn: null, where: { isAwaited: true } },
    ...turns.map((turn) => ({ turn, where: { ...waiting, ...OF_TURN[turn] } })),
    { turn: null, where: { isForDrills: true } },
  ];
  for (const { turn, where } of isAwaitedOnly ? ranks.slice(0, 1) : ranks) {
    const taken = await takeOldest(where);
    if (taken) return { ...taken, turn };
  }
  return null;
}

async function takeOldest(where: Prisma.SpecimenWhereInput): Promise<Omit<TakenOrder, "turn"> | null> {
  for (;;) {
    const next = await database().specimen.findFirst({
      where: { state: "waiting", ...where },
      orderBy: { createdAt: "asc" },
      select: { id: true, kind: true, seed: true, isAwaited: true, asked: true },
    });
    if (!next) return null;
    const asked = next.asked === null ? null : askedPieceColumn.read(next.asked);
    if (await moveSpecimen(next.id, "waiting", "making")) return { ...next, asked };
  }
}

/** Puts back what was being made when the server stopped. */
export async function putBackInterruptedOrders(): Promise<void> {
  await database().specimen.updateMany({ where: { state: "making" }, data: { state: "waiting", stage: "" } });
}

export async function writeStage(id: string, stage: string): Promise<void> {
  await database().specimen.updateMany({ where: { id, state: "making" }, data: { stage } });
}

/** Stores what was made: taken by whoever reserved it, otherwise ready for anybody. */
export async function finishSpecimen(
  id: string,
  { truth, generatorVersion, surfaces, ends }: MadeSpecimen,
): Promise<void> {
  const faces = Object.entries(surfaces) as [SurfaceFace, Uint8Array][];
  await database().$transaction(async ({ specimen, specimenSurface }) => {
    await specimenSurface.deleteMany({ where: { specimenId: id } });
    await specimenSurface.createMany({
      data: faces.map(([face, bytes]) => ({ specimenId: id, face, bytes: new Uint8Array(bytes) })),
    });
    // it may have been given to the stock while it was made
    const { isReserved } = await specimen.findUniqueOrThrow({ where: { id }, select: { isReserved: true } });
    await specimen.update({
      where: { id },
      data: {
        state: isReserved ? "taken" : "ready",
        stage: "",
        generatorVersion,
        truth: truthColumn.write(truth),
        ...(ends && { ends: endsColumn.write(ends) }),
      },
    });
  }, PATIENCE);
}

export async function failSpecimen(id: string): Promise<void> {
  await database().specimen.update({ where: { id }, data: { state: "failed", stage: "" } });
}

/** Takes a ready specimen of a kind off the shelf; two who ask at once never get the same one. */
export async function takeReadySpecimen(kind: JointKind): Promise<string | null> {
  for (;;) {
    const next = await database().specimen.findFirst({
      where: { kind, state: "ready" },
      orderBy: { createdAt: "asc" },
      select: { id: true },
    });
    if (!next) return null;
    if (await moveSpecimen(next.id, "ready", "taken")) return next.id;
  }
}

/** How many specimens of a kind are on the shelf or on their way to it. */
export async function countStock(kind: JointKind): Promise<number> {
  return database().specimen.count({ where: inStock(kind) });
}

/** Of plates one for so many learners, and so many at most. */
const LEARNERS_A_PLATE = 4;
const MOST_PLATES = 8;

/**
 * How many specimens are kept ready ahead, so that a learner need not wait for one: of fillet welds one; of plates more where there
 * are classes, who begin at the same minute, before one was chosen for everybody.
 */
export async function wantedStock(
  kind: JointKind,
  { user }: Pick<Prisma.TransactionClient, "user"> = database(),
): Promise<number> {
  if (kind === "fillet") return 1;
  const learners = await user.count({ where: { role: "learner" } });
  return Math.min(MOST_PLATES, Math.max(1, Math.ceil(learners / LEARNERS_A_PLATE)));
}

export const inStock = (kind: JointKind) => ({
  kind,
  isReserved: false,
  state: { in: ["waiting", "making", "ready"] as SpecimenState[] },
});

/** The specimen that is made from a seed, or null where none was ordered. */
export async function findSpecimenBySeed(seed: string): Promise<string | null> {
  const row = await database().specimen.findUnique({ where: { seed }, select: { id: true } });
  return row?.id ?? null;
}

export async function readSpecimenProgress(id: string): Promise<SpecimenProgress | null> {
  return database().specimen.findUnique({ where: { id }, select: { state: true, stage: true } });
}

/** The packed surface of one face, or null before it is made. */
export async function readSurfaceBytes(specimenId: string, face: SurfaceFace): Promise<Uint8Array<ArrayBuffer> | null> {
  const row = await database().specimenSurface.findUnique({ where: { specimenId_face: { specimenId, face } } });
  return row?.bytes ?? null;
}

/** What is seen at both ends of a fillet joint; null on a plate, and before it is made. */
export async function readEndViews(id: string): Promise<EndViews | null> {
  const row = await database().specimen.findUnique({ where: { id }, select: { ends: true } });
  return row && row.ends !== null ? endsColumn.read(row.ends) : null;
}

/** The answers to a specimen that is made. */
export async function readTruth(id: string): Promise<{ truth: Truth; generatorVersion: string } | null> {
  const row = await database().specimen.findUnique({
    where: { id },
    select: { truth: true, generatorVersion: true },
  });
  if (!row || row.truth === null || row.generatorVersion === null) return null;
  return { truth: truthColumn.read(row.truth), generatorVersion: row.generatorVersion };
}

async function moveSpecimen(id: string, from: SpecimenState, to: SpecimenState): Promise<boolean> {
  const { count } = await database().specimen.updateMany({ where: { id, state: from }, data: { state: to } });
  return count === 1;
}

/** Keeps a piece that was taken off the shelf for drills. */
export async function keepForDrills(id: string): Promise<void> {
  await database().specimen.update({ where: { id }, data: { isForDrills: true } });
}

/** How many pieces for drills are made, and how many are on their way. */
export async function countForDrills(): Promise<{ readonly made: number; readonly coming: number }> {
  const [made, coming] = await Promise.all([
    database().specimen.count({ where: { isForDrills: true, state: "taken" } }),
    database().specimen.count({ where: { isForDrills: true, state: { in: ["waiting", "making"] } } }),
  ]);
  return { made, coming };
}

/** The pieces for drills that are made, the oldest first. */
export async function listForDrills(): Promise<readonly string[]> {
  const rows = await database().specimen.findMany({
    where: { isForDrills: true, state: "taken" },
    orderBy: [{ createdAt: "asc" }, { id: "asc" }],
    select: { id: true },
  });
  return rows.map(({ id }) => id);
}

/** What is on pieces that are made; those that are gone are left out. */
export async function readTruths(
  ids: readonly string[],
): Promise<readonly { readonly specimenId: string; readonly truth: Truth }[]> {
  const rows = await database().specimen.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, truth: true },
  });
  return rows.flatMap(({ id, truth }) => (truth === null ? [] : [{ specimenId: id, truth: truthColumn.read(truth) }]));
}
