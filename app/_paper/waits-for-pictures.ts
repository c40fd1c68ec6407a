import type { LitPictures, WantedPicture } from "@/app/_bench";

/** What a print with pictures still waits for, in a sentence; null when it is whole. */
export function waitsForPictures({ pictures, problem }: LitPictures, wanted: readonly WantedPicture[]): string | null {
  if (problem !== null) return `The pictures cannot be painted: ${problem}. Your marks are kept; load the page again.`;
  const painted = Object.keys(pictures).length;
  return painted === wanted.length ? null : `Painting picture ${painted + 1} of ${wanted.length}...`;
}
