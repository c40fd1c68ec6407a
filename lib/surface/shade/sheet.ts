/** What is needed to light a view, one value per pixel of the picture, rows in the order of growing y. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly perMm: number;
  /** mm at the outer corner of the first pixel. */
  readonly x0: number;
  readonly y0: number;
  readonly z: Float32Array;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
  readonly rough: Float32Array;
  readonly metal: Float32Array;
  readonly brush: Float32Array;
  /** Brush direction as doubled angle; shorter than 1 where directions are mixed. */
  readonly cosine: Float32Array;
  readonly sine: Float32Array;
  /** Share of the workshop's light that gets here. */
  readonly open: Float32Array;
}

export const SHEET_PLANES = ["z", "red", "green", "blue", "rough", "metal", "brush", "cosine", "sine", "open"] as const;
export type SheetPlanes = { [plane in (typeof SHEET_PLANES)[number]]: Float32Array };

export function createPlanes(size: number): SheetPlanes {
  const plane = () => new Float32Array(size);
  return {
    z: plane(),
    red: plane(),
    green: plane(),
    blue: plane(),
    rough: plane(),
    metal: plane(),
    brush: plane(),
    cosine: plane(),
    sine: plane(),
    open: plane(),
  };
}
