import { isEnough, type MaterialFace } from "@/lib/eye-tasks";
import type { ImperfectionType } from "@/lib/imperfections";
import { countForDrills, keepForDrills } from "@/prisma/stores/specimens";
import type { SpecimenSource } from "../generation/specimen-source";
import { drillStockMaterial } from "./known-material";

/**
 * Pieces that windows are cut from. Every round orders one more, behind everything else, until there are so many: about 150
 * imperfections, each of which can be shown in many windows. For what is scarce and wanted there may be more.
 */
const STOCK = 12;
const MOST = 30;
/** Fewer imperfections of a type than this are known by heart after some rounds. */
const SCARCE = 4;

/**
 * What windows can be cut from now; null while there is not enough. Pieces for drills are nobody's to inspect, so a window can
 * give away nothing of a piece that is being sat. The first ones come off the shelf, so that nobody waits where some are ready. The
 * next one is ordered with what is wanted of it.
 */
export async function drillMaterial(
  wanted: readonly ImperfectionType[],
  source: SpecimenSource,
): Promise<readonly MaterialFace[] | null> {
  const material = await materialAtHand(source);
  const { made, coming } = await countForDrills();
  const scarce = wanted.filter((type) => countOf(type, material) < SCARCE);
  if (coming === 0 && made < (scarce.length > 0 ? MOST : STOCK)) await source.orderForDrills(scarce);
  return isEnough(material) ? material : null;
}

/** With pieces off the shelf until it is enough: one that is clean or misaligned is not, and another would be made last of all. */
async function materialAtHand(source: SpecimenSource): Promise<readonly MaterialFace[]> {
  for (;;) {
    const material = await drillStockMaterial();
    const ready = isEnough(material) ? null : await source.takeReady("butt");
    if (!ready) return material;
    await keepForDrills(ready.specimenId);
  }
}

const countOf = (type: ImperfectionType, material: readonly MaterialFace[]): number =>
  material.flatMap(({ things }) => things.filter(({ what, name }) => what === "imperfection" && name === type)).length;
