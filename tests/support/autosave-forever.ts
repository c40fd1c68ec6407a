// Saves a report over and over until it is killed, and says each number only once the save was answered.
import { writeSync } from "node:fs";
import type { Caller } from "@/app/_server/caller";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { EMPTY_REPORT } from "@/lib/report";

const [practiceId, userId, first] = process.argv.slice(2);
const actor = { id: userId, name: userId, role: "learner", hasOneTimeCode: false } as const;
const caller: Caller = { actor, clock: () => new Date() };

for (let sequence = Number(first); ; sequence++) {
  const call = { face: "cap", type: "surface-pore", end: null, across: 1, size: 1.5, sentence: null } as const;
  const report = { ...EMPTY_REPORT, calls: [{ ...call, id: "a", start: sequence % 300 }] };
  const window = { id: "window01", base: sequence - 1 };
  const saved = await saveReport(caller, practiceId, { sequence, report, window, madeAt: new Date().toISOString() });
  writeSync(1, saved.ok ? `${sequence}\n` : `refused ${saved.code}\n`);
}
