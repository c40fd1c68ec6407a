import type { Viewport } from "@/lib/bench";
import type { Grid } from "@/lib/surface";
import type { Aspect, SurfaceFace } from "@/lib/weld";

/** Heights of what is seen from one aspect, mm, for gauges and sections on the page. */
export interface FaceHeights {
  readonly strip: Float32Array;
  readonly plate: Float32Array;
  /** Distance to the zero of the face on the other side, mm; null where that was not packed. */
  readonly facesApart: number | null;
}

/** One patch ready for the painter. `relief` holds half floats: height mm, dz/dx, dz/dy, share of open sky. */
export interface UnpackedPatch {
  readonly columns: number;
  readonly rows: number;
  readonly height: Float32Array;
  readonly relief: Uint16Array;
  readonly albedo: ImageBitmap;
  readonly finish: ImageBitmap;
  readonly brushing: { readonly columns: number; readonly rows: number; readonly values: Uint8Array };
}

/** What is seen from one aspect, ready for the painter. */
export interface UnpackedFace {
  readonly aspect: Aspect;
  readonly strip: UnpackedPatch;
  readonly plate: UnpackedPatch;
  /** Where both lie. */
  readonly grids: { readonly strip: Grid; readonly plate: Grid };
  /** Its highest point, mm. */
  readonly highest: number;
}

export interface UnpackRequest {
  readonly face: SurfaceFace;
  readonly url: string;
  /** A window cut out of the face, in a frame of its own. */
  readonly isWindow?: boolean;
}

/** Of a fillet one answer for each of its aspects. */
export type UnpackAnswer =
  | { readonly kind: "unpacked"; readonly unpacked: UnpackedFace; readonly heights: FaceHeights }
  | { readonly kind: "failed"; readonly face: SurfaceFace; readonly reason: string };

/** The big picture, or the small one inside the lens. */
export type PaintTarget = "picture" | "lens";

export interface PaintRequest {
  readonly target: PaintTarget;
  readonly view: Viewport;
  readonly pixelRatio: number;
  /** Lamp in the bench frame, mm: x, up, height over the plate. */
  readonly lamp: readonly [number, number, number];
  /** While something moves, speed goes before beauty. */
  readonly isMoving: boolean;
  readonly number: number;
}

export interface RelightTimings {
  /** Size of the picture, device pixels. */
  readonly columns: number;
  readonly rows: number;
  /** One relight at full quality, one as painted while the torch moves, and a plain copy of the finished picture, ms. */
  readonly full: number;
  readonly moving: number;
  readonly blit: number;
  /** Share of the full resolution that is painted while the torch moves. */
  readonly movingScale: number;
  readonly means: PaintMeans;
}

/** What the pictures are made with. */
export type PaintMeans = "webgl2" | "processor";

export type PainterOrder =
  | { readonly kind: "face"; readonly unpacked: UnpackedFace }
  | { readonly kind: "paint"; readonly request: PaintRequest }
  | { readonly kind: "forget"; readonly target: PaintTarget }
  | { readonly kind: "measure"; readonly request: PaintRequest };

export type PainterAnswer =
  | { readonly kind: "ready"; readonly means: PaintMeans }
  | { readonly kind: "taken"; readonly aspect: Aspect }
  | { readonly kind: "frame"; readonly request: PaintRequest; readonly bitmap: ImageBitmap; readonly isFinal: boolean }
  | { readonly kind: "measured"; readonly timings: RelightTimings }
  | { readonly kind: "broken"; readonly reason: string };
