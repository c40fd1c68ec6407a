import { sha1 } from "./sha1";

/** Namespace of names that are addresses (RFC 9562, 6.6). */
export const OF_ADDRESSES = "6ba7b811-9dad-11d1-80b4-00c04fd430c8";

/**
 * The UUID of a name within a namespace, version 5 (RFC 9562): the same name has the same one wherever and whenever it is
 * asked for.
 */
export function namedUuid(namespace: string, name: string): string {
  const space = Uint8Array.from(namespace.replaceAll("-", "").match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
  const hash = sha1(Uint8Array.from([...space, ...new TextEncoder().encode(name)])).slice(0, 16);
  hash[6] = (hash[6] & 0x0f) | 0x50;
  hash[8] = (hash[8] & 0x3f) | 0x80;
  const digits = Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [8, 12, 16, 20, 32].map((end, at) => digits.slice([0, 8, 12, 16, 20][at], end)).join("-");
}
