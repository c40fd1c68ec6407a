import { ease } from "../../math";
import { noiseField } from "../../surface";
import type { FaceWork } from "../work";
import { weldZone, zoneRows } from "./weld-zone";

/** Lumps, grain and shallow pits of frozen metal, mm. Pits stay far too shallow to pass for pores. */
const GRAIN = { lumps: { cap: 0.075, root: 0.05 }, grain: 0.011, pits: 0.02 };

/** Roughens the deposited metal and draws the patches that painting and imperfections share. */
export function addGrain(work: FaceWork): void {
  const { grid, z, bead } = work.strip;
  const zone = weldZone(work);
  const seed = work.random.child("grain").seed();
  const lump = noiseField(grid, 3.4, 2.6, seed, 2, 0.5, zone);
  const grain = noiseField(grid, 0.55, 0.42, seed + 1000, 2, 0.7, zone);
  const pit = noiseField(grid, 0.9, 0.9, seed + 2000, 1, 0.5, zone);
  const lumps = GRAIN.lumps[work.face];
  const rows = zoneRows(grid, zone);
  for (let k = rows.first * grid.columns; k < rows.end * grid.columns; k++) {
    if (bead[k] <= 0) continue;
    z[k] += bead[k] * (lumps * lump[k] + GRAIN.grain * grain[k] - GRAIN.pits * ease(0.5, 0.75, pit[k]));
  }
  work.noise.patch = noiseField(grid, 11, 4, seed + 3000, 3, 0.5, zone);
  work.noise.patchFine = noiseField(grid, 3.4, 2.2, seed + 4000, 3, 0.6, zone);
}
