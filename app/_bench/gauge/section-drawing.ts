import type { SectionPoint } from "@/lib/gauges";

/** Where along and height, both in mm, fall in a drawing of `width` by `height`, to one scale both ways. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly from: number;
  readonly perMm: number;
  /** Height of the drawing's middle, mm. */
  readonly middle: number;
}

export const leftIn = (frame: Frame, at: number): number => (at - frame.from) * frame.perMm;
export const topIn = (frame: Frame, height: number): number => frame.height / 2 - (height - frame.middle) * frame.perMm;

/** Outline of the metal below a section, closed along the lower edge of the drawing, as an SVG path. */
export function metalPath(frame: Frame, points: readonly SectionPoint[]): string {
  if (points.length === 0) return "";
  const line = points.map(({ at, height }) => `${leftIn(frame, at).toFixed(1)} ${topIn(frame, height).toFixed(1)}`);
  const first = leftIn(frame, points[0].at).toFixed(1);
  const last = leftIn(frame, points[points.length - 1].at).toFixed(1);
  return `M${first} ${frame.height}L${line.join("L")}L${last} ${frame.height}Z`;
}
