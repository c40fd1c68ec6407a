import { describe, expect, it } from "vitest";
import { sharePower } from "@/lib/specimen/runs/share-power";

describe("sharePower", () => {
  it("is the power within 0.002, at the ends exactly, and outside its table too", () => {
    for (let exponent = 1.5; exponent <= 9; exponent += 0.037) {
      for (let share = 0; share <= 1; share += 0.0013) {
        expect(Math.abs(sharePower(share, exponent) - share ** exponent)).toBeLessThan(0.002);
      }
      expect(sharePower(0, exponent)).toBe(0);
      expect(sharePower(1, exponent)).toBe(1);
    }
    expect(sharePower(0.25, 0.5)).toBe(0.5);
  });
});
