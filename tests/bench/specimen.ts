import { execFileSync } from "node:child_process";
import { resolve } from "node:path";
import { setFlagsFromString } from "node:v8";
import { gunzipSync } from "node:zlib";
import { encodeWebp } from "@/app/_server/generation/encode-image";
import { MAKING_FLAGS } from "@/app/_server/generation/making-flags";
import { openPool } from "@/app/_server/generation/pool";
import { BLUEPRINTS, drawRecipe, generateFace, meetsBlueprint } from "@/lib/specimen";
import { decodeFace, encodeFace } from "@/lib/surface";
import { FACES } from "@/lib/weld";
import { benchStagesOnOneCore } from "./one-core";
import { percentile } from "./percentile";

const WORKER = resolve("dist/specimen-worker.mjs");

/** Times of making, packing and unpacking specimens; with `long`, one thousand seeds at full resolution. */
export async function benchSpecimen({ long }: { long: boolean }): Promise<string[]> {
  for (const flag of MAKING_FLAGS) setFlagsFromString(flag);
  const lines: string[] = [];
  const make: number[] = [];
  const pack: number[] = [];
  for (let n = 0; n < 8; n++) {
    const recipe = drawRecipe(`bench-${n}`);
    for (const face of FACES) {
      const begun = performance.now();
      const { surface } = generateFace(recipe, face);
      const made = performance.now();
      await encodeFace(surface, encodeWebp);
      if (n === 0) lines.push(`first ${face} face in a cold thread: ${(made - begun).toFixed(0)} ms`);
      else {
        make.push(made - begun);
        pack.push(performance.now() - made);
      }
    }
  }
  lines.push(`one face, warm thread: median ${percentile(make, 0.5)} ms, p95 ${percentile(make, 0.95)} ms`);
  lines.push(...benchStagesOnOneCore());
  lines.push(`packing one face (heights, pictures): median ${percentile(pack, 0.5)} ms`);

  execFileSync("node", ["app/_server/build-worker.mjs"], { stdio: "ignore" });
  const pool = openPool(WORKER, 2);
  const both: number[] = [];
  const wire: number[] = [];
  const decode: number[] = [];
  for (let n = 0; n < 8; n++) {
    const begun = performance.now();
    const faces = await Promise.all(
      FACES.map((face) => pool.make({ seed: `bench-pool-${n}`, asked: null, face }, { urgent: true })),
    );
    if (n === 0) lines.push(`both faces, two cold threads: ${(performance.now() - begun).toFixed(0)} ms`);
    else both.push(performance.now() - begun);
    wire.push(faces.reduce((sum, face) => sum + face.packed.length, 0));
    for (const face of faces) {
      const started = performance.now();
      decodeFace(gunzipSync(face.packed));
      decode.push(performance.now() - started);
    }
  }
  await pool.close();
  lines.push(
    `both faces packed, two warm threads: median ${percentile(both, 0.5)} ms, p95 ${percentile(both, 0.95)} ms`,
  );
  lines.push(
    `on the wire, both faces: median ${kilobytes(percentile(wire, 0.5))}, most ${kilobytes(Math.max(...wire))}`,
  );
  lines.push(`unpacking heights of one face (Node, one thread): median ${percentile(decode, 0.5)} ms`);
  if (long) lines.push(...(await thousandSeeds()));
  return lines;
}

const kilobytes = (bytes: number) => `${Math.round(bytes / 1000)} kB`;

/** All faces through the worker pool, as the server makes them: the measured truth of every one must meet the blueprint. */
async function thousandSeeds(): Promise<string[]> {
  const pool = openPool(WORKER, 2);
  const failures: string[] = [];
  const counts = new Map<string, number>();
  const bytes: number[] = [];
  const attempts = { cap: [] as number[], root: [] as number[] };
  const begun = performance.now();
  let done = 0;
  await Promise.all(
    Array.from({ length: 1000 }, async (_, n) => {
      const seed = `long-${n}`;
      try {
        const all = await Promise.all(FACES.map((face) => pool.make({ seed, asked: null, face }, { urgent: true })));
        const faces = all.filter((made) => made.face !== "fillet");
        bytes.push(faces.reduce((sum, face) => sum + face.packed.length, 0));
        for (const made of faces) {
          attempts[made.face].push(made.attempts);
          const meets = meetsBlueprint(made, BLUEPRINTS.practice.sections[made.face]);
          if (!meets.ok) failures.push(`${seed} ${made.face}: ${JSON.stringify(meets)}`);
        }
        const items = faces.flatMap((face) => face.items).filter((item) => !item.neutral);
        for (const { type } of items) counts.set(type, (counts.get(type) ?? 0) + 1);
        if (items.length === 0) counts.set("nothing at all", (counts.get("nothing at all") ?? 0) + 1);
      } catch (error) {
        failures.push(`${seed}: ${String(error)}`);
      }
      done++;
      if (done % 100 === 0) console.log(`  ${done} seeds, ${((performance.now() - begun) / 1000).toFixed(0)} s`);
    }),
  );
  await pool.close();
  const table = [...counts].sort((a, b) => b[1] - a[1]).map(([type, count]) => `${type} ${count}`);
  return [
    `1,000 seeds at full resolution: ${failures.length} failures, ${((performance.now() - begun) / 1000).toFixed(0)} s`,
    ...failures.slice(0, 20),
    ...FACES.map((face) => {
      const first = attempts[face].filter((count) => count === 1).length / attempts[face].length;
      return `${face}: first face met the blueprint ${(100 * first).toFixed(1)} %, most faces made ${Math.max(...attempts[face])}`;
    }),
    `on the wire, both faces: median ${kilobytes(percentile(bytes, 0.5))}, most ${kilobytes(Math.max(...bytes))}`,
    `imperfections: ${table.join(", ")}`,
  ];
}
