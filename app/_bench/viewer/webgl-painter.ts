import { exposureUnder } from "@/lib/bench";
import type { Grid, Surface } from "@/lib/surface";
import { type Aspect, upOnScreen } from "@/lib/weld";
import {
  MOVING_BUDGET_MS,
  movingScaleFor,
  type Painted,
  type Painter,
  PIECE_BUDGET_MS,
  pixelsOf,
  QUICK_MS,
} from "./painter";
import { surfaceOf } from "./processor-surface";
import { bitmapOf, drawQuick } from "./processor-view";
import type { PaintRequest, RelightTimings, UnpackedFace } from "./protocol";
import { FULL_QUALITY, MOVING_QUALITY } from "./specimen-shader";
import { buildProgram, type Program } from "./webgl-program";
import { type FaceTextures, uploadDetail, uploadFace } from "./webgl-textures";

interface KeptFace {
  readonly textures: FaceTextures;
  readonly grids: UnpackedFace["grids"];
  readonly highest: number;
  /** Kept only where WebGL is worked out by the processor: there its own quick drawing serves better while moving. */
  readonly surface: Surface | null;
}

/** Rows from `from` up to `to` of a picture of `columns` by `rows`, counted from the bottom. */
interface Piece {
  readonly columns: number;
  readonly rows: number;
  readonly from: number;
  readonly to: number;
}

/** A million pixels of moving picture that take longer than this are no work for a graphics unit, ms. */
const SLOW_MS = 90;
/** Cost to begin with where the processor does the work, ms a pixel; what pictures really take corrects it. */
const SOFTWARE_COST = 1e-3;
/** A view to try the speed on, before anybody asks for one. */
const TRIAL = {
  target: "picture",
  view: { width: 512, height: 96, x: 100, up: 0, scale: 4 },
  pixelRatio: 1,
  lamp: [20, 130, 130],
  isMoving: false,
  number: 0,
} as const;

/** A painter on WebGL2, or null where this browser has none that can hold the surface. */
export function createWebglPainter(): Painter | null {
  const canvas = new OffscreenCanvas(16, 16);
  const context = canvas.getContext("webgl2", {
    alpha: false,
    antialias: false,
    depth: false,
    preserveDrawingBuffer: true,
  });
  if (!context?.getExtension("EXT_color_buffer_float")) return null;
  const gl: WebGL2RenderingContext = context;
  if (gl.getParameter(gl.MAX_TEXTURE_SIZE) < 2400) return null;
  const full = buildProgram(gl, FULL_QUALITY);
  const moving = buildProgram(gl, MOVING_QUALITY);
  const detail = uploadDetail(gl);
  const faces = new Map<Aspect, KeptFace>();
  const onePixel = new Uint8Array(4);
  /** Measured cost, ms a pixel; it adapts to what each picture really takes. */
  const cost = new Map<Program, number>();
  let quickCost = 6e-5;

  function draw(program: Program, request: PaintRequest, piece: Piece) {
    const face = faces.get(request.view.aspect)!;
    if (canvas.width !== piece.columns || canvas.height !== piece.rows) {
      canvas.width = piece.columns;
      canvas.height = piece.rows;
    }
    gl.viewport(0, 0, piece.columns, piece.rows);
    gl.enable(gl.SCISSOR_TEST);
    gl.scissor(0, piece.from, piece.columns, piece.to - piece.from);
    [...face.textures, detail].forEach((texture, unit) => {
      gl.activeTexture(gl.TEXTURE0 + unit);
      gl.bindTexture(gl.TEXTURE_2D, texture);
    });
    // biome-ignore lint/correctness/useHookAtTopLevel: a WebGL call, no hook
    gl.useProgram(program.program);
    const { view, lamp } = request;
    const { uniforms } = program;
    gl.uniform2f(uniforms.uCorner, view.x - view.width / view.scale / 2, view.up - view.height / view.scale / 2);
    gl.uniform1f(uniforms.uMmPerPx, view.width / view.scale / piece.columns);
    setAspect(gl, uniforms, view.aspect, face.grids);
    gl.uniform3f(uniforms.uLamp, ...lamp);
    gl.uniform1f(uniforms.uHighest, face.highest);
    gl.uniform1f(uniforms.uExposure, exposureUnder(lamp));
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  }

  /** Draws and waits until it is drawn: reading one pixel back cannot finish earlier. */
  function drawAndTime(program: Program, request: PaintRequest, piece: Piece): number {
    const start = performance.now();
    draw(program, request, piece);
    gl.readPixels(0, piece.from, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, onePixel);
    const taken = performance.now() - start;
    const perPixel = taken / (piece.columns * (piece.to - piece.from));
    const before = cost.get(program);
    cost.set(program, before === undefined ? perPixel : before + 0.3 * (perPixel - before));
    return taken;
  }

  /**
   * The first picture of all is a warm-up, the second tells what to expect. Where WebGL says itself that it is worked
   * out by the processor, trying it out would only keep somebody waiting for half a second.
   */
  function learnCost(aspect: Aspect) {
    if (isSoftware(gl)) {
      for (const program of [full, moving]) cost.set(program, SOFTWARE_COST);
      return;
    }
    const request: PaintRequest = { ...TRIAL, view: { ...TRIAL.view, aspect } };
    const { columns, rows } = pixelsOf(request);
    for (const program of [full, moving]) {
      drawAndTime(program, request, { columns, rows, from: 0, to: rows });
      cost.delete(program);
      drawAndTime(program, request, { columns, rows, from: 0, to: rows });
    }
  }

  const isSlow = () => cost.get(moving)! * 1e6 > SLOW_MS;
  const isQuick = ({ columns, rows }: { columns: number; rows: number }) =>
    cost.get(full)! * columns * rows <= QUICK_MS;

  function timedMoving(request: PaintRequest) {
    const { columns, rows } = pixelsOf(request);
    const scale = movingScaleFor(cost.get(moving)!, columns * rows);
    const small = { columns: Math.round(columns * scale), rows: Math.round(rows * scale) };
    return { scale, taken: drawAndTime(moving, request, { ...small, from: 0, to: small.rows }) };
  }

  /** The processor draws at once what it would take long to draw as a graphics unit. */
  function timedQuick(surface: Surface, request: PaintRequest) {
    const { columns, rows } = pixelsOf(request);
    const scale = Math.min(1, Math.max(0.3, Math.sqrt(MOVING_BUDGET_MS / (quickCost * columns * rows))));
    const start = performance.now();
    const picture = drawQuick(surface, request, scale);
    const taken = performance.now() - start;
    quickCost += 0.3 * (taken / (picture.width * picture.height) - quickCost);
    return { scale, taken, picture };
  }

  async function paintMoving(request: PaintRequest): Promise<Painted> {
    const { surface } = faces.get(request.view.aspect)!;
    if (surface) return { bitmap: await bitmapOf(timedQuick(surface, request).picture), isFinal: false };
    timedMoving(request);
    return { bitmap: canvas.transferToImageBitmap(), isFinal: false };
  }

  return {
    means: "webgl2",
    takeFace(unpacked: UnpackedFace) {
      const { aspect, grids, highest } = unpacked;
      const textures = uploadFace(gl, unpacked);
      faces.set(aspect, { textures, grids, highest, surface: null });
      if (cost.size === 0) learnCost(aspect);
      if (isSlow()) faces.set(aspect, { textures, grids, highest, surface: surfaceOf(unpacked) });
      for (const { albedo, finish } of [unpacked.strip, unpacked.plate]) {
        albedo.close();
        finish.close();
      }
    },
    hasAspect: (aspect) => faces.has(aspect),

    async paint(request, isOutdated) {
      const { columns, rows } = pixelsOf(request);
      if (request.isMoving && !isQuick({ columns, rows })) return paintMoving(request);
      for (let from = 0; from < rows; ) {
        const pieceRows = Math.max(8, Math.floor(PIECE_BUDGET_MS / (cost.get(full)! * columns)));
        const to = Math.min(rows, from + pieceRows);
        drawAndTime(full, request, { columns, rows, from, to });
        from = to;
        if (from < rows && (await isOutdated())) return null;
      }
      return { bitmap: canvas.transferToImageBitmap(), isFinal: true };
    },

    async measure(request): Promise<RelightTimings> {
      const { columns, rows } = pixelsOf(request);
      const fullMs = drawAndTime(full, request, { columns, rows, from: 0, to: rows });
      const source = canvas.transferToImageBitmap();
      const target = new OffscreenCanvas(columns, rows).getContext("2d")!;
      const start = performance.now();
      target.drawImage(source, 0, 0);
      target.getImageData(0, 0, 1, 1);
      const blit = performance.now() - start;
      source.close();
      const common = { columns, rows, full: fullMs, blit, means: "webgl2" } as const;
      if (isQuick({ columns, rows })) return { ...common, moving: fullMs, movingScale: 1 };
      const { surface } = faces.get(request.view.aspect)!;
      const { taken, scale } = surface ? timedQuick(surface, request) : timedMoving(request);
      return { ...common, moving: taken, movingScale: scale };
    },
  };
}

/** Where the two patches of what is looked at lie, and the whole of it on the bench. */
function setAspect(
  gl: WebGL2RenderingContext,
  uniforms: Program["uniforms"],
  aspect: Aspect,
  { strip, plate }: KeptFace["grids"],
) {
  const side = upOnScreen(aspect);
  const [low, high] = [plate.y0, plate.y0 + plate.rows / plate.perMm];
  const span = (grid: Grid) => [grid.y0, grid.rows / grid.perMm] as const;
  gl.uniform1f(uniforms.uSide, side);
  gl.uniform3f(
    uniforms.uSeen,
    plate.columns / plate.perMm,
    ...(side === 1 ? ([low, high] as const) : ([-high, -low] as const)),
  );
  gl.uniform2f(uniforms.uStrip, ...span(strip));
  gl.uniform2f(uniforms.uPlate, ...span(plate));
}

/** Names under which processors stand in for graphics units. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

function isSoftware(gl: WebGL2RenderingContext): boolean {
  const names = gl.getExtension("WEBGL_debug_renderer_info");
  return SOFTWARE.test(String(gl.getParameter(names ? names.UNMASKED_RENDERER_WEBGL : gl.RENDERER)));
}
