import { scribe, stampText } from "../plate";
import { toeAt } from "../runs/edit";
import type { FaceWork } from "../work";

/** A station's line on the base plate: from how far outside the toe, and how long; mm. Its number stands beyond it. */
const LINE = { from: 9, length: 9 };
const NUMBER = { beyond: 4, height: 4.5 };

/** Scribes where legs and throat are to be measured on the base plate and stamps their numbers, 1 at the datum end. */
export function markStations(work: FaceWork, stations: readonly number[]): void {
  const random = work.random.child("plate/stations");
  stations.forEach((x, n) => {
    const own = random.child(`${n}`);
    const near = toeAt(work, -1, x, 3) - LINE.from - own.uniform(-0.5, 0.5);
    const far = near - LINE.length - own.uniform(-0.7, 0.7);
    scribe(work, x, far, near, own);
    stampText(work, `${n + 1}`, x - NUMBER.height / 3, far - NUMBER.beyond, NUMBER.height, own);
  });
}
