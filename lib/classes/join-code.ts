import { z } from "zod";

/** Letters and digits that are not taken for one another on a board: no 0, O and Q, 1, I and L, 2 and Z, 5 and S, 6 and G, 8 and B, U and V. */
export const JOIN_CODE_SIGNS = "ACDEFHJKMNPRTWXY3479";
export const JOIN_CODE_LENGTH = 6;

/** A join code as it is kept, from what was typed: capitals, spaces and hyphens do not count. */
export const joinCodeSchema = z
  .string()
  .transform((typed) => typed.replace(/[\s-]/g, "").toUpperCase())
  .refine(
    (code) => new RegExp(`^[${JOIN_CODE_SIGNS}]{${JOIN_CODE_LENGTH}}$`).test(code),
    `A join code has ${JOIN_CODE_LENGTH} letters and digits, such as KMT-4RW.`,
  );

/** As people read it: two groups. */
export function shownJoinCode(code: string): string {
  return `${code.slice(0, 3)}-${code.slice(3)}`;
}
