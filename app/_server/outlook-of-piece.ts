import type { Outlook, OutlookOrder } from "./forecast";
import type { SpecimenSource } from "./generation/specimen-source";

/** Outlooks of this process, by piece, the latest last: working one out takes a second or two. */
const KEPT = 500;
const outlooks = new Map<string, Outlook>();

/**
 * What can be said of a section's piece from some that are drawn and not made; asked again, at once. With a signal for whoever only
 * has a look, as the source has it.
 */
export async function outlookOfPiece(
  { section, piece }: OutlookOrder,
  specimens: Pick<SpecimenSource, "foresee">,
  look?: AbortSignal,
): Promise<Outlook> {
  const key = JSON.stringify([section, piece]);
  const outlook = outlooks.get(key) ?? (await specimens.foresee({ section, piece }, look));
  outlooks.delete(key);
  outlooks.set(key, outlook);
  for (const old of [...outlooks.keys()].slice(0, -KEPT)) outlooks.delete(old);
  return outlook;
}
