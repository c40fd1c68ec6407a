import type { Colour } from "../field";

const channel = (value: number): number => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);

/** Linear colour from "#rrggbb" (sRGB, IEC 61966-2-1). */
export const linear = (hex: string): Colour => [
  channel(Number.parseInt(hex.slice(1, 3), 16) / 255),
  channel(Number.parseInt(hex.slice(3, 5), 16) / 255),
  channel(Number.parseInt(hex.slice(5, 7), 16) / 255),
];

/** Colours of what cutting, burning and slag leave on steel; linear light. */
export const TONES = {
  gap: linear("#0d0b0a"),
  shade: linear("#1b1713"),
  wall: linear("#5a554f"),
  skin: linear("#57524c"),
  slag: linear("#1a1612"),
  slagGreen: linear("#26261c"),
  slagPale: linear("#645b4b"),
  cutMetal: linear("#c6c4be"),
  meltedMetal: linear("#a5a099"),
  oxide: linear("#3c3835"),
  blue: linear("#4c5565"),
  brown: linear("#5c4a3a"),
  straw: linear("#8b7a58"),
  soot: linear("#2a2521"),
  rust: linear("#6a4127"),
} as const satisfies Record<string, Colour>;

/** Colour between a (share 0) and b (share 1). */
export const between = (a: Colour, b: Colour, share: number): Colour => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
  a[2] + (b[2] - a[2]) * share,
];

/** Colour made lighter or darker by a factor. */
export const scaled = (a: Colour, factor: number): Colour => [a[0] * factor, a[1] * factor, a[2] * factor];
