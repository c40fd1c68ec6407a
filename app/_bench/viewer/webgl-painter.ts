import { type Face, upOnScreen } from "@/lib/weld";
import { movingScaleFor, type Painted, type Painter, PIECE_BUDGET_MS, pixelsOf, QUICK_MS } from "./painter";
import type { PaintRequest, RelightTimings, UnpackedFace } from "./protocol";
import { FULL_QUALITY, MOVING_QUALITY } from "./specimen-shader";
import { buildProgram, type Program } from "./webgl-program";
import { type FaceTextures, uploadDetail, uploadFace } from "./webgl-textures";

interface KeptFace {
  readonly textures: FaceTextures;
  readonly highest: number;
}

/** Rows from `from` up to `to` of a picture of `columns` by `rows`, counted from the bottom. */
interface Piece {
  readonly columns: number;
  readonly rows: number;
  readonly from: number;
  readonly to: number;
}

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
  const faces = new Map<Face, KeptFace>();
  const onePixel = new Uint8Array(4);
  /** Measured cost, ms a pixel; it adapts to what each picture really takes. */
  const cost = new Map<Program, number>();

  function drawPiece(program: Program, request: PaintRequest, piece: Piece) {
    const face = faces.get(request.face)!;
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
    gl.uniform1f(uniforms.uSide, upOnScreen(request.face));
    gl.uniform3f(uniforms.uLamp, ...lamp);
    gl.uniform1f(uniforms.uHighest, face.highest);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  }

  /** Draws and waits until it is drawn: reading one pixel back cannot finish earlier. */
  function drawAndTime(program: Program, request: PaintRequest, piece: Piece): number {
    const start = performance.now();
    drawPiece(program, request, piece);
    gl.readPixels(0, piece.from, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, onePixel);
    const taken = performance.now() - start;
    const perPixel = taken / (piece.columns * (piece.to - piece.from));
    const before = cost.get(program);
    cost.set(program, before === undefined ? perPixel : before + 0.3 * (perPixel - before));
    return taken;
  }

  /** The first picture of all: a warm-up, then a small piece from the middle, tell what to expect. */
  function learnCost(request: PaintRequest) {
    const { columns, rows } = pixelsOf(request);
    const from = Math.floor(rows / 2);
    const piece = { columns, rows, from, to: Math.min(rows, from + 24) };
    for (const program of [full, moving]) {
      drawAndTime(program, request, piece);
      cost.delete(program);
      drawAndTime(program, request, piece);
    }
  }

  const expectedFull = (pixels: number) => cost.get(full)! * pixels;

  function paintMoving(request: PaintRequest): Painted {
    const { columns, rows } = pixelsOf(request);
    const scale = movingScaleFor(cost.get(moving)!, columns * rows);
    const small = {
      columns: Math.max(1, Math.round(columns * scale)),
      rows: Math.max(1, Math.round(rows * scale)),
    };
    drawAndTime(moving, request, { ...small, from: 0, to: small.rows });
    return { bitmap: canvas.transferToImageBitmap(), isFinal: false };
  }

  return {
    means: "webgl2",
    takeFace(unpacked: UnpackedFace) {
      faces.set(unpacked.face, { textures: uploadFace(gl, unpacked), highest: unpacked.highest });
    },
    hasFace: (face) => faces.has(face),

    async paint(request, isOutdated) {
      if (cost.size === 0) learnCost(request);
      const { columns, rows } = pixelsOf(request);
      if (request.isMoving && expectedFull(columns * rows) > QUICK_MS) return paintMoving(request);
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
      if (cost.size === 0) learnCost(request);
      const { columns, rows } = pixelsOf(request);
      const fullMs = drawAndTime(full, request, { columns, rows, from: 0, to: rows });
      const source = canvas.transferToImageBitmap();
      const target = new OffscreenCanvas(columns, rows).getContext("2d")!;
      const blitStart = performance.now();
      target.drawImage(source, 0, 0);
      target.getImageData(0, 0, 1, 1);
      const blit = performance.now() - blitStart;
      source.close();
      const isQuick = fullMs <= QUICK_MS;
      const movingScale = isQuick ? 1 : movingScaleFor(cost.get(moving)!, columns * rows);
      const small = { columns: Math.round(columns * movingScale), rows: Math.round(rows * movingScale) };
      const movingMs = isQuick ? fullMs : drawAndTime(moving, request, { ...small, from: 0, to: small.rows });
      return { columns, rows, full: fullMs, moving: movingMs, blit, movingScale, means: "webgl2" };
    },
  };
}
