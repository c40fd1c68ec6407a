import { spawnSync } from "node:child_process";

const PLACEMENTS = 10_000;

/** Gauges set down at 10,000 places, each reading against plain loops; only in the long run. */
export function benchReadBack({ long }: { long: boolean }): string[] {
  if (!long) return ["with --long only"];
  const begun = Date.now();
  const { status, stdout } = spawnSync("npx", ["vitest", "run", "tests/unit/gauges/read-back"], {
    env: { ...process.env, PLACEMENTS: String(PLACEMENTS) },
    encoding: "utf8",
  });
  const seconds = Math.round((Date.now() - begun) / 1000);
  const verdict = status === 0 ? "every reading is the one found by plain loops" : `not so:\n${stdout}`;
  return [`${PLACEMENTS} placements: ${verdict} (${seconds} s)`];
}
