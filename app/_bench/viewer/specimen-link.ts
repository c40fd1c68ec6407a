import type { Face } from "@/lib/weld";
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
  readonly face: Face;
  readonly url: string;
}

export type FaceState =
  | { readonly kind: "loading" }
  | { readonly kind: "ready"; readonly heights: FaceHeights }
  | { readonly kind: "failed"; readonly reason: string };

export interface SpecimenState {
  readonly faces: Readonly<Partial<Record<Face, FaceState>>>;
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

/** Starts loading the faces in the order given. */
export function openSpecimen(sources: readonly FaceSource[]): SpecimenLink {
  let state: SpecimenState = {
    faces: Object.fromEntries(sources.map(({ face }) => [face, { kind: "loading" }])),
    means: null,
    brokenBecause: null,
  };
  const listeners = new Set<() => void>();
  const frameListeners = new Map<PaintTarget, (frame: Frame) => void>();
  const measurings: ((timings: RelightTimings) => void)[] = [];
  const heightsOf = new Map<Face, FaceHeights>();
  const painter = new Worker(new URL("./painter.worker.ts", import.meta.url), { type: "module" });
  const unpacker = new Worker(new URL("./unpack.worker.ts", import.meta.url), { type: "module" });

  const change = (next: Partial<SpecimenState>) => {
    state = { ...state, ...next };
    for (const listener of listeners) listener();
  };
  const changeFace = (face: Face, next: FaceState) => change({ faces: { ...state.faces, [face]: next } });
  const order = (message: PainterOrder, moved: Transferable[] = []) => painter.postMessage(message, moved);

  unpacker.onmessage = ({ data }: MessageEvent<UnpackAnswer>) => {
    if (data.kind === "failed") return changeFace(data.face, { kind: "failed", reason: data.reason });
    const { unpacked, heights } = data;
    heightsOf.set(unpacked.face, heights);
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
        return changeFace(data.face, { kind: "ready", heights: heightsOf.get(data.face)! });
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
