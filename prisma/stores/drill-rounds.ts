import { DRILLS, type Drill, type DrillRound } from "@/lib/drills";
import { database } from "../client";
import { drillGaugesColumn } from "../columns";
import type { DrillRoundModel } from "../generated/client/models";

const COLUMN_OF = {
  "read-scale": "readScale",
  "seat-gauge": "seatGauge",
  "find-largest": "findLargest",
} as const satisfies Readonly<Record<Drill, DrillRoundModel["drill"]>>;

export async function createDrillRound(userId: string, round: DrillRound): Promise<void> {
  const { drill, gauges, ...rest } = round;
  await database().drillRound.create({
    data: { ...rest, userId, drill: COLUMN_OF[drill], gauges: drillGaugesColumn.write(gauges) },
  });
}

/** The last rounds of one person at one drill, the latest first. */
export async function listDrillRounds(userId: string, drill: Drill, atMost: number): Promise<readonly DrillRound[]> {
  const rows = await database().drillRound.findMany({
    where: { userId, drill: COLUMN_OF[drill] },
    orderBy: [{ finishedAt: "desc" }, { id: "asc" }],
    take: atMost,
  });
  return rows.map(roundOf);
}

/** Every round of one person, the earliest first. */
export async function listAllDrillRounds(userId: string): Promise<readonly DrillRound[]> {
  const rows = await database().drillRound.findMany({
    where: { userId },
    orderBy: [{ finishedAt: "asc" }, { id: "asc" }],
  });
  return rows.map(roundOf);
}

function roundOf({ id, drill, gauges, asked, right, medianError, seconds, finishedAt }: DrillRoundModel): DrillRound {
  const name = DRILLS.find((one) => COLUMN_OF[one] === drill);
  if (!name) throw new Error(`no drill is kept as ${drill}`);
  return { id, drill: name, gauges: drillGaugesColumn.read(gauges), asked, right, medianError, seconds, finishedAt };
}
