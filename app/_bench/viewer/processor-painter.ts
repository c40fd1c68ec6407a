import { PLATE_PER_MM, type Surface } from "@/lib/surface";
import type { Aspect } from "@/lib/weld";
import { MOVING_BUDGET_MS, type Painter, pixelsOf } from "./painter";
import { surfaceOf } from "./processor-surface";
import { bitmapOf, drawFully, drawQuick } from "./processor-view";
import type { PaintRequest } from "./protocol";

/** A finished picture may take so long, ms: it is painted in one piece, and nothing else can be painted meanwhile. */
const REST_BUDGET_MS = 900;
const FIRST_GUESS = { quick: 6e-5, full: 1.2e-3 };

/** The full light is worked out at the plate's own resolution or finer: a coarser picture would not come sooner. */
const leastFullScale = ({ view, pixelRatio }: PaintRequest): number =>
  Math.min(1, PLATE_PER_MM / (view.scale * pixelRatio));

/** A painter on the processor alone: a quick drawing while something moves, the full light at rest, coarser if it must be. */
export function createProcessorPainter(): Painter {
  const surfaces = new Map<Aspect, Surface>();
  const cost = { ...FIRST_GUESS };

  function draw(kind: "quick" | "full", request: PaintRequest) {
    const { columns, rows } = pixelsOf(request);
    const budget = kind === "quick" ? MOVING_BUDGET_MS : REST_BUDGET_MS;
    const least = kind === "quick" ? 0.3 : leastFullScale(request);
    const scale = Math.min(1, Math.max(least, Math.sqrt(budget / (cost[kind] * columns * rows))));
    const start = performance.now();
    const surface = surfaces.get(request.view.aspect)!;
    const picture = kind === "quick" ? drawQuick(surface, request, scale) : drawFully(surface, request, scale);
    const taken = performance.now() - start;
    cost[kind] += 0.4 * (taken / (picture.width * picture.height) - cost[kind]);
    return { picture, taken, scale };
  }

  return {
    means: "processor",
    takeFace(unpacked) {
      surfaces.set(unpacked.aspect, surfaceOf(unpacked));
      for (const { albedo, finish } of [unpacked.strip, unpacked.plate]) {
        albedo.close();
        finish.close();
      }
    },
    hasAspect: (aspect) => surfaces.has(aspect),
    async paint(request) {
      const { picture } = draw(request.isMoving ? "quick" : "full", request);
      return { bitmap: await bitmapOf(picture), isFinal: !request.isMoving };
    },
    async measure(request) {
      const full = draw("full", request);
      const moving = draw("quick", request);
      const bitmap = await bitmapOf(full.picture);
      const target = new OffscreenCanvas(bitmap.width, bitmap.height).getContext("2d")!;
      const start = performance.now();
      target.drawImage(bitmap, 0, 0);
      target.getImageData(0, 0, 1, 1);
      return {
        columns: bitmap.width,
        rows: bitmap.height,
        full: full.taken,
        moving: moving.taken,
        blit: performance.now() - start,
        movingScale: moving.scale,
        means: "processor",
      };
    },
  };
}
