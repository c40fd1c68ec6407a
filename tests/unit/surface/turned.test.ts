import { describe, expect, it } from "vitest";
import { heightsOfFace, setDown } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import {
  decodeFace,
  encodeFace,
  FILLET_PLATE_GRID,
  FILLET_STRIP_GRID,
  type Grid,
  heightAt,
  type Patch,
  rowY,
  type Surface,
  turnedFillet,
} from "@/lib/surface";

/** A mitre fillet with legs of 8 mm between ideal plates, 20 mm long. */
const LEG = 8;
function patchOf(grid: Grid): Patch {
  const height = Float32Array.from({ length: grid.columns * grid.rows }, (_, k) =>
    Math.max(Math.abs(rowY(grid, Math.floor(k / grid.columns))), LEG / Math.SQRT2),
  );
  const brushing = { columns: Math.ceil(grid.columns / 4), rows: Math.ceil(grid.rows / 4) };
  return {
    grid,
    height,
    albedo: new Uint8Array(3 * height.length).fill(90),
    finish: new Uint8Array(3 * height.length).fill(120),
    brushing: { ...brushing, values: new Uint8Array(2 * brushing.columns * brushing.rows).fill(128) },
  };
}
const short = (grid: Grid): Grid => ({ ...grid, columns: 20 * grid.perMm });
const surface: Surface = {
  face: "fillet",
  strip: patchOf(short(FILLET_STRIP_GRID)),
  plate: patchOf(short(FILLET_PLATE_GRID)),
};

describe("a fillet turned square to one of its plates", () => {
  it("shows that plate level and the weld as a ramp of 45 degrees, from both sides alike", () => {
    for (const plate of ["base", "standing"] as const) {
      const sign = plate === "base" ? 1 : -1;
      const turned = turnedFillet(surface, plate);
      for (const away of [1, 3, 7.5]) expect(heightAt(turned, 10, sign * away)).toBeCloseTo(LEG - away, 2);
      for (const away of [8.5, 20, 40, 60]) expect(heightAt(turned, 10, sign * away)).toBeCloseTo(0, 2);
    }
  });
});

describe("a depth gauge on one plate of a fillet", () => {
  /** 0.7 mm deep square to the base plate, between 9 and 11 mm from the corner. */
  const DEEP = 0.7;
  const undercut = (patch: Patch): Patch => ({
    ...patch,
    height: patch.height.map((z, k) => {
      const along = rowY(patch.grid, Math.floor(k / patch.grid.columns)) * Math.SQRT2;
      const share = along > 9 && along < 11 ? Math.sin(((along - 9) * Math.PI) / 2) : 0;
      return z - share * DEEP * Math.SQRT2;
    }),
  });
  const cut: Surface = { ...surface, strip: undercut(surface.strip), plate: undercut(surface.plate) };
  const heights = heightsOfFace(turnedFillet(cut, "base"));
  const gauge = { kind: "depth-gauge", x: 10, turn: 90, stance: "one-side", near: 8, spacing: 14 } as const;

  it("reads an undercut beside the other plate square to its own", () => {
    // cut along the bisector, its ground lies as much nearer to the corner as it is deep, under an upright flank
    const BESIDE = 0.1;
    const standing = setDown(heights, { ...gauge, y: 10 - DEEP + BESIDE }, randomStream("steady hand"));
    expect(standing).toMatchObject({ ok: true });
    expect(Math.abs((standing.ok ? standing.exact : 0) - DEEP)).toBeLessThan(0.1);
  });

  it("does not get its body past the other plate", () => {
    const straddling = setDown(heights, { ...gauge, stance: "straddling", y: 10 }, randomStream("steady hand"));
    expect(straddling.ok).toBe(false);
  });
});

describe("a packed fillet", () => {
  it("comes back with its face and its heights, to half a step of 2 micrometres", async () => {
    const whole: Surface = { face: "fillet", strip: patchOf(FILLET_STRIP_GRID), plate: patchOf(FILLET_PLATE_GRID) };
    const decoded = decodeFace(await encodeFace(whole, async (rgb) => rgb.slice(0, 8)));
    expect(decoded.face).toBe("fillet");
    expect(decoded.strip.height.length).toBe(whole.strip.height.length);
    for (const patch of ["strip", "plate"] as const) {
      let furthest = 0;
      whole[patch].height.forEach((z, k) => {
        // the plate under the strip is the strip averaged two by two: at the toes it is not what stands here
        if (Math.abs(Math.abs(z) - LEG / Math.SQRT2) > 0.2)
          furthest = Math.max(furthest, Math.abs(z - decoded[patch].height[k]));
      });
      expect(furthest, patch).toBeLessThan(0.0011);
    }
  });
});
