import { gzipSync } from "node:zlib";
import { encodeWebp } from "@/app/_server/generation/encode-image";
import { encodeFace, type Grid, type Patch, PLATE_GRID, STRIP_GRID } from "@/lib/surface";
import { finishSpecimen, orderSpecimen } from "@/prisma/stores/specimens";
import { strewnPiece } from "./eye-material";

/** A patch with a ridge along its middle, so that a window of it is not all alike, in plain colours. */
function plainPatch(grid: Grid): Patch {
  const size = grid.columns * grid.rows;
  const height = new Float32Array(size);
  for (let k = 0; k < size; k++) {
    const y = grid.y0 + (Math.floor(k / grid.columns) + 0.5) / grid.perMm;
    height[k] = Math.max(0, 2 - Math.abs(y) / 4);
  }
  const columns = grid.columns / 4;
  const rows = grid.rows / 4;
  return {
    grid,
    height,
    albedo: new Uint8Array(3 * size).fill(120),
    finish: new Uint8Array(3 * size).fill(90),
    brushing: { columns, rows, values: new Uint8Array(2 * columns * rows).fill(128) },
  };
}

let packed: Promise<Uint8Array> | null = null;

/** A packed cap on which nothing is to be seen; made once. */
const plainCap = (): Promise<Uint8Array> => {
  packed ??= encodeFace({ face: "cap", strip: plainPatch(STRIP_GRID), plate: plainPatch(PLATE_GRID) }, encodeWebp).then(
    (bytes) => gzipSync(bytes),
  );
  return packed;
};

/** Stores a piece for drills with things strewn over it; its surfaces show none of them. */
export async function storeDrillPiece(name: string, now: Date): Promise<void> {
  const { specimenId, truth } = strewnPiece(name);
  const cap = await plainCap();
  await orderSpecimen({ id: specimenId, kind: "butt", seed: `secret-seed-of-${name}`, asked: null }, "drills", now);
  await finishSpecimen(specimenId, {
    truth,
    generatorVersion: truth.generator,
    surfaces: { cap, root: cap },
    ends: null,
  });
}
