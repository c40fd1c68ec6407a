/**
 * The text of a list file. Office programs write UTF-8 with and without a byte order mark, UTF-16 with one, and the 8-bit
 * code page of Western Windows, which is taken for whatever is no UTF-8.
 */
export function decodeList(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
