/** sRGB byte to linear light (IEC 61966-2-1). */
export const LINEAR_OF_BYTE = Float32Array.from({ length: 256 }, (_, n) => {
  const value = n / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
});

const CODES = 8192;
/** Brightest light told apart from white. */
const WHITE = 8;

/** Film-like curve (Narkowicz, "ACES filmic tone mapping curve", 2015), then sRGB. The table runs over the square root of the light. */
const SCREEN_BYTE = Uint8Array.from({ length: CODES + 1 }, (_, n) => {
  const light = (n / CODES) ** 2 * WHITE;
  const curved = (light * (2.51 * light + 0.03)) / (light * (2.43 * light + 0.59) + 0.14);
  const value = Math.min(1, Math.max(0, curved));
  return Math.round(255 * (value <= 0.0031308 ? 12.92 * value : 1.055 * value ** (1 / 2.4) - 0.055));
});

/** Light to the byte on the screen. */
export function screenByte(light: number): number {
  if (!(light > 0)) return 0;
  return SCREEN_BYTE[light >= WHITE ? CODES : (Math.sqrt(light / WHITE) * CODES + 0.5) | 0];
}
