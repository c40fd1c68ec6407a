import { byteGrid, floatGrid, type Grid } from "../surface";

/**
 * The working state of one patch while a face is made. One value per pixel in every array. Colours are linear light 0..1.
 */
export interface Field {
  readonly grid: Grid;
  /** Height, mm, outward from the face. */
  readonly z: Float32Array;
  /** Parent surface without any texture, mm: what a gauge's base would find if the plate were perfect. */
  readonly parent: Float32Array;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
  readonly rough: Float32Array;
  readonly metal: Float32Array;
  /** Strength of brushed scratches, 0..1, and their direction in radians. */
  readonly brush: Float32Array;
  readonly brushAngle: Float32Array;
  /** Share of weld metal, 0 plate .. 1 weld. */
  readonly bead: Float32Array;
  /** Number of the run on top, 1.., 0 for none. */
  readonly run: Uint8Array;
  /** Travel-time coordinate of the top run (mm) and position across it (-1..1). */
  readonly travel: Float32Array;
  readonly across: Float32Array;
  /** Lightness of the ripple underfoot, signed. */
  readonly tint: Float32Array;
  /** Share of ground or brushed parent metal, 0..1. */
  readonly band: Float32Array;
  /** Where a planted imperfection must not be covered by chance slag or spatter, 0..1. */
  readonly clean: Float32Array;
  /** Share of slag left on the surface by a planted imperfection, 0..1: the measured extent of slag comes from here. */
  readonly slag: Float32Array;
  /** Visible opening of a crack, as share of the pixel covered, 0..1: the measured extent of a crack comes from here. */
  readonly crack: Float32Array;
}

/** A field without anything on it; `skin` makes the planes that are written whole when the parent plate is laid. */
export function createField(grid: Grid, skin: (size: number) => Float32Array = floatGrid): Field {
  const size = grid.columns * grid.rows;
  const plane = () => floatGrid(size);
  return {
    grid,
    z: skin(size),
    parent: skin(size),
    red: skin(size),
    green: skin(size),
    blue: skin(size),
    rough: skin(size),
    metal: skin(size),
    brush: plane(),
    brushAngle: plane(),
    bead: plane(),
    run: byteGrid(size),
    travel: plane(),
    across: plane(),
    tint: plane(),
    band: plane(),
    clean: plane(),
    slag: plane(),
    crack: plane(),
  };
}

export type Colour = readonly [red: number, green: number, blue: number];

/** Mixes a colour into pixel k: share 1 replaces it. */
export function mixColour(field: Field, k: number, colour: Colour, share: number): void {
  field.red[k] += (colour[0] - field.red[k]) * share;
  field.green[k] += (colour[1] - field.green[k]) * share;
  field.blue[k] += (colour[2] - field.blue[k]) * share;
}

/** As `mixMaterial`, of a colour made lighter or darker by a factor: without an array for every pixel. */
export function mixLit(
  field: Field,
  k: number,
  colour: Colour,
  light: number,
  rough: number,
  metal: number,
  share: number,
): void {
  field.red[k] += (colour[0] * light - field.red[k]) * share;
  field.green[k] += (colour[1] * light - field.green[k]) * share;
  field.blue[k] += (colour[2] * light - field.blue[k]) * share;
  field.rough[k] += (rough - field.rough[k]) * share;
  field.metal[k] += (metal - field.metal[k]) * share;
}

/** As `mixMaterial`, of the colour so far from one (0) to another (1): without an array for every pixel. */
export function mixBetween(
  field: Field,
  k: number,
  from: Colour,
  to: Colour,
  between: number,
  rough: number,
  metal: number,
  share: number,
): void {
  field.red[k] += (from[0] + (to[0] - from[0]) * between - field.red[k]) * share;
  field.green[k] += (from[1] + (to[1] - from[1]) * between - field.green[k]) * share;
  field.blue[k] += (from[2] + (to[2] - from[2]) * between - field.blue[k]) * share;
  field.rough[k] += (rough - field.rough[k]) * share;
  field.metal[k] += (metal - field.metal[k]) * share;
}

/** Mixes colour, roughness and metalness into pixel k. */
export function mixMaterial(
  field: Field,
  k: number,
  colour: Colour,
  rough: number,
  metal: number,
  share: number,
): void {
  mixColour(field, k, colour, share);
  field.rough[k] += (rough - field.rough[k]) * share;
  field.metal[k] += (metal - field.metal[k]) * share;
}
