import type { ImperfectionType } from "../../imperfections";
import type { RandomStream } from "../../random";
import type { FaceWork, Feature } from "../work";
import { cutGasHole, drawGasHole, type GasHole, type GasHoleWish, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredHoles } from "./measured-hole";

/** One pore of a group: place on the face and mouth diameter, mm; an open one is as wide as asked. */
export interface PoreSpot extends GasHoleWish {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** A feature of several pores, placed when the metal lies there. Truth: see `measuredHoles`. */
export function poreGroup(
  id: string,
  type: ImperfectionType,
  random: RandomStream,
  placePores: (work: FaceWork) => readonly PoreSpot[],
): Feature {
  const holes: { hole: GasHole; trace: HoleTrace }[] = [];
  return {
    id,
    cut(work) {
      placePores(work).forEach(({ x, y, diameter, ...wish }, n) => {
        const hole = drawGasHole(random.child(`hole/${n}`), x, y, diameter, wish);
        holes.push({ hole, trace: cutGasHole(work.strip, hole) });
      });
    },
    paint({ strip }) {
      for (const { hole, trace } of holes) paintGasHole(strip, hole, trace);
    },
    measure: (work) =>
      measuredHoles(
        work,
        id,
        type,
        holes.map(({ hole }) => hole),
      ),
  };
}
