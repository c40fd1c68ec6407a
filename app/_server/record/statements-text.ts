import { setImmediate as breathe } from "node:timers/promises";
import { drillStatement, statementsOf } from "@/lib/xapi";
import { listAllDrillRounds } from "@/prisma/stores/drill-rounds";
import { listCountedAttempts, readWork } from "@/prisma/stores/xapi";
import { workshopPlace } from "@/prisma/xapi-outbox";

/** Of whom statements are to be written, and the classes whose sittings may be told; null for all, to the learner alone. */
interface ToTell {
  readonly userId: string;
  readonly classIds: readonly string[] | null;
}

/**
 * What counts of some learners as a JSON array of statements, learner after learner: practice, and sittings that are released and
 * not void. They have the ids under which a record store is told of them. To a learner alone their drills are told as well, which
 * were promised to them.
 */
export async function* statementsText(learners: readonly ToTell[]): AsyncGenerator<string> {
  const place = workshopPlace();
  let before = "[\n";
  for (const { userId, classIds } of learners) {
    for (const id of await listCountedAttempts(userId, classIds)) {
      for (const work of await readWork([id])) {
        for (const statement of statementsOf(place, work)) {
          yield `${before}${JSON.stringify(statement)}`;
          before = ",\n";
        }
      }
      await breathe();
    }
    for (const round of classIds === null ? await listAllDrillRounds(userId) : []) {
      yield `${before}${JSON.stringify(drillStatement(place, userId, round))}`;
      before = ",\n";
    }
  }
  yield before === "[\n" ? "[]\n" : "\n]\n";
}
