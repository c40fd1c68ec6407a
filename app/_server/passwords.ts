import { hash, verify } from "@node-rs/argon2";

/** Argon2id with the library's defaults (19 MiB, two passes), as OWASP's password storage sheet has it (from memory). */
export function hashPassword(password: string): Promise<string> {
  return hash(password);
}

export function isPassword(stored: string, password: string): Promise<boolean> {
  return verify(stored, password);
}
