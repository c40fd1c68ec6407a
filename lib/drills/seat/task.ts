import {
  type FeetPlacement,
  type GaugePlacement,
  type Heights,
  setDown,
  takeFromTray,
  withinLimits,
} from "../../gauges";
import { type Degrees, type Mm, roundTo } from "../../math";
import type { RandomStream } from "../../random";
import type { DrillGauge } from "../drills";
import { STEADY } from "../steady";
import { judgeSeat, type SeatGoal } from "./judge";
import { heightsOfWork, type Lump, middleOfUndercut, type SeatWork } from "./work";

type SeatGauge = DrillGauge<"seat-gauge">;

/** A gauge to be seated on a piece of work with traps. It holds its own answer: an exercise with feedback, and no mark. */
export interface SeatTask extends SeatGoal {
  readonly kind: SeatGauge;
  readonly heights: Heights;
  /** How the gauge is handed over: in the wrong place, and set as it came from the tray. */
  readonly first: GaugePlacement;
  /** One seat that is right. */
  readonly solution: GaugePlacement;
}

/** Draws a piece of work on which the gauge cannot stay as it is handed over, and on which there is a right seat. */
export function drawSeatTask(random: RandomStream, kinds: readonly SeatGauge[]): SeatTask {
  const kind = random.child("kind").pick(kinds);
  for (let trial = 0; ; trial++) {
    const task = tryTask(random.child(`work/${trial}`), kind);
    if (task && !judgeSeat(task, task.first).isRight) return task;
  }
}

function tryTask(random: RandomStream, kind: SeatGauge): SeatTask | null {
  const station = Math.round(random.uniform(38, 72));
  const work = drawWork(random, kind, station);
  const candidates = seatsAt(kind, station, work);
  const clean = heightsOfWork(work, false);
  const best = setDown(clean, candidates[0], STEADY);
  if (!best.ok) return null;
  const goal: SeatGoal = { kind, work, station, right: best.exact };
  const solution = candidates.find((placement) => judgeSeat(goal, placement).isRight);
  if (!solution) return null;
  const first = takeFromTray(kind, {
    x: roundTo(station + random.pick([-1, 1]) * random.uniform(6, 14), 0.1),
    y: 0,
    turn: roundTo(random.pick([90, 270]) + random.pick([-1, 1]) * random.uniform(7, 14), 1),
  });
  return { ...goal, heights: heightsOfWork(work, true), first, solution };
}

function drawWork(random: RandomStream, kind: SeatGauge, station: Mm): SeatWork {
  const half = random.uniform(5.5, 8.5);
  const plain = { half, cap: random.uniform(1.4, 3.4), bend: 0, drop: 0, undercut: null };
  switch (kind) {
    case "height-gauge": {
      // either the plates are bent, or spatter lies where the feet come down as they are set in the tray
      if (random.chance(0.5)) {
        const work = { ...plain, bend: random.uniform(2.5, 5) };
        return { ...work, spatter: lumps(random, work, [], station) };
      }
      const side = random.pick([-1, 1]);
      return {
        ...plain,
        spatter: lumps(random, plain, [side * 18, ...(random.chance(0.5) ? [-side * 18] : [])], station),
      };
    }
    case "depth-gauge": {
      const side = random.pick([-1, 1] as const);
      const undercut = { side, x: station, depth: random.uniform(0.5, 1.2), width: random.uniform(0.9, 1.2) };
      const work = { ...plain, undercut };
      const middle = middleOfUndercut(work);
      return { ...work, spatter: lumps(random, work, [middle + side * random.pick([8, 22])], station) };
    }
    case "hook-gauge": {
      const drop = random.pick([-1, 1]) * random.uniform(0.8, 2.6);
      const higher = Math.sign(drop);
      return { ...plain, drop, spatter: lumps(random, plain, [higher * random.uniform(half + 4, half + 9)], station) };
    }
  }
}

/** Spatter where it is in the way, near the station at these distances across, and some more about the plate. */
function lumps(random: RandomStream, { half }: { half: Mm }, inTheWay: readonly Mm[], station: Mm): readonly Lump[] {
  const drop = (x: Mm, y: Mm): Lump => {
    const radius = random.uniform(0.7, 1.4);
    return { x, y, radius, height: radius * random.uniform(0.5, 0.9) };
  };
  const elsewhere = Array.from({ length: 7 }, () =>
    drop(random.uniform(4, 106), random.pick([-1, 1]) * random.uniform(half + 3, 44)),
  );
  return [
    ...inTheWay.map((y) => drop(station + random.uniform(-0.8, 0.8), y + random.uniform(-0.6, 0.6))),
    ...elsewhere,
  ];
}

/** Seats that may be right, the best on clean metal first. */
function seatsAt(kind: SeatGauge, station: Mm, work: SeatWork): readonly GaugePlacement[] {
  if (kind === "hook-gauge") {
    // the sole on the higher plate, the slide's foot on the other one, close to the weld
    const higher = work.drop > 0 ? 1 : -1;
    const beside = [2.5, 3.5, 5, 7, 9].map((by) => roundTo(work.half + by, 0.1));
    return beside.flatMap((y) =>
      [2, 4, 6, 8, 11, 15].map(
        (by): GaugePlacement => ({
          kind,
          x: station,
          y: -higher * y,
          turn: higher > 0 ? 90 : 270,
          reach: Math.ceil(y + work.half + by),
        }),
      ),
    );
  }
  const y = kind === "depth-gauge" ? roundTo(middleOfUndercut(work), 0.1) : 0;
  const seats = [...onOneSide(y < 0 ? [270, 90] : [90, 270]), ...straddling()];
  // across bent plates the line of the feet is no plate
  const inOrder = kind === "height-gauge" && work.bend === 0 ? seats.reverse() : seats;
  return inOrder.map((set) => withinLimits({ kind, x: station, y, ...set }));
}

type FeetSet = Pick<FeetPlacement, "turn" | "stance" | "near" | "spacing">;

const onOneSide = (turns: readonly Degrees[]): readonly FeetSet[] =>
  turns.flatMap((turn) =>
    [12, 8, 10, 14, 16, 18, 5, 6].flatMap((near) =>
      [12, 14, 18, 22, 26, 30, 34].map((spacing): FeetSet => ({ turn, stance: "one-side", near, spacing })),
    ),
  );

const straddling = (): readonly FeetSet[] => {
  const out = [24, 22, 20, 18, 16, 14, 12];
  return out.flatMap((near) =>
    out.map((far): FeetSet => ({ turn: 90, stance: "straddling", near, spacing: near + far })),
  );
};
