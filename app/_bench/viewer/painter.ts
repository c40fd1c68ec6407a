import type { PaintMeans, PaintRequest, RelightTimings, UnpackedFace } from "./protocol";

/** What a way of painting must be able to do. Both ways live in the painter's worker and may block it. */
export interface Painter {
  readonly means: PaintMeans;
  /** Keeps what it needs of a face; afterwards it can be painted. */
  takeFace(unpacked: UnpackedFace): void;
  hasAspect(aspect: UnpackedFace["aspect"]): boolean;
  /**
   * Paints one picture, piece by piece; between pieces it asks `isOutdated` and gives up with null where something
   * newer is wanted.
   */
  paint(request: PaintRequest, isOutdated: () => Promise<boolean>): Promise<Painted | null>;
  measure(request: PaintRequest): Promise<RelightTimings>;
}

export interface Painted {
  readonly bitmap: ImageBitmap;
  /** False where the picture was made in a hurry and will be worth painting again. */
  readonly isFinal: boolean;
}

/** Device pixels of the whole picture of a request. */
export function pixelsOf({ view, pixelRatio }: PaintRequest): { columns: number; rows: number } {
  return {
    columns: Math.max(1, Math.round(view.width * pixelRatio)),
    rows: Math.max(1, Math.round(view.height * pixelRatio)),
  };
}

/** A picture painted while something moves should take no longer than this, ms; a piece of a full one no longer than that. */
export const MOVING_BUDGET_MS = 36;
export const PIECE_BUDGET_MS = 60;
/** A full picture this quick needs no cheaper one while moving, ms. */
export const QUICK_MS = 14;

/** Share of the full resolution (per side) at which a picture stays within the moving budget, in sixteenths. */
export function movingScaleFor(msPerPixel: number, pixels: number): number {
  const share = Math.sqrt(MOVING_BUDGET_MS / Math.max(1e-9, msPerPixel * pixels));
  return Math.max(3, Math.min(16, Math.floor(share * 16))) / 16;
}
