const rotated = (word: number, by: number): number => (word << by) | (word >>> (32 - by));

/** What is mixed in each quarter of the eighty rounds, and its constant. */
const QUARTERS = [
  { mix: (b: number, c: number, d: number) => (b & c) | (~b & d), constant: 0x5a827999 },
  { mix: (b: number, c: number, d: number) => b ^ c ^ d, constant: 0x6ed9eba1 },
  { mix: (b: number, c: number, d: number) => (b & c) | (b & d) | (c & d), constant: 0x8f1bbcdc },
  { mix: (b: number, c: number, d: number) => b ^ c ^ d, constant: 0xca62c1d6 },
] as const;

/** SHA-1 of some bytes (FIPS 180-4), 20 bytes. For names that have to be the same everywhere, and for no secret. */
export function sha1(bytes: Uint8Array): Uint8Array {
  const padded = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, bytes.length * 8);
  const hash = [0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0];
  for (let block = 0; block < padded.length; block += 64) addBlock(hash, view, block);
  const sum = new DataView(new ArrayBuffer(20));
  for (const [at, word] of hash.entries()) sum.setUint32(at * 4, word);
  return new Uint8Array(sum.buffer);
}

function addBlock(hash: number[], view: DataView, block: number): void {
  const words = Array.from({ length: 16 }, (_, at) => view.getInt32(block + at * 4));
  for (let at = 16; at < 80; at++) {
    words.push(rotated(words[at - 3] ^ words[at - 8] ^ words[at - 14] ^ words[at - 16], 1));
  }
  let [a, b, c, d, e] = hash;
  for (const [round, word] of words.entries()) {
    const { mix, constant } = QUARTERS[Math.floor(round / 20)];
    const next = (rotated(a, 5) + mix(b, c, d) + e + constant + word) | 0;
    [a, b, c, d, e] = [next, a, rotated(b, 30), c, d];
  }
  for (const [at, word] of [a, b, c, d, e].entries()) hash[at] = (hash[at] + word) | 0;
}
