import { describe, expect, test } from "vitest";
import { drawCleanFillet, drawRecipe, generateFace, generateFillet } from "@/lib/specimen";
import type { Surface } from "@/lib/surface";

/** All bytes of a surface, copied. */
function bytesOf({ strip, plate }: Surface): Buffer {
  const planes = [strip, plate].flatMap(({ height, albedo, finish, brushing }) => [
    height,
    albedo,
    finish,
    brushing.values,
  ]);
  return Buffer.concat(planes.map((plane) => Buffer.from(plane.buffer, plane.byteOffset, plane.byteLength)));
}

const cap = (seed: string, onStage?: (stage: string) => void) => generateFace(drawRecipe(seed), "cap", onStage);

describe("faces of one thread", () => {
  test("what was made stays as it is when more is made", () => {
    const first = cap("kept-1");
    const fillet = generateFillet(drawCleanFillet("kept-2"));
    const before = [bytesOf(first.surface), bytesOf(fillet.surface)];
    const truth = JSON.stringify([first.items, fillet.truth]);
    cap("kept-3");
    generateFillet(drawCleanFillet("kept-4"));
    expect(bytesOf(first.surface).equals(before[0])).toBe(true);
    expect(bytesOf(fillet.surface).equals(before[1])).toBe(true);
    expect(JSON.stringify([first.items, fillet.truth])).toBe(truth);
  });

  test("a face made while another one is being made changes neither, nor does one that fails midway", () => {
    const alone = [cap("kept-5"), cap("kept-6")].map(({ surface }) => bytesOf(surface));
    let isSameBetween = false;
    const around = cap("kept-5", (stage) => {
      if (stage !== "cleaning") return;
      isSameBetween = bytesOf(cap("kept-6").surface).equals(alone[1]);
      expect(() =>
        cap("kept-6", () => {
          throw new Error("midway");
        }),
      ).toThrow("midway");
    });
    expect(bytesOf(around.surface).equals(alone[0])).toBe(true);
    expect(isSameBetween).toBe(true);
  });
});
