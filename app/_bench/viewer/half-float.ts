const asFloat = new Float32Array(1);
const asBits = new Uint32Array(asFloat.buffer);

/** The 16-bit float nearest to a number, towards zero in the last bit; below 2^-14 it becomes 0. */
export function toHalf(value: number): number {
  asFloat[0] = value;
  const bits = asBits[0];
  const sign = (bits >>> 16) & 0x8000;
  const exponent = ((bits >>> 23) & 0xff) - 112;
  if (exponent <= 0) return sign;
  if (exponent >= 31) return sign | 0x7bff;
  return sign | (exponent << 10) | ((bits >>> 13) & 0x3ff);
}
