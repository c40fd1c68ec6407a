import { drawRecipe, generateFace } from "@/lib/specimen";
import { createField } from "@/lib/specimen/field";
import { PLATE_GRID, STRIP_GRID, type Surface } from "@/lib/surface";
import { FACES } from "@/lib/weld";
import { percentile } from "./percentile";

const SEEDS = 8;
/** A machine used by others too makes single times long, never short. */
const PASSES = 3;

/** Time this process has spent on the processor, ms: others on the same machine count less in it than in the clock. */
function spent(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Processor time of each step of making a face, and of copying the bytes of its planes and surfaces; both faces after each other. */
export function benchStages(): string[] {
  const both: number[] = [];
  const least = new Map<string, number>();
  let surfaces: Surface[] = [];
  for (let n = 0; n < SEEDS; n++) drawnAndMade(`stages-${n}`, () => {});
  for (let n = 0; n < SEEDS; n++) {
    let quickest = Number.POSITIVE_INFINITY;
    for (let pass = 0; pass < PASSES; pass++) {
      const begun = spent();
      let last = begun;
      surfaces = drawnAndMade(`stages-${n}`, (step) => {
        const now = spent();
        const key = `${step}|${n}`;
        least.set(key, Math.min(least.get(key) ?? Number.POSITIVE_INFINITY, now - last));
        last = now;
      });
      quickest = Math.min(quickest, spent() - begun);
    }
    both.push(quickest);
  }
  return [
    `both faces, one warm core (processor time with compiler and garbage collector): median ${percentile(both, 0.5)} ms, p95 ${percentile(both, 0.95)} ms`,
    ...stepLines(least),
    copyLine(surfaces),
  ];
}

function drawnAndMade(seed: string, afterStep: (step: string) => void): Surface[] {
  const recipe = drawRecipe(seed);
  afterStep("recipe");
  return FACES.map((face) => generateFace(recipe, face, undefined, (step) => afterStep(`${face} ${step}`)).surface);
}

/** Median over the seeds of each step's least time. */
function stepLines(least: ReadonlyMap<string, number>): string[] {
  const steps = new Map<string, number[]>();
  for (const [key, time] of least) {
    const step = key.split("|")[0];
    steps.set(step, [...(steps.get(step) ?? []), time]);
  }
  return [...steps].map(([step, times]) => `  ${step}: ${percentile(times, 0.5)} ms`);
}

/** The floor: as many bytes as both faces' working planes and surfaces hold, copied once. */
function copyLine(surfaces: readonly Surface[]): string {
  const side = { ...PLATE_GRID, rows: PLATE_GRID.rows - STRIP_GRID.rows / 2 };
  const planes = [STRIP_GRID, side].flatMap((grid) =>
    Object.values(createField(grid)).filter((value) => ArrayBuffer.isView(value)),
  );
  const face = planes.reduce((sum, plane) => sum + plane.byteLength, 0);
  const made = surfaces
    .flatMap(({ strip, plate }) => [strip, plate])
    .reduce((sum, { height, albedo, finish }) => sum + height.byteLength + albedo.byteLength + finish.byteLength, 0);
  const bytes = FACES.length * face + made;
  const from = new Uint8Array(bytes).fill(1);
  const to = new Uint8Array(bytes);
  const times = Array.from({ length: 5 }, () => {
    const begun = spent();
    to.set(from);
    return spent() - begun;
  });
  return `copying as many bytes (${Math.round(bytes / 1e6)} MB, the floor): ${percentile(times, 0)} ms`;
}
