import type { Mm } from "../math";
import { type ButtFacts, type Dimension, type FilletFacts, requiredLeg, requiredThroat } from "../weld";
import type { SymbolValues } from "./symbols";

/** What the drawing says: t and s of a butt weld of full penetration; t of a fillet's thinner plate, its throat and its leg. */
export function nominalValues(facts: ButtFacts | Omit<FilletFacts, "stations">): SymbolValues {
  if (facts.kind === "butt") return { t: facts.thickness, s: facts.thickness };
  const { baseThickness, standingThickness, size } = facts;
  return { t: Math.min(baseThickness, standingThickness), a: requiredThroat(size), z: requiredLeg(size) };
}

/**
 * What the dimensions of a report give: the width of a cap, the smallest throat of a fillet as its actual one, and the width of
 * its face as the line from toe to toe at the station where that is longest. Widths are the largest, so that a limit which grows
 * with them is the mildest that holds anywhere; where it is near, the width at the place itself decides.
 */
export function measuredValues(
  measures: readonly { readonly dimension: Dimension; readonly station: number | null; readonly value: Mm | null }[],
): SymbolValues {
  const written = (dimension: Dimension, station: number | null): Mm | null =>
    measures.find((one) => one.dimension === dimension && one.station === station)?.value ?? null;
  const stations = new Set(measures.map(({ station }) => station));
  const faces = [...stations].flatMap((station) => {
    const [base, standing] = [written("base-leg", station), written("standing-leg", station)];
    return base === null || standing === null ? [] : [Math.hypot(base, standing)];
  });
  const b = written("weld-width", null) ?? (faces.length > 0 ? Math.max(...faces) : null);
  const aA = written("smallest-throat", null);
  return { ...(b === null ? {} : { b }), ...(aA === null ? {} : { aA }) };
}
