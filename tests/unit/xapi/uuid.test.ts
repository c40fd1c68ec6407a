import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { sha1 } from "../../../lib/xapi/sha1";
import { namedUuid } from "../../../lib/xapi/uuid";

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString("hex");

test("SHA-1 gives the digests of the examples in FIPS 180-4, as NIST publishes them", () => {
  const of = (text: string) => hex(sha1(new TextEncoder().encode(text)));
  expect(of("abc")).toBe("a9993e364706816aba3e25717850c26c9cd0d89d");
  expect(of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")).toBe(
    "84983e441c3bd26ebaae4aa1f95129e5e54670f1",
  );
});

test("and those of Node's own, for every length about the ends of its blocks", () => {
  for (let length = 0; length <= 200; length++) {
    const bytes = Uint8Array.from({ length }, (_, at) => (at * 37 + length) % 256);
    expect(hex(sha1(bytes)), `${length} bytes`).toBe(createHash("sha1").update(bytes).digest("hex"));
  }
});

test("the UUID of a name is that of the example in RFC 9562, A.4", () => {
  const ofDomains = "6ba7b810-9dad-11d1-80b4-00c04fd430c8";
  expect(namedUuid(ofDomains, "www.example.com")).toBe("2ed6657d-e927-568b-95e1-2665a8aea6a2");
});
