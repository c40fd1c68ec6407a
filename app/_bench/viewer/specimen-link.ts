import { ASPECTS, type Aspect, faceOf, type SurfaceFace } from "@/lib/weld";
import type {
  FaceHeights,
  PainterAnswer,
  PainterOrder,
  PaintMeans,
  PaintRequest,
  PaintTarget,
  RelightTimings,
  UnpackAnswer,
  UnpackRequest,
} from "./protocol";

/** Where the surface of a face comes from. */
export interface FaceSource {
  readonly face: SurfaceFace;
  readonly url: string;
  /** It is a window cut out of the face and no whole face. */
  readonly isWindow?: boolean;
}

export type FaceState =
  | { readonly kind: "loading" }
  | { readonly kind: "ready"; readonly heights: FaceHeights }
  | { readonly kind: "failed"; readonly reason: string };

export interface SpecimenState {
  /** What is known of each aspect that is to come. */
  readonly aspects: Readonly<Partial<Record<Aspect, FaceState>>>;
  readonly means: PaintMeans | null;
  readonly brokenBecause: string | null;
}

export interface Frame {
  readonly request: PaintRequest;
  readonly bitmap: ImageBitmap;
  readonly isFinal: boolean;
}

/** The page's end of the two workers that unpack and paint a specimen. */
export interface SpecimenLink {
  state(): SpecimenState;
  subscribe(listener: () => void): () => void;
  /** Only the newest request of a target is painted. */
  paint(request: PaintRequest): void;
  forget(target: PaintTarget): void;
  onFrame(target: PaintTarget, listener: (frame: Frame) => void): () => void;
  measure(request: PaintRequest): Promise<RelightTimings>;
  close(): void;
}

const LOADING: FaceState = { kind: "loading" };
const aspectsOf = (face: SurfaceFace) => ASPECTS.filter((aspect) => faceOf(aspect) === face);

/** Starts loading the faces in the order given. */
export function openSpecimen(sources: readonly FaceSource[]): SpecimenLink {
  let state: SpecimenState = {
    aspects: Object.fromEntries(sources.flatMap(({ face }) => aspectsOf(face).map((aspect) => [aspect, LOADING]))),
    means: null,
    brokenBecause: null,
  };
  const listeners = new Set<() => void>();
  const frameListeners = new Map<PaintTarget, (frame: Frame) => void>();
  const measurings: ((timings: RelightTimings) => void)[] = [];
  const heightsOf = new Map<Aspect, FaceHeights>();
  const painter = new Worker(new URL("./painter.worker.ts", import.meta.url), { type: "module" });
  const unpacker = new Worker(new URL("./unpack.worker.ts", import.meta.url), { type: "module" });

  const change = (next: Partial<SpecimenState>) => {
    state = { ...state, ...next };
    for (const listener of listeners) listener();
  };
  const changeAspects = (changed: readonly Aspect[], next: FaceState) =>
    change({ aspects: { ...state.aspects, ...Object.fromEntries(changed.map((aspect) => [aspect, next])) } });
  const order = (message: PainterOrder, moved: Transferable[] = []) => painter.postMessage(message, moved);

  unpacker.onmessage = ({ data }: MessageEvent<UnpackAnswer>) => {
    if (data.kind === "failed") return changeAspects(aspectsOf(data.face), { kind: "failed", reason: data.reason });
    const { unpacked, heights } = data;
    heightsOf.set(unpacked.aspect, heights);
    const moved = [unpacked.strip, unpacked.plate].flatMap((patch) => [
      patch.height.buffer,
      patch.relief.buffer,
      patch.albedo,
      patch.finish,
      patch.brushing.values.buffer,
    ]);
    order({ kind: "face", unpacked }, moved);
  };

  painter.onmessage = ({ data }: MessageEvent<PainterAnswer>) => {
    switch (data.kind) {
      case "ready":
        return change({ means: data.means });
      case "taken":
        return changeAspects([data.aspect], { kind: "ready", heights: heightsOf.get(data.aspect)! });
      case "frame": {
        const listener = frameListeners.get(data.request.target);
        return listener ? listener(data) : data.bitmap.close();
      }
      case "measured":
        return measurings.shift()?.(data.timings);
      case "broken":
        return change({ brokenBecause: data.reason });
    }
  };

  for (const source of sources) unpacker.postMessage(source satisfies UnpackRequest);

  return {
    state: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    paint: (request) => order({ kind: "paint", request }),
    forget: (target) => order({ kind: "forget", target }),
    onFrame(target, listener) {
      frameListeners.set(target, listener);
      return () => {
        if (frameListeners.get(target) === listener) frameListeners.delete(target);
      };
    },
    measure(request) {
      order({ kind: "measure", request });
      return new Promise((resolve) => measurings.push(resolve));
    },
    close() {
      painter.terminate();
      unpacker.terminate();
    },
  };
}
