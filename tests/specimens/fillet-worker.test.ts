import { execFileSync } from "node:child_process";
import { resolve } from "node:path";
import { gunzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { outlookOf } from "@/app/_server/forecast";
import { openPool } from "@/app/_server/generation/pool";
import { foreseePieces } from "@/app/_server/next/foresee-pieces";
import { defaultPaper } from "@/lib/sittings";
import { truthSchema } from "@/lib/specimen";
import { decodeFace, FILLET_STRIP_GRID } from "@/lib/surface";
import { endViewsSchema } from "@/lib/weld";

test("a worker thread makes a whole fillet: surface, ends and truth as they are stored, telling what is being done", async () => {
  execFileSync("node", ["app/_server/build-worker.mjs"]);
  const pool = openPool(resolve("dist/specimen-worker.mjs"), 1);
  const stages: string[] = [];
  const onStage = (stage: string) => void (stages[stages.length - 1] !== stage && stages.push(stage));
  const made = await pool.make({ seed: "worker fillet", asked: null, face: "fillet" }, { urgent: true, onStage });
  const { piece } = defaultPaper().sections[0];
  const asked = { section: "plate", piece } as const;
  const [outlook, alone] = [await pool.foresee(asked), outlookOf(asked)];
  const drawn = { process: "drawn", position: "drawn", thickness: "drawn" } as const;
  const types = { includes: ["surface-pore", "spatter"], among: ["surface-pore", "spatter"] } as const;
  const candidates = {
    section: "fillet",
    pieces: [{ seed: "worker candidate", asked: { blueprint: "practice", ...drawn, types } }],
  } as const;
  const [foreseen, same] = [await pool.drawAhead(candidates), foreseePieces(candidates)];
  await pool.close();
  expect(foreseen, "and neither do candidates").toEqual(same);
  expect(new Set(foreseen[0]?.map(({ type }) => type))).toEqual(new Set(types.includes));
  expect(outlook.forecast?.pieces).toBe(8);
  expect(outlook, "what is foreseen does not depend on the thread").toEqual(alone);
  if (made.face !== "fillet") throw new Error(`made ${made.face}`);
  // once a try
  const once = ["cutting the plates", "welding", "cleaning", "measuring"];
  expect(stages).toEqual([...Array.from({ length: made.attempts }, () => once).flat(), "packing"]);
  expect(truthSchema.parse(JSON.parse(JSON.stringify(made.truth)))).toEqual(made.truth);
  expect(endViewsSchema.parse(JSON.parse(JSON.stringify(made.ends)))).toEqual(made.ends);
  const { face, strip } = decodeFace(gunzipSync(made.packed));
  const { columns, rows } = FILLET_STRIP_GRID;
  expect([face, strip.height.length]).toEqual(["fillet", columns * rows]);
  // both ends have plates to put a feeler between, and the leaf that goes in is no thicker than the gap
  for (const end of ["datum", "farEnd"] as const) {
    const { base, standing, weld } = made.ends[end];
    for (const line of [base, standing, weld]) expect(line.length, end).toBeGreaterThan(20);
    const foot = standing.filter(
      ({ along, up }) => along < -0.5 && along > -made.truth.joint.standingThickness + 0.5 && up < 20,
    );
    const least = Math.min(...foot.map(({ up }) => up));
    const highest = Math.max(...base.filter(({ along, up }) => along < 0 && up > -3).map(({ up }) => up));
    expect(made.truth.gap[end], end).toBeGreaterThanOrEqual(least - highest - 1e-9);
    expect(made.truth.gap[end], end).toBeLessThan(least - highest + 0.15);
  }
});
