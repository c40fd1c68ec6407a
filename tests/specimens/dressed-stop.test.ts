import { beforeAll, describe, expect, it } from "vitest";
import type { Face } from "@/lib/weld";
import { type AskedFace, askedFace } from "./support/asked-face";

const PLACES = [60, 150, 240];
const MADE: readonly (readonly [seed: string, face: Face])[] = [
  ["dressed one", "cap"],
  ["dressed two", "root"],
];

describe("stops ground flush", () => {
  const faces: { readonly name: string; readonly dressed: AskedFace; readonly left: AskedFace }[] = [];
  beforeAll(() => {
    for (const [seed, face] of MADE) {
      const asked = (type: "dressed-stop" | "sound-stop") =>
        askedFace(
          seed,
          face,
          PLACES.map((x) => ({ type, x, length: 0, severity: 0 })),
        );
      faces.push({ name: `${seed} ${face}`, dressed: asked("dressed-stop"), left: asked("sound-stop") });
    }
  });

  it("are neutral items of the truth, shallower than what is recorded of a grinding mark", () => {
    for (const { name, dressed } of faces)
      for (const item of dressed.found) {
        expect(item?.neutral, name).toBe(true);
        expect(item?.type, name).toBe("grinding-mark");
        expect(item!.size, name).toBeLessThan(0.5);
        expect(item!.end - item!.start, name).toBeGreaterThan(5);
        expect(item!.end - item!.start, name).toBeLessThan(30);
      }
  });

  it("are listed where the disc left its scratches, found by comparing the brushing with the same stop undressed", () => {
    for (const { name, dressed, left } of faces)
      for (const item of dressed.found) {
        const { grid, finish } = dressed.surface.strip;
        const rows = item!.outline.map(([, y]) => y);
        let scratched = 0;
        let inside = 0;
        for (let j = 0; j < grid.rows; j++)
          for (let i = Math.round((item!.start - 6) * 8); i < (item!.end + 6) * 8; i++) {
            const k = j * grid.columns + i;
            // the third byte is the strength of brushed scratches
            if (finish[3 * k + 2] - left.surface.strip.finish[3 * k + 2] < 80) continue;
            scratched++;
            const x = (i + 0.5) / 8;
            const y = (j + 0.5) / 8 - 26;
            const isWithin = y > Math.min(...rows) - 0.5 && y < Math.max(...rows) + 0.5;
            if (x > item!.start - 1 && x < item!.end + 1 && isWithin) inside++;
          }
        expect(scratched, name).toBeGreaterThan(200);
        expect(inside / scratched, name).toBeGreaterThan(0.9);
      }
  });

  it("are lower than the stop was: metal is taken off, hardly anywhere is some added", () => {
    for (const { name, dressed } of faces)
      for (const item of dressed.found) {
        const { grid, height } = dressed.surface.strip;
        // along the run's middle nothing stands out of what it is like 13 to 18 mm away
        const j = Math.round((item!.across + 26) * 8);
        const crest = (from: number, to: number) => {
          const values: number[] = [];
          for (let i = Math.round(from * 8); i < to * 8; i++) values.push(height[j * grid.columns + i]);
          return values.sort((a, b) => a - b);
        };
        const middle = (item!.start + item!.end) / 2;
        const away = [...crest(middle - 20, middle - 13), ...crest(middle + 13, middle + 20)].sort((a, b) => a - b);
        const near = crest(middle - 3, middle + 3);
        expect(near[near.length >> 1], name).toBeLessThan(away[Math.floor(0.9 * away.length)] + 0.15);
      }
  });
});
