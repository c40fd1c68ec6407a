import { randomBytes, randomInt } from "node:crypto";
import { JOIN_CODE_LENGTH, JOIN_CODE_SIGNS } from "@/lib/classes";

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

/** A join code for a class: short, since whoever guesses is stopped after some tries. */
export function randomJoinCode(): string {
  return Array.from({ length: JOIN_CODE_LENGTH }, () => JOIN_CODE_SIGNS[randomInt(JOIN_CODE_SIGNS.length)]).join("");
}
