import type { EyeRound } from "@/lib/eye";
import {
  aimsOf,
  drawRound,
  type EyeTask,
  keyOf,
  type MaterialFace,
  NoBareWindow,
  type RoundOrder,
  wantedFor,
} from "@/lib/eye-tasks";
import { EMPTY_OVERVIEW } from "@/lib/progress";
import { type RandomStream, randomStream } from "@/lib/random";
import { listLatelyShown, storeEyeTasks } from "@/prisma/stores/eye-rounds";
import { readOverviews } from "@/prisma/stores/progress";
import { readSetDrill } from "@/prisma/stores/set-drills";
import type { SpecimenSource } from "../generation/specimen-source";
import { randomId } from "../random-id";
import { drillMaterial } from "./stock";

/** What was in so many tasks before is kept from coming again at once. */
const LATELY = 40;

/** Draws the tasks of a round and stores them; does nothing while there is nothing to cut windows from. */
export async function drawTasks(
  round: EyeRound,
  source: SpecimenSource,
  stream: RandomStream = randomStream(randomId()),
): Promise<void> {
  const [overviews, shown, set] = await Promise.all([
    readOverviews([round.userId]),
    listLatelyShown(round.userId, LATELY),
    round.setDrillId === null ? null : readSetDrill(round.setDrillId),
  ]);
  const overview = overviews.get(round.userId)?.overview ?? EMPTY_OVERVIEW;
  const aims = aimsOf(overview, set?.types ?? []);
  const material = await drillMaterial(wantedFor(aims), source);
  if (!material) return;
  const tasks = drawnOf(stream, material, {
    ...round,
    aims,
    lately: new Set(shown.flatMap(({ at, things }) => things.map(({ id }) => keyOf(at.specimenId, id)))),
  });
  if (!tasks) return;
  await storeEyeTasks(
    round.id,
    tasks.map((task) => ({ id: randomId(), task })),
  );
}

/** Null where the pieces have no room without anything: the round waits for the next one. */
function drawnOf(
  stream: RandomStream,
  material: readonly MaterialFace[],
  order: RoundOrder,
): readonly EyeTask[] | null {
  try {
    return drawRound(stream, material, order);
  } catch (error) {
    if (error instanceof NoBareWindow) return null;
    throw error;
  }
}
