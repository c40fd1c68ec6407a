import { DETAIL_SIZE, makeDetailTile } from "./detail-tile";
import type { UnpackedFace, UnpackedPatch } from "./protocol";

/** Samplers of the shader in the order of their texture units. */
export const SAMPLERS = [
  "uStripRelief",
  "uStripAlbedo",
  "uStripFinish",
  "uStripBrushing",
  "uPlateRelief",
  "uPlateAlbedo",
  "uPlateFinish",
  "uPlateBrushing",
  "uDetail",
] as const;

/** Textures of one face, in the order of the first eight samplers. */
export type FaceTextures = readonly WebGLTexture[];

const SMALLER_LEVELS = 5;

export function uploadFace(gl: WebGL2RenderingContext, unpacked: UnpackedFace): FaceTextures {
  return [...uploadPatch(gl, unpacked.strip), ...uploadPatch(gl, unpacked.plate)];
}

function uploadPatch(gl: WebGL2RenderingContext, patch: UnpackedPatch): FaceTextures {
  const relief = newTexture(gl, gl.RGBA16F, patch.columns, patch.rows, SMALLER_LEVELS + 1);
  gl.texSubImage2D(gl.TEXTURE_2D, 0, 0, 0, patch.columns, patch.rows, gl.RGBA, gl.HALF_FLOAT, patch.relief);
  gl.generateMipmap(gl.TEXTURE_2D);
  const { columns, rows, values } = patch.brushing;
  const brushing = newTexture(gl, gl.RG8, columns, rows, 1);
  gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
  gl.texSubImage2D(gl.TEXTURE_2D, 0, 0, 0, columns, rows, gl.RG, gl.UNSIGNED_BYTE, values);
  return [
    relief,
    pictureTexture(gl, gl.SRGB8_ALPHA8, patch.albedo),
    pictureTexture(gl, gl.RGBA8, patch.finish),
    brushing,
  ];
}

function pictureTexture(gl: WebGL2RenderingContext, format: GLenum, picture: ImageBitmap): WebGLTexture {
  const texture = newTexture(gl, format, picture.width, picture.height, SMALLER_LEVELS + 1);
  gl.texSubImage2D(gl.TEXTURE_2D, 0, 0, 0, gl.RGBA, gl.UNSIGNED_BYTE, picture);
  gl.generateMipmap(gl.TEXTURE_2D);
  return texture;
}

export function uploadDetail(gl: WebGL2RenderingContext): WebGLTexture {
  const texture = newTexture(gl, gl.RGBA8, DETAIL_SIZE, DETAIL_SIZE, 1);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.REPEAT);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.REPEAT);
  gl.texSubImage2D(
    gl.TEXTURE_2D,
    0,
    0,
    0,
    DETAIL_SIZE,
    DETAIL_SIZE,
    gl.RGBA,
    gl.UNSIGNED_BYTE,
    new Uint8Array(makeDetailTile()),
  );
  return texture;
}

function newTexture(
  gl: WebGL2RenderingContext,
  format: GLenum,
  columns: number,
  rows: number,
  levels: number,
): WebGLTexture {
  const texture = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  gl.texStorage2D(gl.TEXTURE_2D, levels, format, columns, rows);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, levels > 1 ? gl.LINEAR_MIPMAP_LINEAR : gl.LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
  return texture;
}
