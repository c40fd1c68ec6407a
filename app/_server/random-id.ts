import { randomBytes, randomInt } from "node:crypto";

/** An id that nobody can guess or count: 128 random bits. */
export function randomId(): string {
  return randomBytes(16).toString("base64url");
}

/** An id for criteria, in the small letters and digits that theirs are made of. */
export const randomCriteriaId = (): string => `in-house-${randomBytes(8).toString("hex")}`;

/** Letters and digits that are not taken for one another in print. */
const READABLE = "abcdefghjkmnpqrstuvwxyz23456789";

/** A password to note down by hand: three groups of four, 59 random bits. */
export function randomPassword(): string {
  const group = () => Array.from({ length: 4 }, () => READABLE[randomInt(READABLE.length)]).join("");
  return [group(), group(), group()].join("-");
}
