import { randomStream } from "@/lib/random";
import type { Truth } from "@/lib/specimen";
import { findSpecimenBySeed, finishSpecimen, orderSpecimen, readSpecimenProgress } from "@/prisma/stores/specimens";
import type { PieceMaker } from "@/seed/demo/pieces";
import { syntheticFillet, syntheticPlate } from "./synthetic-truths";

/** As the schema of a truth wants them: no outline is empty. */
function withOutlines<T extends Truth>(truth: T): T {
  const outlined = <I extends { readonly start: number; readonly end: number; readonly across: number }>(item: I) => ({
    ...item,
    outline: [
      [item.start, item.across - 1],
      [item.end + 1, item.across - 1],
      [item.end + 1, item.across + 1],
    ],
  });
  return { ...truth, items: truth.items.map(outlined), clutter: truth.clutter.map(outlined) };
}

/** Makes pieces for the demo in no time: their truths are drawn, and no surface stands behind them. */
export function drawnPieces(): PieceMaker {
  return {
    async orderNamed(kind, asked, seed) {
      const known = await findSpecimenBySeed(seed);
      if (known) return { specimenId: known };
      const specimenId = `piece-${seed.replaceAll("/", "-")}`;
      await orderSpecimen({ id: specimenId, kind, seed, asked }, "ahead", new Date("2026-03-02T08:00:00Z"));
      const random = randomStream(seed);
      const truth = withOutlines(kind === "butt" ? syntheticPlate(random) : syntheticFillet(random));
      const surfaces =
        kind === "butt" ? { cap: new Uint8Array([1]), root: new Uint8Array([2]) } : { fillet: new Uint8Array([3]) };
      await finishSpecimen(specimenId, { truth, generatorVersion: "synthetic", surfaces, ends: null });
      return { specimenId };
    },
    stageOf: async (id) => (await readSpecimenProgress(id)) ?? { state: "failed" },
  };
}
