import { z } from "zod";

/** ISO 8601, in UTC. */
export const moment = z.iso.datetime();
export const mm = z.number();
/** Thousandths of a mark, of which a section has 100,000. */
export const thousandths = z.int();

export const iso = (at: Date): string => at.toISOString();
export const isoOrNull = (at: Date | null): string | null => at?.toISOString() ?? null;
