import { ease } from "../../math";
import { noiseField, noiseRows, rowsBetween } from "../../surface";
import type { FaceWork } from "../work";
import { weldZone } from "./weld-zone";

/** Lumps, grain and shallow pits of frozen metal, mm. Pits stay far too shallow to pass for pores. */
const GRAIN = { lumps: { cap: 0.075, root: 0.05 }, grain: 0.011, pits: 0.02 };

/** Roughens the deposited metal and draws the patches that painting and imperfections share. */
export function addGrain(work: FaceWork): void {
  const { grid, z, bead } = work.strip;
  const zone = weldZone(work);
  const seed = work.random.child("grain").seed();
  const writeLump = noiseRows(grid, 3.4, 2.6, seed, 2, 0.5, zone);
  const writeGrain = noiseRows(grid, 0.55, 0.42, seed + 1000, 2, 0.7, zone);
  const writePit = noiseRows(grid, 0.9, 0.9, seed + 2000, 1, 0.5, zone);
  const { columns } = grid;
  const lump = new Float32Array(columns);
  const grain = new Float32Array(columns);
  const pit = new Float32Array(columns);
  const lines: GrainLines = { lumps: GRAIN.lumps[work.face], lump, grain, pit };
  const rows = rowsBetween(grid, zone);
  for (let j = rows.first; j < rows.end; j++) {
    if (!hasMetal(bead, j * columns, columns)) continue;
    writeLump(j, lump, 0);
    writeGrain(j, grain, 0);
    writePit(j, pit, 0);
    roughenRow(z, bead, j * columns, lines);
  }
  work.noise.patch = noiseField(grid, 11, 4, seed + 3000, 3, 0.5, zone);
  work.noise.patchFine = noiseField(grid, 3.4, 2.2, seed + 4000, 3, 0.6, zone);
}

/** The noise of one row, and how high the lumps are, mm. */
interface GrainLines {
  readonly lumps: number;
  readonly lump: Float32Array;
  readonly grain: Float32Array;
  readonly pit: Float32Array;
}

function roughenRow(z: Float32Array, bead: Float32Array, from: number, { lumps, lump, grain, pit }: GrainLines): void {
  for (let i = 0, k = from; i < lump.length; i++, k++) {
    z[k] += bead[k] * (lumps * lump[i] + GRAIN.grain * grain[i] - GRAIN.pits * ease(0.5, 0.75, pit[i]));
  }
}

function hasMetal(bead: Float32Array, from: number, count: number): boolean {
  for (let k = from; k < from + count; k++) if (bead[k] > 0) return true;
  return false;
}
