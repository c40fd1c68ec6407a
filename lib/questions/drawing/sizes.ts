import type { RandomStream } from "../../random";
import { isFilletTruth, type Truth } from "../../specimen";
import type { FilletSize } from "../../weld";

/** Sizes that drawings have, whole or half millimetres; common practice, no source. */
const VALUES: Readonly<Record<FilletSize["symbol"], readonly number[]>> = {
  a: [3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 10],
  z: [4, 5, 6, 7, 8, 9, 10, 12, 14],
};

/** The size of the fillet on the bench where its drawing gives it by that letter, else any. */
export function drawnSize(truth: Truth, symbol: FilletSize["symbol"], random: RandomStream): FilletSize {
  const isOwn = isFilletTruth(truth) && truth.joint.size.symbol === symbol;
  return isOwn ? truth.joint.size : { symbol, value: random.pick(VALUES[symbol]) };
}

/** What is worked out to hundredths may be rounded on the way; options lie further apart than that, mm. */
export const ROUNDING = 0.12;
